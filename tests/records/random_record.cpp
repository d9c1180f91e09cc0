// What people note of a job and its run, at random.
#include <algorithm>
#include <cmath>
#include <limits>

#include "tests/records/random_job.h"

namespace carriageway {
namespace {

constexpr std::int64_t latest_time = 9'007'199'254'740'991; // 2^53 - 1

} // namespace

std::string RandomJobs::note() { return below(3) == 0 ? std::string() : name(); }

Stamp RandomJobs::stamp() {
    Stamp stamp;
    if (below(4) == 0) return stamp;
    stamp.time = std::uniform_int_distribution<std::int64_t>(0, latest_time)(engine_);
    if (below(8) == 0) stamp.time = latest_time;
    for (std::size_t count = below(longest_initials + 1); count > 0; --count)
        stamp.initials += "AZ.\"\\\x1F"[below(6)];
    return stamp;
}

WalkMark RandomJobs::walk_mark(HeadId head, Field field) {
    WalkMark mark{head, field, coin(), std::nullopt, stamp()};
    if (coin()) mark.real = number(field);
    return mark;
}

std::vector<WalkMark> RandomJobs::walk() {
    std::vector<WalkMark> marks;
    if (coin()) return marks;
    for (const HeadId head :
         {HeadId{0}, HeadId{1}, HeadId{2}, std::numeric_limits<HeadId>::max()}) {
        const FieldOwner owner = head == 0 ? FieldOwner::job : FieldOwner::head;
        for (int i = 0; i < static_cast<int>(Field::count); ++i) {
            const auto field = static_cast<Field>(i);
            if (info_of(field).owner == owner && below(5) == 0)
                marks.push_back(walk_mark(head, field));
        }
    }
    return marks;
}

RunRecord RandomJobs::record() {
    RunRecord record;
    if (coin()) return record;
    for (std::uint32_t count = static_cast<std::uint32_t>(below(6)); count > 0;
         --count) // each once
        record.ticks.push_back({std::numeric_limits<std::uint32_t>::max() - count * 7u, stamp()});
    for (std::size_t count = below(4); count > 0; --count) {
        const double printed = std::round(number(0.0, most_pieces_counted));
        record.counts.push_back({printed, std::round(number(0.0, printed)), stamp()});
    }
    for (std::size_t count = below(4); count > 0; --count)
        record.stoppages.push_back({number(0.0, most_minutes),
                                    choice<StopReason>(static_cast<std::size_t>(StopReason::count)),
                                    note(), stamp()});
    if (coin()) record.approval = {note(), note(), stamp().time};
    record.notes = note();
    return record;
}

std::vector<CheckItem> RandomJobs::checks() {
    std::vector<CheckItem> items;
    for (std::uint32_t id = static_cast<std::uint32_t>(below(6)); id > 0; --id) {
        CheckItem item;
        item.id = id * 1000u;
        item.list = choice<CheckList>(static_cast<std::size_t>(check_lists));
        item.step = choice<CheckStep>(static_cast<std::size_t>(CheckStep::count));
        item.caution = choice<Caution>(static_cast<std::size_t>(Caution::solvents) + 1);
        if (item.step == CheckStep::own || coin()) {
            item.step = CheckStep::own;
            item.text = name();
            if (item.text.empty()) item.text = "own";
        }
        items.push_back(std::move(item));
    }
    return items;
}

ColourWish RandomJobs::wish() {
    return {number(Field::print_order),
            number(Field::cool_after),
            number(Field::screen_on),
            coin(),
            coin(),
            coin(),
            coin()};
}

} // namespace carriageway
