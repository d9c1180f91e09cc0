#include "app/records/fault_book.h"

#include <cmath>

#include "core/assess.h"
#include "tests/fuzz/inputs.h"
#include "tests/fuzz/sound_job.h"

namespace carriageway::fuzz {
namespace {

void use(const FaultLore& lore) {
    demand(lore.symptoms.size() == lore.book.symptoms.size() &&
               lore.causes.size() == lore.book.causes.size() &&
               lore.tests.size() == lore.book.tests.size() &&
               lore.sources.size() == lore.book.sources.size(),
           "texts and knowledge don't go together");
    Assessment assessment;
    assess(sound_job(), assessment);
    for (std::size_t symptom = 0; symptom < lore.book.symptoms.size(); ++symptom) {
        const Ranking ranking =
            rank_causes(lore.book, symptom, sound_job(), assessment, 0, {});
        double sum = 0.0;
        for (const RankedCause& cause : ranking.causes) {
            demand(std::isfinite(cause.share) && cause.score > 0.0, "a cause without a share");
            sum += cause.share;
            (void)fix_of(lore.book, cause, sound_job(), assessment);
        }
        demand(ranking.causes.empty() || std::abs(sum - 1.0) < 1e-9, "shares that make no whole");
        (void)best_tests(lore.book, ranking);
    }
}

} // namespace

void fault_book(std::string_view bytes) {
    const std::variant<FaultLore, FaultBookFault> read = read_fault_book(bytes);
    if (const FaultLore* lore = std::get_if<FaultLore>(&read)) use(*lore);
    else demand(!std::get<FaultBookFault>(read).what.empty(), "refused without a reason");
}

} // namespace carriageway::fuzz
