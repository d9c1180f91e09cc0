#include "core/mesh.h"

#include <algorithm>
#include <cmath>

namespace carriageway {

namespace {

constexpr double um_per_cm = 10000.0;

/// Nominal counts and threads are whole numbers.
constexpr double same_count = 0.5;
constexpr double same_thread = 0.5;

constexpr double least_pitches_a_line = 2.0;
constexpr double most_pitches_a_line = 3.0;
constexpr double least_threads_a_line = 3.5;
constexpr double most_threads_a_line = 4.0;

bool positive(double value) { return std::isfinite(value) && value > 0.0; }

} // namespace

double mesh_pitch(double threads_per_cm) {
    return positive(threads_per_cm) ? um_per_cm / threads_per_cm : 0.0;
}

double mesh_opening(double threads_per_cm, double thread) {
    if (!positive(thread)) return 0.0;
    return std::max(0.0, mesh_pitch(threads_per_cm) - thread);
}

double open_share(double threads_per_cm, double thread) {
    const double opening = mesh_opening(threads_per_cm, thread);
    if (!(opening > 0.0)) return 0.0;
    const double share = opening / mesh_pitch(threads_per_cm);
    return share * share;
}

double ink_volume(double share, double thickness) {
    if (!positive(share) || share > 1.0 || !positive(thickness)) return 0.0;
    return share * thickness;
}

MeshRowTrouble trouble_with(const MeshRow& row) {
    for (const double value :
         {row.threads_per_cm, row.thread, row.opening, row.share, row.thickness, row.volume})
        if (!positive(value)) return MeshRowTrouble::not_positive;
    const double opening = mesh_opening(row.threads_per_cm, row.thread);
    if (!(opening > 0.0)) return MeshRowTrouble::no_opening;
    if (!(row.share < 1.0)) return MeshRowTrouble::share_off;
    if (std::abs(row.opening - opening) > opening_slack) return MeshRowTrouble::opening_off;
    const double volume = ink_volume(row.share, row.thickness);
    if (std::abs(row.volume - volume) > volume_slack * volume) return MeshRowTrouble::volume_off;
    return MeshRowTrouble::none;
}

const MeshRow* find_mesh(std::span<const MeshRow> rows, double threads_per_cm, double thread) {
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const MeshRow& row) {
        return std::abs(row.threads_per_cm - threads_per_cm) < same_count &&
               std::abs(row.thread - thread) < same_thread;
    });
    return found == rows.end() ? nullptr : &*found;
}

std::optional<MeshData> mesh_data(double threads_per_cm, double thread,
                                  std::span<const MeshRow> users) {
    const double opening = mesh_opening(threads_per_cm, thread);
    if (!(opening > 0.0)) return std::nullopt;
    if (const MeshRow* row = find_mesh(users, threads_per_cm, thread)) return MeshData{*row, false};
    if (const MeshRow* row = find_mesh(published_meshes, threads_per_cm, thread))
        return MeshData{*row, false};
    const double share = open_share(threads_per_cm, thread);
    const double thickness = assumed_thickness_over_thread * thread;
    return MeshData{{threads_per_cm, thread, opening, share, thickness,
                     ink_volume(share, thickness), SourceKind::ours},
                    true};
}

MeshRange finest_line(double threads_per_cm) {
    const double pitch = mesh_pitch(threads_per_cm);
    return {least_pitches_a_line * pitch, most_pitches_a_line * pitch};
}

DetailFit detail_fit(double threads_per_cm, double width) {
    const MeshRange finest = finest_line(threads_per_cm);
    if (!(finest.least > 0.0) || !(width >= finest.least)) return DetailFit::too_fine;
    return width >= finest.most ? DetailFit::carried : DetailFit::doubtful;
}

MeshRange threads_for_halftone(double lines) {
    if (!positive(lines)) return {};
    return {least_threads_a_line * lines, most_threads_a_line * lines};
}

MeshRange halftone_for_threads(double threads) {
    if (!positive(threads)) return {};
    return {threads / most_threads_a_line, threads / least_threads_a_line};
}

} // namespace carriageway
