// The fields of what was read, set and seen while a job was set up and run.
#include <array>

#include "app/records/form_parts.h"
#include "core/units.h"

namespace carriageway {
namespace {

/// The largest whole number that every reader of JSON has exactly: the year 287396.
constexpr std::int64_t latest_time = 9'007'199'254'740'991;

// In the order of StopReason.
constexpr std::array reason_names{"other",    "ink", "blade",   "screen", "registration",
                                  "garments", "air", "machine", "flash",  "pause"};
static_assert(reason_names.size() == static_cast<std::size_t>(StopReason::count));
const Choices stop_reasons(reason_names.begin(), reason_names.end());

/// The numbers that are walked: those of heads and of the job, which stand before a press's.
const Choices& walk_fields() {
    static const Choices names = [] {
        Choices made;
        for (int i = 0; i < static_cast<int>(Field::count); ++i) {
            const FieldInfo& info = info_of(static_cast<Field>(i));
            if (info.owner == FieldOwner::press) break;
            made.push_back(info.key);
        }
        return made;
    }();
    return names;
}

void describe_time(Form& form, std::int64_t& time) {
    form.whole("time_ms", time, {0, latest_time, 0});
}

void describe_stamp(Form& form, Stamp& stamp) {
    describe_time(form, stamp.time);
    form.text("initials", stamp.initials, {longest_initials, true});
}

bool is_angle(Field field) {
    return field >= Field{} && field < Field::count && info_of(field).quantity == Quantity::angle;
}

// One of three ways, of which the field decides: a schema knows nothing of fields, so it allows all
// three within limits that are wide enough for any field. A number given the wrong way is read as
// none (NaN), which core doesn't accept, nor a number outside the field's own limits.
void describe_real_value(Form& form, const WalkMark& mark, double& value) {
    constexpr double beyond_any = 1e9;
    const NumberRange degrees = range_of(Field::image_rotation);
    NumberRange radians = degrees;
    radians.factor = 1.0;
    const auto way = [&](const char* key, const NumberRange& range, bool of_angles) {
        return Way{{key}, [&, key, range, of_angles] {
                       form.number(key, value, range);
                       if (of_angles != is_angle(mark.field)) {
                           value = std::numeric_limits<double>::quiet_NaN();
                       }
                   }};
    };
    const std::size_t of_angle = number_in_file(value, degrees.factor) ? 1 : 2;
    form.one_of({way("value", {-beyond_any, beyond_any}, false), way("value_deg", degrees, true),
                 way("value_rad", radians, true)},
                is_angle(mark.field) ? of_angle : 0);
}

void describe_real(Form& form, WalkMark& mark) {
    bool there = mark.real.has_value();
    double value = mark.real.value_or(0.0);
    form.optional_object("real", there, [&] { describe_real_value(form, mark, value); });
    mark.real = there ? std::optional(value) : std::nullopt;
}

void describe_tick(Form& form, CheckTick& tick) {
    describe_whole(form, "item", tick.item, {1, std::numeric_limits<std::uint32_t>::max()});
    describe_stamp(form, tick.stamp);
}

void describe_pieces(Form& form, PieceCount& count) {
    const NumberRange range{0.0, most_pieces_counted, 1.0, false, Quantity::count};
    describe_count(form, "printed", count.printed, range);
    describe_count(form, "spoiled", count.spoiled, range);
    describe_stamp(form, count.stamp);
}

void describe_stoppage(Form& form, Stoppage& stoppage) {
    form.number("minutes", stoppage.minutes, {0.0, most_minutes, 1.0, false, Quantity::ratio});
    describe_choice(form, "reason", stoppage.reason, stop_reasons);
    form.text("note", stoppage.note, any_note);
    describe_stamp(form, stoppage.stamp);
}

/// A list of objects, left out while it is empty.
template <typename Item>
void describe_entries(Form& form, const char* key, std::vector<Item>& items, std::size_t most,
                      void (*members)(Form&, Item&)) {
    describe_list(form, key, items, {0, most, false, true},
                  [&](Item& item) { form.object("", [&] { members(form, item); }); });
}

} // namespace

void describe_height_readings(Form& form, std::vector<HeightReading>& readings) {
    describe_list(form, "readings", readings, {0, most_height_readings}, [&](HeightReading& read) {
        form.object("", [&] {
            describe_whole(form, "platen", read.platen, {1, most_number});
            describe_whole(form, "head", read.head, {1, most_head_id});
            Point at{read.x, read.y};
            describe_place(form, "at_mm", at);
            read.x = at.x;
            read.y = at.y;
            form.number("height_mm", read.height,
                        {-most_height, most_height, 1.0, false, Quantity::length});
        });
    });
}

void describe_walk_mark_members(Form& form, WalkMark& mark) {
    describe_whole(form, "head", mark.head, {0, most_head_id});
    describe_choice(form, "field", mark.field, walk_fields());
    form.truth("done", mark.done);
    describe_real(form, mark);
    describe_stamp(form, mark.stamp);
}

void describe_walk(Form& form, const char* key, std::vector<WalkMark>& walk) {
    describe_entries(form, key, walk, most_walk_marks, describe_walk_mark_members);
}

void describe_record_members(Form& form, RunRecord& record) {
    describe_entries(form, "ticks", record.ticks, most_check_items, describe_tick);
    describe_entries(form, "counts", record.counts, most_counts, describe_pieces);
    describe_entries(form, "stoppages", record.stoppages, most_stoppages, describe_stoppage);
    describe_part(form, "approval", record.approval, [&] {
        form.text("by", record.approval.by, any_note);
        form.text("against", record.approval.against, any_note);
        describe_time(form, record.approval.time);
    });
    form.text("notes", record.notes, any_note);
}

} // namespace carriageway
