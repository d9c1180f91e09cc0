#include "app/records/form_parts.h"

#include <cmath>
#include <cstring>

namespace carriageway {
namespace {

const char* last_part(const char* key) {
    const char* dot = std::strrchr(key, '.');
    return dot == nullptr ? key : dot + 1;
}

void describe_within(Form& form, double& value, Field field, const NumberRange& range) {
    const char* key = last_part(info_of(field).key);
    if (range.quantity == Quantity::angle) {
        describe_angle(form, key, value, range);
    } else if (range.quantity == Quantity::count) {
        describe_count(form, key, value, range);
    } else {
        form.number(key, value, range);
    }
}

} // namespace

const Choices station_uses{"open", "load", "unload", "flash", "cool"};
const Choices directions{"toward_operator", "toward_machine"};
const Choices garments{"t_shirt", "fleece"};
const Choices blade_edges{"not_noted", "square", "rounded", "single_bevel", "double_bevel"};

NumberRange range_of(Field field) {
    const FieldInfo& info = info_of(field);
    return {info.least, info.most, file_factor(info.quantity), false, info.quantity};
}

void describe_angle(Form& form, const char* key, double& value, const NumberRange& range) {
    const std::string stem(key, std::strlen(key) - std::strlen("deg"));
    const std::string in_radians = stem + "rad";
    NumberRange plain = range;
    plain.factor = 1.0;
    const std::size_t way = number_in_file(value, range.factor) ? 0 : 1;
    form.one_of({{{key}, [&] { form.number(key, value, range); }},
                 {{in_radians.c_str()}, [&] { form.number(in_radians.c_str(), value, plain); }}},
                way);
}

void describe_count(Form& form, const char* key, double& value, const NumberRange& range) {
    constexpr double exactly_whole = 9007199254740992.0; // 2^53
    if (!(std::abs(value) < exactly_whole) || value != std::trunc(value)) {
        form.number(key, value, range); // core doesn't accept it: written as it is
        return;
    }
    auto number = static_cast<std::int64_t>(value);
    WholeRange whole{static_cast<std::int64_t>(range.least), static_cast<std::int64_t>(range.most)};
    if (range.usual) whole.usual = static_cast<std::int64_t>(*range.usual);
    form.whole(key, number, whole);
    value = static_cast<double>(number);
}

void describe_number(Form& form, double& value, Field field) {
    describe_within(form, value, field, range_of(field));
}

void describe_noted(Form& form, double& value, Field field) {
    NumberRange range = range_of(field);
    range.usual = 0.0;
    describe_within(form, value, field, range);
}

void HeadNumbers::operator()(std::initializer_list<Field> fields) const {
    Job without; // the numbers of a head don't depend on its job
    for (const Field field : fields) {
        describe_number(form, number_of(without, &head, field), field);
    }
}

void HeadNumbers::noted(std::initializer_list<Field> fields) const {
    Job without;
    for (const Field field : fields) {
        describe_noted(form, number_of(without, &head, field), field);
    }
}

void describe_place(Form& form, const char* key, Point& point) {
    const NumberRange place = range_of(Field::image_offset_x);
    form.list(
        key, 2, {2, 2, true}, [](std::size_t) {},
        [&](std::size_t i) { form.number("", i == 0 ? point.x : point.y, place); });
}

void describe_uses(Form& form, std::vector<StationUse>& stations, const ListSize& size) {
    describe_list(form, "stations", stations, size,
                  [&](StationUse& use) { describe_choice(form, "", use, station_uses); });
}

} // namespace carriageway
