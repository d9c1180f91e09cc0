#include "tests/core/sample_record.h"

#include <cmath>

namespace carriageway::sample {
namespace {

Stamp stamp(Random& random) {
    if (random.chance(0.3)) return {};
    const std::int64_t year_2025 = 1'735'689'600'000;
    return {year_2025 + random.whole(0, 2'000'000'000), random.chance(0.5) ? "AB" : "\xC3\xB1"};
}

} // namespace

std::vector<WalkMark> walk(Random& random, int heads) {
    std::vector<WalkMark> marks;
    for (int head = 0; head <= heads; ++head) {
        const FieldOwner owner = head == 0 ? FieldOwner::job : FieldOwner::head;
        for (int i = 0; i < static_cast<int>(Field::count); ++i) {
            const auto field = static_cast<Field>(i);
            if (info_of(field).owner != owner || random.chance(0.6)) continue;
            WalkMark mark{static_cast<HeadId>(head), field, random.chance(0.8), {}, stamp(random)};
            if (random.chance(0.2)) mark.real = wild_number(random, field);
            marks.push_back(mark);
        }
    }
    return marks;
}

RunRecord record(Random& random) {
    RunRecord record;
    for (std::uint32_t item = 1; item <= 31; ++item)
        if (random.chance(0.2)) record.ticks.push_back({item, stamp(random)});
    double printed = 0.0;
    for (int count = random.whole(0, 4); count > 0; --count) {
        printed += random.whole(0, 200);
        const double spoiled = std::floor(random.between(0.0, 0.1) * printed);
        record.counts.push_back({printed, spoiled, stamp(random)});
    }
    const int last_reason = static_cast<int>(StopReason::count) - 1;
    for (int count = random.whole(0, 3); count > 0; --count) {
        const auto reason = static_cast<StopReason>(random.whole(0, last_reason));
        record.stoppages.push_back({random.between(0.0, 90.0), reason,
                                    random.chance(0.5) ? "" : "blade nicked", stamp(random)});
    }
    if (random.chance(0.5)) record.approval = {"AB", "print of last year", stamp(random).time};
    if (random.chance(0.5)) record.notes = "washed twice";
    return record;
}

std::vector<CheckItem> checks(Random& random) {
    std::vector<CheckItem> items;
    if (random.chance(0.5)) return items;
    for (const CheckItem& usual : usual_checks())
        if (random.chance(0.7)) items.push_back(usual);
    const auto id = static_cast<std::uint32_t>(usual_checks().size() + 1);
    for (int own = random.whole(0, 3); own > 0; --own) {
        const auto list = static_cast<CheckList>(random.whole(0, check_lists - 1));
        const auto caution =
            static_cast<Caution>(random.whole(0, static_cast<int>(Caution::solvents)));
        items.push_back({id + static_cast<std::uint32_t>(own), list, CheckStep::own,
                         "look at the compressor", caution});
    }
    return items;
}

ColourWish wish(Random& random) {
    ColourWish wish;
    wish.order = wild_number(random, Field::print_order);
    wish.cool_after = wild_number(random, Field::cool_after);
    wish.screen_on = wild_number(random, Field::screen_on);
    wish.flash_after = random.chance(0.5);
    wish.flash_together = random.chance(0.5);
    wish.wet_on_wet = random.chance(0.5);
    wish.pinned = random.chance(0.2);
    return wish;
}

} // namespace carriageway::sample
