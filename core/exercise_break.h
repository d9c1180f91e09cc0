// Breaking a job that is right: one number, or a pair that belongs together, set so that a finding
// comes of it.
#pragma once

#include <optional>
#include <vector>

#include "core/exercise.h"

namespace carriageway {

/// What can be set wrong at a head.
enum class BreakingKind {
    stops_together,     ///< both sensors on at once
    operator_stop_in,   ///< the stroke ends too early there
    machine_stop_in,
    operator_stop_out,  ///< the stroke runs too far there
    machine_stop_out,
    flood_too_flat,     ///< its wings lie on the mesh
    squeegee_too_steep, ///< more upright than the holders allow
    squeegee_narrow,
    flood_narrow,
    too_fast,
    squeegee_lifted,
    one_side_high,
    screen_low,
    mesh_slack,
    image_aside,
    count, ///< how many there are; not a kind
};

/// The edit that breaks a head so; `much` from 0 (just) to 1. Nothing where the job has no such
/// head, or apply() would refuse it.
std::optional<Edit> breaking_edit(const Job& job, HeadId head, BreakingKind kind, double much);

/// A breaking that makes a difference to a job.
struct Breaking {
    BreakingKind kind = BreakingKind::stops_together;
    Edit edit;
    std::vector<FaultClaim> faults; ///< that are new with it
};

/// What a trainer can choose from for a head: every kind that makes the job have faults that it
/// didn't have, half as much as it may be.
std::vector<Breaking> breakings_of(const Job& job, HeadId head);

/// An exercise out of a real job: find the fault, after these edits. Nothing where one of them is
/// refused, where the job has stops or minds before (they would be accidental others), or where
/// none comes of them. The solution claims exactly what is found; what undoes the edits is in its
/// edits, for showing.
std::optional<Exercise> exercise_from(const Job& real, const std::vector<Edit>& edits);

/// The same from the job as it is broken, when it comes from elsewhere. Nothing where fault_of()
/// refuses it or assess() finds no stop and no mind.
std::optional<Exercise> exercise_of_broken(const Job& broken);

} // namespace carriageway
