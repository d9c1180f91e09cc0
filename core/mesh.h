// The mesh of a screen: pitch, opening, open area, and the ink that it can hold.
//
// Threads per cm; thread, opening and thickness µm; volumes cm³ per m², which is the same as a film
// in µm. Geometry of a square weave (ISO 9044, ISO 3310-1).
#pragma once

#include <array>
#include <optional>
#include <span>

#include "core/source.h"

namespace carriageway {

/// Threads per inch of a mesh in threads per cm: 2.54 times.
constexpr double threads_per_inch(double threads_per_cm) { return 2.54 * threads_per_cm; }

/// Distance from thread to thread, µm: 10000/n. A count that is not positive or not finite: 0.
double mesh_pitch(double threads_per_cm);

/// Clear width between two threads, µm: pitch less thread. Bad numbers, and threads as thick as
/// the pitch, leave no opening: 0.
double mesh_opening(double threads_per_cm, double thread);

/// Open share of the area, 0 to 1: (opening/pitch)². No opening: 0.
double open_share(double threads_per_cm, double thread);

/// Theoretical ink volume, cm³/m²: open share times thickness (mesh data sheets). Bad numbers: 0.
double ink_volume(double share, double thickness);

/// One mesh, as a maker states or a person measures it.
struct MeshRow {
    double threads_per_cm = 0.0;
    double thread = 0.0;    ///< nominal diameter, µm
    double opening = 0.0;   ///< µm
    double share = 0.0;     ///< open share of the area, 0 to 1
    double thickness = 0.0; ///< of the mesh, µm
    double volume = 0.0;    ///< theoretical ink volume, cm³/m²
    SourceKind source = SourceKind::user;
    bool operator==(const MeshRow&) const = default;
};

/// Meshes that are published with all their numbers (mesh data sheets). Woven mesh differs from
/// the bare geometry by up to about 2 µm and 2 points, because threads are flattened where they
/// cross.
inline constexpr std::array<MeshRow, 3> published_meshes{{
    {90, 40, 73, 0.42, 59, 25, SourceKind::published},
    {90, 48, 65, 0.33, 72, 24, SourceKind::published},
    {90, 54, 59, 0.27, 84, 23, SourceKind::published},
}};

/// What is wrong with a row.
enum class MeshRowTrouble {
    none,
    not_positive, ///< a number that is not positive or not finite
    no_opening,   ///< threads as thick as their pitch
    share_off,    ///< an open share of 1 or more
    opening_off,  ///< opening and pitch disagree by more than `opening_slack`
    volume_off,   ///< volume isn't share times thickness, within `volume_slack`
};

/// How far a stated opening may lie from pitch less thread, µm. Ours: twice and more of what the
/// published rows show.
inline constexpr double opening_slack = 5.0;

/// Share by which a stated volume may differ from share times thickness. Ours: rounding of the
/// three numbers, as in the published rows, and as much again.
inline constexpr double volume_slack = 0.10;

/// Checks a row that a person adds.
MeshRowTrouble trouble_with(const MeshRow& row);

/// The row for a mesh, or nullptr. Counts within 0.5 threads per cm and threads within 0.5 µm are
/// the same mesh; of several such rows the first.
const MeshRow* find_mesh(std::span<const MeshRow> rows, double threads_per_cm, double thread);

/// Thickness of a mesh over the diameter of its thread, where no row tells. Ours: the published
/// rows have 1.475, 1.5 and 1.556.
inline constexpr double assumed_thickness_over_thread = 1.5;

/// What is known of a mesh.
struct MeshData {
    MeshRow row;                    ///< `source` says where from; geometry counts as ours
    bool thickness_assumed = false; ///< true: from geometry, and the thickness is a guess
};

/// Looks a mesh up in the person's rows, then in the published ones, and falls back to geometry
/// with an assumed thickness. A mesh without an opening, or bad numbers: nothing.
std::optional<MeshData> mesh_data(double threads_per_cm, double thread,
                                  std::span<const MeshRow> users = {});

/// From the least to the most of something.
struct MeshRange {
    double least = 0.0;
    double most = 0.0;
};

/// The finest line that a mesh carries: from 2 pitches, with luck, to 3, safely (common practice,
/// no source). µm. A count that is not positive: zeros.
MeshRange finest_line(double threads_per_cm);

/// How a detail of an image, a line or a gap, suits the mesh.
enum class DetailFit {
    too_fine, ///< below 2 pitches
    doubtful, ///< below 3
    carried,
};

/// A width in µm against finest_line. A mesh or width that is no good carries nothing.
DetailFit detail_fit(double threads_per_cm, double width);

/// Mesh counts for a halftone: 3.5 to 4 threads per line (trade magazine, whose author warns that
/// exact ratios don't exist). Lines and threads in the same unit of length. Not positive: zeros.
MeshRange threads_for_halftone(double lines);

/// The other way round: the finest halftone that a mesh suits, from safely to just.
MeshRange halftone_for_threads(double threads);

} // namespace carriageway
