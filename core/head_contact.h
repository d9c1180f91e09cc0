// How a head's blades meet mesh and garment, and what they lay down: worked out of its heights,
// angles, gauges, air, mesh and ink by the formulas of blade_pose.h, off_contact.h, taut_mesh.h,
// pressure.h, mesh.h and ink.h.
//
// Pure, and without memory of its own. Lengths mm; forces along the blade N/cm.
#pragma once

#include <optional>

#include "core/blade_pose.h"
#include "core/ink.h"
#include "core/job.h"
#include "core/mesh.h"
#include "core/off_contact.h"
#include "core/pressure.h"
#include "core/stroke.h"
#include "core/taut_mesh.h"

namespace carriageway {

/// Heights and forces of one head.
struct HeadContact {
    OffContactPlane plane;    ///< of the mesh over the bare platen
    GapRange gap;             ///< over the compressed garment, within the image's bounds
    double middle_gap = 0.0;  ///< in the middle of the image
    double uneven = 0.0;      ///< height set at the right less that at the left, operator's side
    EdgeContact squeegee;     ///< its edge as angle and gauge set it, at the middle of the image
    EdgeContact flood;
    double wing_clearance = 0.0; ///< of a winged flood bar's tips over the mesh
    std::optional<WorstPoint> worst; ///< where the print stroke finds the mesh hardest to hold down
    std::optional<double> thrust;    ///< of the squeegee's cylinders, N
    std::optional<double> line_load; ///< none on a height stop: thrust isn't line load there
    HoldDown hold = HoldDown::not_known;
    std::optional<MeshShift> operator_shift; ///< of the image's end nearest the operator
    std::optional<MeshShift> machine_shift;
    std::optional<MeshShift> growth;      ///< how much longer than its film the image prints
    std::optional<MeshShift> beside_base; ///< how much longer than the base head prints the same
};

/// What one head lays down.
struct HeadDeposit {
    std::optional<MeshData> mesh; ///< none: threads as thick as their pitch
    double film = 0.0;            ///< wet film of one stroke, µm (cm³/m²)
    double image_area = 0.0;      ///< mm²
    std::optional<InkNeed> ink;   ///< for the run
    MeshRange finest;             ///< finest line the mesh carries, µm, from perhaps to safely
    std::optional<DetailFit> detail; ///< none while the image's finest line isn't known
};

/// The plane through the three heights of a screen.
OffContactPlane plane_of(const ScreenHeights& heights, const HeightPoints& points);

/// How this head's squeegee works its mesh, for shifts. A blade on its height stop counts with no
/// line load, because none is known: then only heights shift the image.
MeshContact mesh_contact(const Job& job, const Head& head, double gap);

/// The head that the others are set by: the job's base, else the first. None in a job without heads.
const Head* base_head(const Job& job);

/// Works one head out. `image` is the bounds of its image and `swept` the squeegee's band.
HeadContact head_contact(const Job& job, const Head& head, const Rect& image, const Rect& swept);

/// Likewise; `area` is the image's.
HeadDeposit head_deposit(const Job& job, const Head& head, double area);

} // namespace carriageway
