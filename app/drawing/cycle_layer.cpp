#include "app/drawing/cycle_layer.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace carriageway {

namespace {

constexpr double quarter = 0.25 * std::numbers::pi;

/// One colour on a garment.
struct Print {
    HeadView view;         ///< of the platen, wherever the table has turned it
    Rect passed;           ///< by the squeegee: ink lies only there
    const Coverage* missed = nullptr;
    bool over = false;     ///< nothing more is printed: what is missed now is missed
    Role cloth = Role::platen;
};

/// Those corners of a convex polygon above or below a line across the arm, and where it is cut.
std::vector<Point> part_beyond(const std::vector<Point>& corners, double y, double sign) {
    std::vector<Point> out;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Point a = corners[i], b = corners[(i + 1) % corners.size()];
        const double da = sign * (a.y - y), db = sign * (b.y - y);
        if (da >= 0.0) out.push_back(a);
        if ((da < 0.0) == (db < 0.0) || da == db) continue;
        const double share = da / (da - db);
        out.push_back({a.x + share * (b.x - a.x), y});
    }
    return out;
}

/// The part of a column within a band, as a polygon; empty where they don't meet.
void fill_within(DrawingList& list, const HeadView& view, const Column& column, const Rect& band,
                 Paint colour) {
    const double x0 = std::max(column.x0, band.left), x1 = std::min(column.x1, band.right);
    if (!(x1 > x0) || band.empty()) return;
    const Column c = part_of(column, x0, x1);
    const std::vector<Point> whole{{c.x0, c.lo0}, {c.x1, c.lo1}, {c.x1, c.hi1}, {c.x0, c.hi0}};
    const std::vector<Point> part =
        part_beyond(part_beyond(whole, band.lo, 1.0), band.hi, -1.0);
    if (part.size() < 3) return;
    std::vector<Vec> corners;
    for (const Point& corner : part) corners.push_back(view.to(corner));
    list.fill(corners.data(), static_cast<int>(corners.size()), colour);
}

void fill_column(DrawingList& list, const HeadView& view, const Column& c, Paint colour) {
    const Vec corners[] = {view.to(c.x0, c.lo0), view.to(c.x1, c.lo1), view.to(c.x1, c.hi1),
                           view.to(c.x0, c.hi0)};
    list.fill(corners, 4, colour);
}

void hatch_column(DrawingList& list, const HeadView& view, const Column& c, double angle,
                  float spacing, float width) {
    const Vec corners[] = {view.to(c.x0, c.lo0), view.to(c.x1, c.lo1), view.to(c.x1, c.hi1),
                           view.to(c.x0, c.hi0)};
    const Vec across = view.across();
    const double turned = std::atan2(across.y, across.x) + angle;
    const Vec origin = view.to(0.0, 0.0);
    const double phase = -std::sin(turned) * origin.x + std::cos(turned) * origin.y;
    list.hatch(corners, 4, paint(Role::stop), static_cast<float>(turned), spacing, width,
               static_cast<float>(std::remainder(phase, spacing)));
}

/// What isn't as it should be, in the patterns of a head at rest.
void draw_missed(const Print& print, DrawingList& list) {
    const HeadView& view = print.view;
    const float k = view.projection->camera.scale >= full_detail_scale ? 1.0f : 0.7f;
    for (const MissedPiece& piece : print.missed->pieces)
        for (std::uint32_t i = 0; i < piece.count; ++i) {
            const Column& tile = print.missed->tiles[piece.first + i];
            switch (piece.kind) {
            case MissKind::unprinted:
                if (!print.over) break; // still to come
                hatch_column(list, view, tile, quarter, 10.0f * k, 1.6f * k);
                hatch_column(list, view, tile, -quarter, 10.0f * k, 1.6f * k);
                break;
            case MissKind::starved: // a breath of ink, and lines across
                fill_column(list, view, tile, paint(print.cloth, 200));
                hatch_column(list, view, tile, 0.0, 6.0f * k, 1.6f * k);
                break;
            case MissKind::heavy:
                hatch_column(list, view, tile, quarter, 7.0f * k, 2.6f * k);
                break;
            }
        }
}

void draw_print(const Print& print, DrawingList& list) {
    for (const Column& column : print.view.assessed->columns)
        fill_within(list, print.view, column, print.passed, own_colour(print.view.head->ink));
    draw_missed(print, list);
}

/// A colour that a head has printed whole on the garment at `place`.
void draw_done(const DiagramInput& input, const RunningHead& running, const HeadPlace& place,
               Role cloth, DrawingList& list) {
    if (running.cycle.still) return;
    Print print;
    print.view.head = find_head(*input.job, running.cycle.head);
    print.view.assessed = find_head(*input.assessment, running.cycle.head);
    if (!print.view.head || !print.view.assessed) return;
    print.view.aim(input.projection, place);
    print.passed = running.cycle.squeegee;
    print.missed = &print.view.assessed->coverage;
    print.over = true;
    print.cloth = cloth;
    draw_print(print, list);
}

/// What a head has printed so far on the garment under it.
void draw_under_way(const DiagramInput& input, const RunningHead& running, const HeadPlace& place,
                    Role cloth, DrawingList& list) {
    const CyclePose& now = running.pose;
    if (running.cycle.still || now.turned < 1.0 || now.printed.empty()) return;
    Print print;
    print.view.head = find_head(*input.job, running.cycle.head);
    print.view.assessed = find_head(*input.assessment, running.cycle.head);
    if (!print.view.head || !print.view.assessed) return;
    print.view.aim(input.projection, place);
    CoverScratch scratch;
    Coverage missed;
    cover(print.view.assessed->columns, bands_at(running.cycle, now), scratch, missed);
    print.passed = now.printed;
    print.missed = &missed;
    print.over = now.printed_all;
    print.cloth = cloth;
    draw_print(print, list);
}

void fill_platen(const DiagramInput& input, const HeadPlace& place, Role cloth, DrawingList& list) {
    HeadView view;
    view.aim(input.projection, place);
    fill_rect(list, view, rect_of(input.job->platen), paint(cloth));
}

/// Stations from where garments are put on to this one, along the way that they go.
int stations_since_load(const Job& job, int station) {
    const auto load = std::find(job.uses.begin(), job.uses.end(), StationUse::load);
    const int first = load == job.uses.end() ? 1 : static_cast<int>(load - job.uses.begin()) + 1;
    return (station - first + job.press.stations) % job.press.stations;
}

void outline_image(const HeadView& view, DrawingList& list) {
    std::vector<Vec> outline;
    for (const Point& corner : view.assessed->image) outline.push_back(view.to(corner));
    const bool full = view.projection->camera.scale >= full_detail_scale;
    list.loop(outline.data(), static_cast<int>(outline.size()), paint(Role::image),
              full ? 2.0f : 1.2f);
}

/// A blade: thick where it is down on the mesh, a thin line with open ends where it is up.
void draw_blade(const HeadView& view, double half, double y, double down, Role role,
                DrawingList& list) {
    const Vec ends[] = {view.to(-half, y), view.to(half, y)};
    const float thick = std::clamp(view.size(14.0), 3.0f, 10.0f);
    const float thin = std::max(1.5f, 0.25f * thick);
    list.line(ends, 2, paint(role), thin + static_cast<float>(down) * (thick - thin));
    if (down < 0.5)
        for (const Vec at : ends) list.circle(at, thin + 2.0f, paint(role), 1.5f);
}

void draw_blades(const HeadView& view, const RunningHead& running, DrawingList& list) {
    const double c = running.pose.carriage;
    const double half = 0.5 * view.head->screen.across;
    const Vec beam[] = {view.to(-half, c), view.to(half, c)};
    list.line(beam, 2, paint(Role::soft_ink, 120), std::max(3.0f, view.size(14.0)));
    draw_blade(view, 0.5 * view.head->flood.width, c + running.cycle.geometry.flood_edge,
               running.pose.flood, Role::flood, list);
    draw_blade(view, 0.5 * view.head->squeegee.width, c + running.cycle.geometry.squeegee_edge,
               running.pose.squeegee, Role::squeegee, list);
}

} // namespace

const RunningHead* running_head(const DiagramInput& input, HeadId head) {
    if (!input.running) return nullptr;
    for (const RunningHead& one : *input.running)
        if (one.cycle.head == head) return &one;
    return nullptr;
}

void draw_lifted(const HeadView& view, double down, DrawingList& list) {
    constexpr double seen = 26.0;           // mm: what a lift looks like, no number of a press
    constexpr float least = 3.0f, most = 14.0f; // dp
    const float by = std::clamp(view.size(seen), least, most) * static_cast<float>(1.0 - down);
    if (!(by > 0.2f)) return;
    const double x = 0.5 * view.head->screen.across, y = 0.5 * view.head->screen.along;
    const double p = view.head->screen.profile_width;
    const Rect sides[] = {{-x, x, y - p, y}, {-x, x, -y, -y + p},
                          {-x, -x + p, -y + p, y - p}, {x - p, x, -y + p, y - p}};
    for (const Rect& side : sides) {
        Vec corners[] = {view.to(side.left, side.lo), view.to(side.right, side.lo),
                         view.to(side.right, side.hi), view.to(side.left, side.hi)};
        for (Vec& corner : corners) corner = corner + Vec{0.6f * by, by};
        list.fill(corners, 4, paint(Role::soft_ink, 90));
    }
}

HeadPlace turned_place(const PressProfile& press, int station, double share) {
    const HeadPlace here = place_of_station(press, station);
    const HeadPlace next = place_of_station(press, station % press.stations + 1);
    double angle = std::atan2(next.along.y, next.along.x) - std::atan2(here.along.y, here.along.x);
    angle = share * std::remainder(angle, 2.0 * std::numbers::pi);
    const double c = std::cos(angle), s = std::sin(angle);
    const auto turn = [&](Point p) { return Point{c * p.x - s * p.y, s * p.x + c * p.y}; };
    return {turn(here.origin), turn(here.along), turn(here.across)};
}

void draw_shirt(const DiagramInput& input, int station, DrawingList& list) {
    const std::vector<RunningHead>& running = *input.running;
    if (running.empty()) return;
    const PressProfile& press = input.job->press;
    const double turned = running.front().pose.turned;
    const HeadPlace place = turned_place(press, station, turned - 1.0);
    const Head* here = head_on(*input.job, station);
    const RunningHead* own = here ? running_head(input, here->id) : nullptr;
    const bool alone = input.chosen != 0;
    const Role cloth = alone && own ? Role::platen : Role::station;
    if (alone && own && turned < 1.0) {
        // The one that is done here leaves while the next one comes.
        const HeadPlace leaves = turned_place(press, station, turned);
        fill_platen(input, leaves, cloth, list);
        draw_done(input, *own, leaves, cloth, list);
    }
    fill_platen(input, place, cloth, list);
    if (!alone) {
        // Colours that it has passed, in the order in which it got them.
        const int order = stations_since_load(*input.job, station);
        for (int behind = order; behind > 0; --behind) {
            const int at = (station - behind - 1 + press.stations) % press.stations + 1;
            const Head* head = head_on(*input.job, at);
            const RunningHead* passed = head ? running_head(input, head->id) : nullptr;
            if (passed) draw_done(input, *passed, place, cloth, list);
        }
    }
    if (own) draw_under_way(input, *own, place, cloth, list);
}

void draw_running(const HeadView& view, const RunningHead& running, DrawingList& list) {
    const CyclePose& now = running.pose;
    // Ink over the mesh: the flood has laid it, the squeegee hasn't taken it yet.
    if (!now.flooded.empty()) {
        Paint wet = own_colour(view.head->ink);
        wet.alpha = 90;
        fill_rect(list, view, now.flooded, wet);
        hatch_rect(list, view, now.flooded, paint(Role::flood, 170), -quarter, 12.0f, 1.0f);
    }
    outline_image(view, list);
    draw_blades(view, running, list);
}

} // namespace carriageway
