// What a job holds beside its numbers, part by part: texts, choices, outlines, lists, and numbers
// that can only be taken together. Serves comparing two jobs (job_changes.h) and putting two walks
// together (walk_merge.h).
#pragma once

#include <optional>

#include "core/edit.h"
#include "core/job.h"

namespace carriageway {

enum class JobPart {
    // of a head
    colour, ///< its name
    ink,    ///< its colour in the drawing
    print_stroke,
    winged,
    height_stop,
    blade_edge,
    image,   ///< whole: size, outline and place
    outline, ///< of the image alone
    stops,   ///< both
    wish,    ///< whole: what the colour wants of its place
    flash_after,
    flash_together,
    wet_on_wet,
    pinned,
    ink_note,
    stencil_note,
    rounds, ///< of registration
    // of the job
    name,
    garment_kind,
    garment_name,
    base_head,
    uses,  ///< of all stations
    press, ///< the profile, whole
    height_readings,
    approval,
    run_notes,
    count, ///< how many there are; not a part
};

/// Whether a part is a head's rather than the job's.
constexpr bool is_of_head(JobPart part) { return part < JobPart::name; }

/// Whether two jobs have a part alike. The heads, one of each job, must be given for parts of a
/// head (otherwise: alike) and are ignored for others.
bool same_part(const Job& a, const Head* head_a, const Job& b, const Head* head_b, JobPart part);

/// Whether somebody has said anything of a part: texts and lists that are empty, and an edge of a
/// blade or an approval that isn't noted, say nothing. All other parts say something; a part of no
/// head doesn't.
bool is_noted(const Job& job, const Head* head, JobPart part);

/// The edit that gives `to` a part as `from` has it, under the same head's id (0 for parts of the
/// job). Without that head in `from`, or for the parts that are a share of another (outline, and
/// the four of a wish): nothing.
std::optional<Edit> edit_of_part(const Job& from, const Job& to, HeadId head, JobPart part);

} // namespace carriageway
