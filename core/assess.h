// Everything a frame, the command line and the sheet need to know about a job.
//
// assess() is pure and total on any job that fault_of() accepts: linear in heads, no exception,
// and no allocation once `reuse` has been through a job of the same size, wherever its stops stand.
// (With outlines of hundreds of corners, storage may still grow a few times on the way.)
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "core/coverage.h"
#include "core/findings.h"
#include "core/head_contact.h"
#include "core/limits.h"
#include "core/sensor.h"
#include "core/stroke.h"
#include "core/tolerance.h"

namespace carriageway {

/// How much room a limit has left at the stops as they stand, mm; negative: broken.
struct Margin {
    LimitKind kind = LimitKind::carriage_range;
    End end = End::operator_side;
    double left = 0.0;  ///< with everything as typed
    double worst = 0.0; ///< with every deviation at its worst: left less their sum
    double root_sum_square = 0.0; ///< left less the root sum square of the deviations
};
inline constexpr int margins_a_head = 2 * limits_a_stop + 1;

/// One head, worked out.
struct HeadAssessment {
    HeadId head = 0;
    StrokeGeometry geometry;
    Ends ends;
    Rect squeegee; ///< band swept by the squeegee
    Rect flood;    ///< band swept by the flood bar
    double separation = 0.0;       ///< between the bars
    double least_separation = 0.0;
    bool both_on = false; ///< the head goes up and down and covers nothing

    Outline image; ///< as it lies on the screen
    Rect image_bounds;
    Coverage coverage;       ///< of the image
    CoveredArea grown_coverage; ///< of the image grown by the run-past
    double operator_run_past = 0.0; ///< of both bands past the image; negative: image missed
    double machine_run_past = 0.0;
    double side_overlap = 0.0; ///< of both bands past the image across, at the worse side

    AllowedSet allowed;
    std::optional<Stops> shortest; ///< exact
    std::optional<Stops> advised;  ///< the same on the ruler's graduations, where a job may hold it
    std::optional<Conflict> conflict; ///< when nothing is allowed
    std::optional<Change> change;

    std::array<Margin, margins_a_head> margins; ///< operator's, machine's, then the separation
    /// Chance that image is missed at an end, 0 to 1, as set and with the profile's spreads; 1 when
    /// both sensors are on.
    double chance_missed = 0.0;
    double print_time = 0.0;    ///< s, one print stroke
    double flood_time = 0.0;    ///< s, one flood stroke

    HeadContact contact; ///< heights and forces
    HeadDeposit deposit; ///< what is laid down

    std::vector<Finding> findings; ///< worst first
    bool fit = false;              ///< no finding is a stop

    // Kept from assessment to assessment: the image's columns are cut anew only when it changes.
    std::vector<Column> columns;
    std::vector<Column> grown_columns;
    double grown_by = -1.0;
};

/// A job, worked out. Reuse one object: it keeps its storage.
struct Assessment {
    std::vector<HeadAssessment> heads; ///< in the job's order
    int fit_heads = 0;
    bool fit = false; ///< every head is fit
    ColumnScratch column_scratch;
    CoverScratch cover_scratch;
    Coverage grown; ///< scratch: of a grown image only the areas are kept
    Outline placed; ///< scratch
};

/// Works a job out into `reuse`.
void assess(const Job& job, Assessment& reuse);

/// Works out one head only, into the place that it has in `reuse` (which must come from an
/// assess() of the same job but for that head's settings). For a drag.
void assess_head(const Job& job, std::size_t index, Assessment& reuse);

/// The head's assessment, or nullptr.
const HeadAssessment* find_head(const Assessment& assessment, HeadId id);

/// "Set for me": the edit that puts every head's stops on its advised ones where they have any and
/// stand elsewhere. Nothing to do: empty.
std::optional<Edit> set_every_stop(const Job& job, const Assessment& assessment);

} // namespace carriageway
