// What was set differently in two jobs: last time and this time, this press and that one, planned
// and really set.
//
// Nothing is rounded: two numbers differ if they aren't the same. What the press itself is, is not
// compared number by number: a press isn't set.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/job.h"
#include "core/job_parts.h"

namespace carriageway {

/// How two heads were found to be the same.
enum class MatchedBy {
    id,
    colour, ///< the same name
    order,  ///< neither; they only come at the same place among those left over
    nothing, ///< a head without a partner
};

/// A head of one job and its partner in the other; 0: none.
struct HeadPair {
    HeadId a = 0;
    HeadId b = 0;
    MatchedBy by = MatchedBy::nothing;
    bool operator==(const HeadPair&) const = default;
};

/// Every head of both jobs, once: those of `a` in their order, then those of `b` alone. Two jobs
/// are copies of one if more than half of the heads of the smaller have a head in the other with
/// their id and their colour's name. Then heads go together by id, and those left over by colour.
/// Otherwise they go together by colour (not by an empty name; of several of a name the first with
/// the first), and those left over by order.
std::vector<HeadPair> match_heads(const Job& a, const Job& b);

enum class DifferenceKind {
    number,
    text,
    choice,  ///< one of several, or yes and no
    station, ///< a head stands elsewhere
    use,     ///< a station is used for something else
    outline, ///< of an image
    head_only_in_a,
    head_only_in_b,
};

/// One difference.
struct JobDifference {
    DifferenceKind kind = DifferenceKind::number;
    HeadId head_a = 0; ///< 0 in both: of the job
    HeadId head_b = 0;
    int station = 0;   ///< of the head in `a`, else in `b`; of a use: whose; else 0
    Field field = Field::count;    ///< of a number
    JobPart part = JobPart::count; ///< of a text, choice or outline
    /// Numbers in the core's unit; a station's number; of a choice and a use the place in its
    /// enumeration, or 1 for yes and 0 for no. Texts and outlines: nothing.
    std::optional<double> a;
    std::optional<double> b;
    std::string text_a; ///< of a text
    std::string text_b;
    bool operator==(const JobDifference&) const = default;
};

struct CompareBy {
    bool as_set = true; ///< with what the walks say was really set (walk.h); false: as planned
    /// Only what decides how a print comes out: without names, notes, wishes of place, what is
    /// assumed and how many are printed.
    bool what_matters = false;
};

/// Whether a number decides how a print comes out.
bool decides_the_print(Field field);

/// All differences: heads by the station that they have in `a` (else in `b`), then the job's.
/// Of each: where it stands, then texts, choices, outline, and numbers in Field's order.
std::vector<JobDifference> job_changes(const Job& a, const Job& b, const CompareBy& by = {});

} // namespace carriageway
