// Whether what was noted on a walk and in a run, and the lists of a press, may be kept.
#include <algorithm>
#include <cmath>

#include "core/job_check.h"

namespace carriageway {
namespace {

/// The last millisecond that a number in JSON keeps everywhere (2^53 - 1).
constexpr std::int64_t latest = 9'007'199'254'740'991;

bool is_time(std::int64_t time) { return time >= 0 && time <= latest; }

bool is_stamp(const Stamp& stamp) {
    return is_time(stamp.time) && stamp.initials.size() <= longest_initials &&
           is_utf8(stamp.initials);
}

bool is_whole(double number, double most) {
    return number >= 0.0 && number <= most && number == std::round(number);
}

/// Whether every item differs from those before it, by what `key` gives.
template <typename Items, typename Key>
bool each_once(const Items& items, Key key) {
    std::vector<std::uint32_t> keys;
    keys.reserve(items.size());
    for (const auto& item : items) keys.push_back(key(item));
    std::sort(keys.begin(), keys.end());
    return std::adjacent_find(keys.begin(), keys.end()) == keys.end();
}

bool is_count(const PieceCount& count) {
    return is_whole(count.printed, most_pieces_counted) && is_whole(count.spoiled, count.printed) &&
           is_stamp(count.stamp);
}

bool is_stoppage(const Stoppage& stoppage) {
    return stoppage.minutes >= 0.0 && stoppage.minutes <= most_minutes &&
           stoppage.reason >= StopReason{} && stoppage.reason < StopReason::count &&
           is_name(stoppage.note) && is_stamp(stoppage.stamp);
}

} // namespace

bool is_walk_mark(const WalkMark& mark) {
    if (mark.field < Field{} || mark.field >= Field::count || !is_stamp(mark.stamp)) return false;
    const FieldOwner owner = mark.head == 0 ? FieldOwner::job : FieldOwner::head;
    if (info_of(mark.field).owner != owner) return false;
    return !mark.real || accepts(mark.field, *mark.real);
}

bool is_walk(const std::vector<WalkMark>& marks) {
    const auto not_before = [](const WalkMark& a, const WalkMark& b) { return !walk_before(a, b); };
    return marks.size() <= most_walk_marks &&
           std::all_of(marks.begin(), marks.end(), is_walk_mark) &&
           std::adjacent_find(marks.begin(), marks.end(), not_before) == marks.end();
}

bool is_record(const RunRecord& record) {
    const auto is_tick = [](const CheckTick& tick) { return tick.item != 0 && is_stamp(tick.stamp); };
    return record.ticks.size() <= most_check_items && record.counts.size() <= most_counts &&
           record.stoppages.size() <= most_stoppages &&
           std::all_of(record.ticks.begin(), record.ticks.end(), is_tick) &&
           each_once(record.ticks, [](const CheckTick& tick) { return tick.item; }) &&
           std::all_of(record.counts.begin(), record.counts.end(), is_count) &&
           std::all_of(record.stoppages.begin(), record.stoppages.end(), is_stoppage) &&
           is_name(record.approval.by) && is_name(record.approval.against) &&
           is_time(record.approval.time) && is_name(record.notes);
}

bool are_checks(const std::vector<CheckItem>& checks) {
    const auto is_item = [](const CheckItem& item) {
        if (item.id == 0 || !is_name(item.text)) return false;
        if (item.list < CheckList::before_run || item.list > CheckList::tear_down) return false;
        if (item.caution < Caution::none || item.caution > Caution::solvents) return false;
        const bool own = item.step == CheckStep::own;
        return item.step >= CheckStep::own && item.step < CheckStep::count &&
               own == !item.text.empty();
    };
    return checks.size() <= most_check_items && std::all_of(checks.begin(), checks.end(), is_item) &&
           each_once(checks, [](const CheckItem& item) { return item.id; });
}

} // namespace carriageway
