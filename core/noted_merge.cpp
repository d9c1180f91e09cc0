#include "core/noted_merge.h"

#include <algorithm>
#include <iterator>
#include <tuple>

#include "core/job_check.h"
#include "core/walk.h"

namespace carriageway {
namespace {

auto order_of(const Stamp& stamp) {
    // A moment that is noted before none, somebody before nobody.
    return std::tuple(stamp.time == 0, stamp.time, stamp.initials.empty(), stamp.initials);
}

Stamp earlier(const Stamp& a, const Stamp& b) {
    return order_of(b) < order_of(a) ? b : a;
}

auto order_of(const CheckTick& tick) { return std::tuple(tick.stamp.time, tick.item); }
auto order_of(const PieceCount& count) {
    return std::tuple(count.stamp.time, count.printed, count.spoiled, count.stamp.initials);
}
auto order_of(const Stoppage& stop) {
    return std::tuple(stop.stamp.time, stop.minutes, stop.reason, stop.note, stop.stamp.initials);
}
auto order_of(const HeightReading& reading) {
    return std::tuple(reading.head, reading.platen, reading.y, reading.x, reading.height);
}

constexpr auto in_order = [](const auto& a, const auto& b) { return order_of(a) < order_of(b); };

/// What a mark says is set: its real value; ticked without one, what its own side plans. Where that
/// side has taken the head off since, what the other plans.
std::optional<double> value_of(const Job& own, const Job& other, const WalkMark& mark) {
    if (mark.real || !mark.done) return mark.real;
    const auto planned = planned_value(own, mark.head, mark.field);
    return planned ? planned : planned_value(other, mark.head, mark.field);
}

struct WalkMerger {
    const Job& mine;
    const Job& theirs;
    const Job& merged;
    const AskWhose& whose;

    bool is_planned(const WalkMark& mark, std::optional<double> value) const {
        return value == planned_value(merged, mark.head, mark.field);
    }

    /// A mark of one side beside what is planned in the end.
    WalkMark one(const Job& own, const Job& other, WalkMark mark) const {
        const auto value = value_of(own, other, mark);
        if (!mark.real && !is_planned(mark, value)) mark.real = value;
        return mark;
    }
    WalkMark my_one(const WalkMark& mark) const { return one(mine, theirs, mark); }
    WalkMark their_one(const WalkMark& mark) const { return one(theirs, mine, mark); }

    WalkMark both(const WalkMark& my, const WalkMark& their) const {
        MergeConflict conflict;
        conflict.head = my.head;
        conflict.field = my.field;
        conflict.mine = value_of(mine, theirs, my);
        conflict.theirs = value_of(theirs, mine, their);
        conflict.mine_done = my.done;
        conflict.theirs_done = their.done;
        conflict.mine_stamp = my.stamp;
        conflict.theirs_stamp = their.stamp;
        // Ticked as planned where nobody has the plan any more: that says nothing of a value.
        const bool says_nothing = my.done && (!conflict.mine || !conflict.theirs);
        if (my.done != their.done || (conflict.mine != conflict.theirs && !says_nothing)) {
            return whose(conflict) ? their_one(their) : my_one(my);
        }
        WalkMark agreed = my_one(my);
        agreed.stamp = earlier(my.stamp, their.stamp);
        // One says it by its real value, the other by its plan.
        if (my.real != their.real) {
            agreed.real = conflict.mine ? conflict.mine : conflict.theirs;
            if (is_planned(my, agreed.real)) agreed.real.reset();
        }
        return agreed;
    }
};

/// Entries of two lists: what both have, and what each has alone, all in order.
template <typename Entry>
struct Shared {
    std::vector<Entry> both;
    std::vector<Entry> mine;
    std::vector<Entry> theirs;
};

template <typename Entry>
Shared<Entry> shared(std::vector<Entry> mine, std::vector<Entry> theirs) {
    std::sort(mine.begin(), mine.end(), in_order);
    std::sort(theirs.begin(), theirs.end(), in_order);
    Shared<Entry> out;
    std::set_intersection(mine.begin(), mine.end(), theirs.begin(), theirs.end(),
                          std::back_inserter(out.both), in_order);
    std::set_difference(mine.begin(), mine.end(), theirs.begin(), theirs.end(),
                        std::back_inserter(out.mine), in_order);
    std::set_difference(theirs.begin(), theirs.end(), mine.begin(), mine.end(),
                        std::back_inserter(out.theirs), in_order);
    return out;
}

/// The only entry of a list with this stamp, or none.
template <typename Entry>
const Entry* only_at(const std::vector<Entry>& entries, const Stamp& stamp) {
    const auto at = [&](const Entry& entry) { return entry.stamp == stamp; };
    if (stamp.time == 0 || std::count_if(entries.begin(), entries.end(), at) != 1) return nullptr;
    return &*std::find_if(entries.begin(), entries.end(), at);
}

MergeConflict at_odds(const PieceCount& mine, const PieceCount& theirs) {
    MergeConflict conflict;
    conflict.kind = MergeKind::count;
    conflict.mine = mine.printed;
    conflict.theirs = theirs.printed;
    return conflict;
}
MergeConflict at_odds(const Stoppage& mine, const Stoppage& theirs) {
    MergeConflict conflict;
    conflict.kind = MergeKind::stoppage;
    conflict.mine = mine.minutes;
    conflict.theirs = theirs.minutes;
    return conflict;
}

/// Counts or stoppages of both.
template <typename Entry>
std::vector<Entry> joined(const std::vector<Entry>& mine, const std::vector<Entry>& theirs,
                          const AskWhose& whose) {
    if (mine == theirs) return mine;
    const Shared<Entry> parts = shared(mine, theirs);
    std::vector<Entry> out = parts.both;
    for (const Entry& my : parts.mine) {
        const Entry* their = only_at(parts.theirs, my.stamp);
        if (their == nullptr || only_at(parts.mine, my.stamp) == nullptr) {
            out.push_back(my);
            continue;
        }
        MergeConflict conflict = at_odds(my, *their);
        conflict.mine_stamp = my.stamp;
        conflict.theirs_stamp = their->stamp;
        out.push_back(whose(conflict) ? *their : my);
    }
    for (const Entry& their : parts.theirs) {
        const bool asked = only_at(parts.theirs, their.stamp) != nullptr &&
                           only_at(parts.mine, their.stamp) != nullptr;
        if (!asked) out.push_back(their);
    }
    std::sort(out.begin(), out.end(), in_order);
    return out;
}

std::vector<CheckTick> joined_ticks(const std::vector<CheckTick>& mine,
                                    const std::vector<CheckTick>& theirs) {
    if (mine == theirs) return mine;
    std::vector<CheckTick> out = mine;
    for (const CheckTick& tick : theirs) {
        const auto found = std::find_if(out.begin(), out.end(), [&](const CheckTick& other) {
            return other.item == tick.item;
        });
        if (found == out.end()) {
            out.push_back(tick);
        } else {
            found->stamp = earlier(found->stamp, tick.stamp);
        }
    }
    std::sort(out.begin(), out.end(), in_order);
    return out;
}

/// Whether theirs is taken of a part of the record.
bool takes_theirs(const Job& mine, const Job& theirs, JobPart part, const AskWhose& whose) {
    if (same_part(mine, nullptr, theirs, nullptr, part)) return false;
    if (!is_noted(theirs, nullptr, part)) return false;
    if (!is_noted(mine, nullptr, part)) return true;
    MergeConflict conflict;
    conflict.kind = MergeKind::part;
    conflict.part = part;
    return whose(conflict);
}

} // namespace

std::vector<WalkMark> merged_walk(const Job& mine, const Job& theirs, const Job& merged,
                                  const AskWhose& whose) {
    const WalkMerger merger{mine, theirs, merged, whose};
    std::vector<WalkMark> out;
    auto my = mine.walk.begin();
    auto their = theirs.walk.begin();
    while (my != mine.walk.end() || their != theirs.walk.end()) {
        if (their == theirs.walk.end() || (my != mine.walk.end() && walk_before(*my, *their))) {
            out.push_back(merger.my_one(*my++));
        } else if (my == mine.walk.end() || walk_before(*their, *my)) {
            out.push_back(merger.their_one(*their++));
        } else {
            out.push_back(merger.both(*my++, *their++));
        }
    }
    return out;
}

RunRecord merged_record(const Job& mine, const Job& theirs, const AskWhose& whose) {
    RunRecord record = mine.record;
    if (takes_theirs(mine, theirs, JobPart::approval, whose)) {
        record.approval = theirs.record.approval;
    }
    if (takes_theirs(mine, theirs, JobPart::run_notes, whose)) record.notes = theirs.record.notes;
    record.ticks = joined_ticks(mine.record.ticks, theirs.record.ticks);
    record.counts = joined(mine.record.counts, theirs.record.counts, whose);
    record.stoppages = joined(mine.record.stoppages, theirs.record.stoppages, whose);
    return record;
}

std::vector<HeightReading> merged_readings(const std::vector<HeightReading>& mine,
                                           const std::vector<HeightReading>& theirs) {
    if (mine == theirs) return mine;
    const Shared<HeightReading> parts = shared(mine, theirs);
    std::vector<HeightReading> out = parts.both;
    out.insert(out.end(), parts.mine.begin(), parts.mine.end());
    out.insert(out.end(), parts.theirs.begin(), parts.theirs.end());
    std::sort(out.begin(), out.end(), in_order);
    return out;
}

bool fits_one_job(const Job& mine, const Job& theirs) {
    const AskWhose mine_always = [](const MergeConflict&) { return false; };
    const RunRecord record = merged_record(mine, theirs, mine_always);
    return merged_walk(mine, theirs, mine, mine_always).size() <= most_walk_marks &&
           record.ticks.size() <= most_check_items && record.counts.size() <= most_counts &&
           record.stoppages.size() <= most_stoppages &&
           merged_readings(mine.height_readings, theirs.height_readings).size() <=
               most_height_readings;
}

bool goes_on(const std::vector<MarkRound>& longer, const std::vector<MarkRound>& shorter) {
    return longer.size() >= shorter.size() &&
           std::equal(shorter.begin(), shorter.end(), longer.begin());
}

} // namespace carriageway
