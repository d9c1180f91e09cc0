// What the forms of presses, heads, runs and edits share, and what of them stands in one another.
//
// As in job_form.h: values are read or set as the walk needs, and after a fault are of no use.
#pragma once

#include <functional>
#include <initializer_list>
#include <limits>
#include <vector>

#include "app/records/exchange.h"
#include "app/records/job_form.h"
#include "core/job_check.h"

namespace carriageway {

inline constexpr std::int64_t most_head_id = std::numeric_limits<HeadId>::max();

/// Of lists that core doesn't limit; most_values does.
inline constexpr ListSize any_number{0, most_values};

inline constexpr TextSize any_name{};
/// One that is left out where nothing was noted.
inline constexpr TextSize any_note{longest_name, true};

extern const Choices station_uses;
extern const Choices directions;
extern const Choices garments;
extern const Choices blade_edges;

// ---- numbers ----

/// The limits of a field.
NumberRange range_of(Field field);

/// An angle, in degrees; one that no number of degrees gives exactly, in radians. `key` ends in
/// "deg".
void describe_angle(Form& form, const char* key, double& value, const NumberRange& range);

/// A whole number that core keeps as a double.
void describe_count(Form& form, const char* key, double& value, const NumberRange& range);

/// The number of a field, by the last part of its key.
void describe_number(Form& form, double& value, Field field);

/// The same of one that is left out where it is 0, which means that it wasn't noted.
void describe_noted(Form& form, double& value, Field field);

/// Several numbers of a head, by their fields.
struct HeadNumbers {
    Form& form;
    Head& head;
    void operator()(std::initializer_list<Field> fields) const;
    void noted(std::initializer_list<Field> fields) const; ///< see describe_noted()
};

/// Two numbers, x and y.
void describe_place(Form& form, const char* key, Point& point);

template <typename Enum>
void describe_choice(Form& form, const char* key, Enum& value, const Choices& choices) {
    auto index = static_cast<std::size_t>(value);
    form.choice(key, index, choices);
    value = static_cast<Enum>(index);
}

template <typename Enum>
void describe_optional_choice(Form& form, const char* key, Enum& value, const Choices& choices) {
    auto index = static_cast<std::size_t>(value);
    form.optional_choice(key, index, choices, static_cast<std::size_t>(Enum{}));
    value = static_cast<Enum>(index);
}

template <typename Whole>
void describe_whole(Form& form, const char* key, Whole& value, const WholeRange& range) {
    std::int64_t number = value;
    form.whole(key, number, range);
    value = static_cast<Whole>(number);
}

// ---- lists, and what may be left out ----

template <typename Item, typename Describe>
void describe_list(Form& form, const char* key, std::vector<Item>& items, const ListSize& size,
                   Describe describe) {
    form.list(
        key, items.size(), size, [&](std::size_t count) { items.resize(count); },
        [&](std::size_t i) { describe(items[i]); });
}

/// An object that a file may leave out: it then stands as in a new job. Written when it differs.
template <typename Part>
void describe_part(Form& form, const char* key, const Part& part,
                   const std::function<void()>& members) {
    bool there = !(part == Part{});
    form.optional_object(key, there, members);
}

// ---- what stands in several documents ----

void describe_uses(Form& form, std::vector<StationUse>& stations, const ListSize& size);

// app/records/head_form.cpp
void describe_head_members(Form& form, Head& head);
void describe_image_members(Form& form, Head& head);
void describe_stops_members(Form& form, Head& head);
void describe_wish_members(Form& form, Head& head);
void describe_rounds(Form& form, std::vector<MarkRound>& rounds);

// app/records/run_form.cpp
void describe_height_readings(Form& form, std::vector<HeightReading>& readings);
void describe_walk_mark_members(Form& form, WalkMark& mark);
void describe_walk(Form& form, const char* key, std::vector<WalkMark>& walk);
void describe_record_members(Form& form, RunRecord& record);

} // namespace carriageway
