#include "app/records/mark_file.h"

#include <cmath>

#include "core/job_check.h"
#include "core/registration.h"
#include "tests/fuzz/inputs.h"

namespace carriageway::fuzz {

void mark_file(std::string_view bytes) {
    const ReadMarks read = read_marks(bytes);
    if (!read) {
        for (const Language language : {Language::english, Language::spanish})
            demand(!fault_sentence(language, read.fault).empty(), "a refusal without a sentence");
        return;
    }
    demand(!read.rounds.empty(), "a file without marks is accepted");
    for (const MarkRound& round : read.rounds) {
        demand(!round.marks.empty() && round.marks.size() <= most_marks_a_round,
               "a print with too few or too many marks");
        for (const MarkReading& mark : round.marks)
            demand(std::isfinite(mark.nominal.x) && std::isfinite(mark.nominal.y) &&
                       std::isfinite(mark.measured.x) && std::isfinite(mark.measured.y),
                   "a mark at no place");
    }
    if (read.rounds.size() <= most_rounds)
        demand(are_rounds(read.rounds), "core refuses marks that were read");
}

} // namespace carriageway::fuzz
