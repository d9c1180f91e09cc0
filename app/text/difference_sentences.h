// What differs between two jobs, in words: for the screen and the command line alike.
#pragma once

#include <string>

#include "app/text/measure.h"
#include "app/text/words.h"
#include "core/job_changes.h"

namespace carriageway {

/// One difference, ready to be put into a table.
struct SaidDifference {
    std::string what; ///< "squeegee angle"
    std::string a;    ///< as a person reads it, with its unit; stops as their press's ruler shows
    std::string b;
};

/// A difference of `a` and `b` in words; it must be one of theirs.
SaidDifference difference_text(Language language, LengthUnit unit, const Job& a, const Job& b,
                               const JobDifference& difference);

/// Whose it is: the title of the head as it is in `a`, else in `b`; "The job" for the job's own.
std::string difference_owner(Language language, const Job& a, const Job& b,
                             const JobDifference& difference);

/// Whether two differences belong to the same head, or both to the job.
inline bool same_owner(const JobDifference& one, const JobDifference& other) {
    return one.head_a == other.head_a && one.head_b == other.head_b;
}

} // namespace carriageway
