#include "app/drawing/side_running.h"

#include <algorithm>

namespace carriageway {

namespace {

/// Where a column stands over `x`, from its lower side to its upper; empty: nowhere.
struct Stretch {
    double lo = 0.0, hi = 0.0;
    bool empty() const { return !(hi > lo); }
};

Stretch stretch_at(const Column& column, double x) {
    if (x < column.x0 || x > column.x1 || !(column.x1 > column.x0)) return {};
    const double share = (x - column.x0) / (column.x1 - column.x0);
    return {column.lo0 + share * (column.lo1 - column.lo0),
            column.hi0 + share * (column.hi1 - column.hi0)};
}

/// A layer of ink on the garment, `thick` dp high.
void layer(const SideInput& input, const SideScale& scale, Stretch part, float thick,
           DrawingList& list) {
    const double carriage = input.running->pose.carriage;
    const float x0 = std::max(scale.box.x0, scale.x(part.lo - carriage));
    const float x1 = std::min(scale.box.x1, scale.x(part.hi - carriage));
    if (part.empty() || x1 <= x0) return;
    const float top = scale.height(input.job->garment.compressed);
    list.round({x0, top - thick, x1, top}, 0.0f, own_colour(input.head->ink));
}

float mesh_at(const MeshLine& mesh, float x) {
    for (std::size_t i = 1; i < mesh.size(); ++i) {
        if (x > mesh[i].x && i + 1 < mesh.size()) continue;
        const float wide = mesh[i].x - mesh[i - 1].x;
        const float share = wide > 0.0f ? std::clamp((x - mesh[i - 1].x) / wide, 0.0f, 1.0f) : 0.0f;
        return mesh[i - 1].y + share * (mesh[i].y - mesh[i - 1].y);
    }
    return mesh.back().y;
}

/// A heap of ink at the side of an edge that the edge moves to.
void draw_bead(const SideInput& input, const SideScale& scale, const MeshLine& mesh, double edge,
               double way, DrawingList& list) {
    constexpr float radius = 7.0f;
    const float x = scale.x(edge) + static_cast<float>(way) * (radius + 4.0f);
    list.disc({x, mesh_at(mesh, x) - radius}, radius, own_colour(input.head->ink));
    list.circle({x, mesh_at(mesh, x) - radius}, radius, paint(Role::edge), 1.0f);
}

} // namespace

void draw_print(const SideInput& input, const SideScale& scale, DrawingList& list) {
    constexpr float good = 4.0f, starved = 1.2f, heavy = 9.0f; // dp
    const CyclePose& now = input.running->pose;
    const Rect& bounds = input.assessed->image_bounds;
    const double middle = 0.5 * (bounds.left + bounds.right);
    // Where the image lies, for whoever goes along with the carriage.
    const float x0 = std::max(scale.box.x0, scale.x(bounds.lo - now.carriage));
    const float x1 = std::min(scale.box.x1, scale.x(bounds.hi - now.carriage));
    const float below = scale.ground + 8.0f;
    if (x1 > x0) list.round({x0, below, x1, below + 3.0f}, 0.0f, paint(Role::image));
    if (now.printed.empty() || input.running->cycle.still || now.turned < 1.0) return;
    Bands bands = bands_at(input.running->cycle, now);
    CoverScratch scratch;
    Coverage covered;
    cover(input.assessed->columns, bands, scratch, covered);
    // Good ink first; what is missed is cut out of it and laid as it came.
    for (const Column& column : input.assessed->columns) {
        const Stretch image = stretch_at(column, middle);
        if (image.empty()) continue;
        layer(input, scale,
              {std::max({image.lo, now.printed.lo, bands.flood.lo}),
               std::min({image.hi, now.printed.hi, bands.flood.hi})},
              good, list);
    }
    for (const MissedPiece& piece : covered.pieces)
        for (std::uint32_t i = 0; i < piece.count; ++i) {
            if (piece.kind == MissKind::unprinted) continue;
            layer(input, scale, stretch_at(covered.tiles[piece.first + i], middle),
                  piece.kind == MissKind::heavy ? heavy : starved, list);
        }
}

void draw_ink(const SideInput& input, const SideScale& scale, const MeshLine& mesh,
              DrawingList& list) {
    const RunningHead& running = *input.running;
    const CyclePose& now = running.pose;
    if (!now.flooded.empty()) {
        constexpr float thick = 4.0f;
        const float x0 = std::max(scale.box.x0, scale.x(now.flooded.lo - now.carriage));
        const float x1 = std::min(scale.box.x1, scale.x(now.flooded.hi - now.carriage));
        // Along the mesh, which bends at the edges.
        std::vector<float> stops{x0, x1};
        for (const Vec& corner : mesh)
            if (corner.x > x0 && corner.x < x1) stops.push_back(corner.x);
        std::sort(stops.begin(), stops.end());
        std::vector<Vec> line;
        for (const float x : stops) line.push_back({x, mesh_at(mesh, x) - 0.5f * thick - 1.0f});
        if (x1 > x0)
            list.line(line.data(), static_cast<int>(line.size()), own_colour(input.head->ink),
                      thick);
    }
    const StrokeGeometry& geometry = running.cycle.geometry;
    const double sign = running.cycle.print_sign;
    if (now.doing == StepKind::print)
        draw_bead(input, scale, mesh, geometry.squeegee_edge, sign, list);
    if (now.doing == StepKind::flood)
        draw_bead(input, scale, mesh, geometry.flood_edge, -sign, list);
}

} // namespace carriageway
