#include "tests/records/stored_samples.h"

#include <cmath>
#include <stdexcept>
#include <utility>

#include <catch2/catch_test_macros.hpp>

namespace samples {

using namespace carriageway;

Job job(const std::string& name, const std::vector<std::string>& colours,
        const std::string& press) {
    Job job;
    job.name = name;
    job.press.name = press;
    job.uses.resize(static_cast<std::size_t>(job.press.stations), StationUse::open);
    for (const std::string& colour : colours) {
        Head head;
        head.id = static_cast<HeadId>(job.heads.size() + 1);
        head.station = static_cast<int>(job.heads.size() + 1);
        head.colour = colour;
        job.heads.push_back(head);
    }
    REQUIRE_FALSE(fault_of(job));
    return job;
}

namespace {

double number_between(std::mt19937& random, double least, double most) {
    return std::uniform_real_distribution<double>(least, most)(random);
}

int whole_between(std::mt19937& random, int least, int most) {
    return std::uniform_int_distribution<int>(least, most)(random);
}

std::string random_name(std::mt19937& random) {
    static const std::vector<std::string> parts = {"shirt", "niño", "\"", "\\", "日本", "A\tB", "é"};
    std::string name;
    for (int i = whole_between(random, 1, 4); i > 0; --i)
        name += parts[static_cast<std::size_t>(
            whole_between(random, 0, static_cast<int>(parts.size()) - 1))];
    return name;
}

SetNumber random_number(const Job& job, std::mt19937& random) {
    const auto field =
        static_cast<Field>(whole_between(random, 0, static_cast<int>(Field::count) - 1));
    const FieldInfo& info = info_of(field);
    SetNumber set;
    set.field = field;
    if (info.owner == FieldOwner::head && !job.heads.empty())
        set.head = job.heads[static_cast<std::size_t>(
                                 whole_between(random, 0, static_cast<int>(job.heads.size()) - 1))]
                       .id;
    set.value = number_between(random, info.least, info.most);
    return set;
}

Image random_image(std::mt19937& random) {
    Image image;
    image.rotation = number_between(random, -1.0, 1.0);
    image.offset_x = number_between(random, -20.0, 20.0);
    for (int i = 0; i < 7; ++i) {
        const double angle = i * 0.9;
        const double radius = number_between(random, 50.0, 150.0);
        image.outline.push_back({radius * std::cos(angle), radius * std::sin(angle)});
    }
    return image;
}

Edit draw(const Job& job, std::mt19937& random) {
    const HeadId head = job.heads.empty() ? HeadId{1} : job.heads.front().id;
    const int station = whole_between(random, 1, job.press.stations);
    switch (whole_between(random, 0, 11)) {
    case 0: return {SetName{whole_between(random, 0, 1) == 0 ? HeadId{0} : head,
                            random_name(random)}};
    case 1: return {SetInk{head, static_cast<std::uint32_t>(whole_between(random, 0, 0xFFFFFF))}};
    case 2: return {SetPrintStroke{head, Direction::toward_machine}};
    case 3: return {SetWinged{head, whole_between(random, 0, 1) == 0}};
    case 4: return {SetImage{head, random_image(random)}};
    case 5: {
        AddHead add;
        add.head.id = static_cast<HeadId>(whole_between(random, 1, 1000));
        add.head.station = station;
        add.head.colour = random_name(random);
        return {add};
    }
    case 6: return {RemoveHead{head}};
    case 7: return {MoveHead{head, station}};
    case 8: return {SetUse{station, StationUse::flash}};
    case 9: return {SetStops{head, {number_between(random, -300.0, -100.0),
                                    number_between(random, 100.0, 300.0)}}};
    case 10: return {Together{{Edit{random_number(job, random)}, Edit{SetUse{station}}}}};
    default: return {random_number(job, random)};
    }
}

} // namespace

LoggedEdit random_edit(Job& job, std::mt19937& random, Timestamp time) {
    for (int tries = 0; tries < 1000; ++tries) {
        Edit edit = draw(job, random);
        Applied applied = apply(job, edit);
        if (applied) return {std::move(edit), std::move(*applied.inverse), time};
    }
    FAIL("1000 edits in a row were refused");
    return {};
}

LoggedEdit numbered_edit(Job& job, int number, Timestamp time) {
    Edit edit{SetStops{job.heads.front().id, {-200.0 - 0.001 * number, 200.0}}};
    Applied applied = apply(job, edit);
    // Not an assertion of the test runner's: those may be made by one thread alone.
    if (!applied) throw std::logic_error("a numbered edit was refused");
    return {std::move(edit), std::move(*applied.inverse), time};
}

int number_of_edit(const Edit& edit) {
    const auto* set = std::get_if<SetStops>(&edit.what);
    if (set == nullptr) return -1;
    return static_cast<int>(std::lround((-200.0 - set->stops.operator_side) / 0.001));
}

} // namespace samples
