#include "core/walk.h"

#include <algorithm>
#include <array>
#include <utility>

#include "core/job_check.h"
#include "core/recipe.h"

namespace carriageway {
namespace {

/// In the order of working: first what is fitted, then how it stands, then how it moves.
constexpr std::array head_fields{
    Field::squeegee_width,    Field::flood_width,    Field::squeegee_angle, Field::flood_angle,
    Field::squeegee_gauge,    Field::flood_gauge,    Field::operator_stop,  Field::machine_stop,
    Field::height_left,       Field::height_right,   Field::height_machine,
    Field::squeegee_pressure, Field::flood_pressure, Field::print_speed,    Field::flood_speed,
    Field::print_strokes};

bool has_flash(const Job& job) {
    return std::find(job.uses.begin(), job.uses.end(), StationUse::flash) != job.uses.end();
}

std::vector<Field> job_fields(const Job& job) {
    std::vector<Field> fields;
    if (has_flash(job)) {
        fields.push_back(Field::flash_dwell);
        if (!is_not_noted(Field::flash_temperature, job.run.flash_temperature)) {
            fields.push_back(Field::flash_temperature);
        }
    }
    fields.push_back(Field::cycle);
    return fields;
}

/// Whether a field is a number of the head, or with head 0 of the job.
bool belongs_to(Field field, HeadId head) {
    if (field < Field{} || field >= Field::count) return false;
    return info_of(field).owner == (head == 0 ? FieldOwner::job : FieldOwner::head);
}

/// Both stops of a head with their real values in place.
Stops stops_as_set(const Job& job, const Head& head) {
    Stops stops = head.stops;
    const WalkMark* at_operator = mark_of(job, head.id, Field::operator_stop);
    const WalkMark* at_machine = mark_of(job, head.id, Field::machine_stop);
    if (at_operator != nullptr && at_operator->real) stops.operator_side = *at_operator->real;
    if (at_machine != nullptr && at_machine->real) stops.machine_side = *at_machine->real;
    return stops;
}

/// What keeps a mark's real value, which it must have, out of the job.
std::optional<MarkTrouble> trouble_with(const Job& job, const WalkMark& mark) {
    const Head* head = find_head(job, mark.head);
    if (mark.head != 0 && head == nullptr) return MarkTrouble::no_such_head;
    if (!is_walk_mark(mark)) return MarkTrouble::out_of_range;
    const bool of_rectangle =
        mark.field == Field::image_width || mark.field == Field::image_length;
    if (of_rectangle && !head->image.outline.empty()) return MarkTrouble::image_has_outline;
    if (is_stop(mark.field) && stops_fault(stops_as_set(job, *head))) {
        return MarkTrouble::stops_crossed;
    }
    return std::nullopt;
}

} // namespace

std::vector<HeadId> walk_order(const Job& job) {
    std::vector<HeadId> order;
    order.reserve(job.heads.size() + 1);
    for (const Head& head : job.heads)
        order.push_back(head.id);
    order.push_back(0);
    return order;
}

std::vector<Field> walk_fields(const Job& job, HeadId head) {
    if (head == 0) return job_fields(job);
    if (find_head(job, head) == nullptr) return {};
    return {head_fields.begin(), head_fields.end()};
}

const WalkMark* mark_of(const Job& job, HeadId head, Field field) {
    WalkMark wanted;
    wanted.head = head;
    wanted.field = field;
    const auto at = std::lower_bound(job.walk.begin(), job.walk.end(), wanted, walk_before);
    const bool found = at != job.walk.end() && at->head == head && at->field == field;
    return found ? &*at : nullptr;
}

bool is_done(const Job& job, HeadId head, Field field) {
    const WalkMark* mark = mark_of(job, head, field);
    return mark != nullptr && mark->done;
}

std::optional<double> planned_value(const Job& job, HeadId head, Field field) {
    if (!belongs_to(field, head)) return std::nullopt;
    const Head* found = find_head(job, head);
    if (head != 0 && found == nullptr) return std::nullopt;
    return number_of(job, found, field);
}

std::optional<double> value_as_set(const Job& job, HeadId head, Field field) {
    const auto planned = planned_value(job, head, field);
    const WalkMark* mark = mark_of(job, head, field);
    return planned && mark != nullptr && mark->real ? mark->real : planned;
}

Job as_set(const Job& job) {
    Job set = job;
    for (const WalkMark& mark : job.walk) {
        // Each is judged by the job as planned: what one mark puts in decides nothing for another.
        if (!mark.real || trouble_with(job, mark)) continue;
        number_of(set, find_head(set, mark.head), mark.field) = *mark.real;
    }
    return set;
}

std::vector<UnusableMark> unusable_marks(const Job& job) {
    std::vector<UnusableMark> unusable;
    for (const WalkMark& mark : job.walk) {
        if (!mark.real) continue;
        if (const auto trouble = trouble_with(job, mark)) {
            unusable.push_back({mark.head, mark.field, *trouble});
        }
    }
    return unusable;
}

WalkProgress progress_at(const Job& job, HeadId head) {
    WalkProgress progress;
    for (const Field field : walk_fields(job, head)) {
        ++progress.of;
        if (is_done(job, head, field)) ++progress.done;
    }
    return progress;
}

WalkProgress progress_of(const Job& job) {
    WalkProgress progress;
    for (const HeadId head : walk_order(job)) {
        const WalkProgress here = progress_at(job, head);
        progress.done += here.done;
        progress.of += here.of;
    }
    return progress;
}

std::optional<HeadId> next_unfinished(const Job& job, std::optional<HeadId> after) {
    std::vector<HeadId> order = walk_order(job);
    if (after) {
        const auto at = std::find(order.begin(), order.end(), *after);
        if (at != order.end()) std::rotate(order.begin(), at + 1, order.end());
    }
    const auto next = std::find_if(order.begin(), order.end(), [&](HeadId head) {
        return !progress_at(job, head).finished();
    });
    if (next == order.end()) return std::nullopt;
    return *next;
}

std::optional<Field> next_field(const Job& job, HeadId head) {
    for (const Field field : walk_fields(job, head)) {
        if (!is_done(job, head, field)) return field;
    }
    return std::nullopt;
}

SetWalkMark tick(const Job& job, HeadId head, Field field, const Stamp& stamp, bool done) {
    WalkMark mark;
    mark.head = head;
    mark.field = field;
    mark.done = done;
    if (const WalkMark* before = mark_of(job, head, field)) mark.real = before->real;
    mark.stamp = stamp;
    return {mark, true};
}

SetWalkMark really_set(const Job& job, HeadId head, Field field, double value,
                       const Stamp& stamp) {
    WalkMark mark;
    mark.head = head;
    mark.field = field;
    mark.done = true;
    if (planned_value(job, head, field) != value) mark.real = value;
    mark.stamp = stamp;
    return {mark, true};
}

SetWalkMark forget(HeadId head, Field field) {
    WalkMark mark;
    mark.head = head;
    mark.field = field;
    return {mark, false};
}

std::optional<Edit> tick_all(const Job& job, HeadId head, const Stamp& stamp, bool done) {
    Together together;
    for (const Field field : walk_fields(job, head)) {
        if (is_done(job, head, field) == done) continue;
        together.edits.push_back({tick(job, head, field, stamp, done)});
    }
    if (together.edits.empty()) return std::nullopt;
    return Edit{std::move(together)};
}

} // namespace carriageway
