// What a person does with the lists and the recipe of a run, for the tests of both.
#pragma once

#include <string>
#include <vector>

#include <catch2/catch_test_macros.hpp>

#include "tests/app/driver.h"

namespace carriageway::listing {

/// Opens a part of the run as one does: from the press, through the contents.
inline void open_part(Driver& driver, const std::string& part) {
    driver.tap("day");
    driver.tap("day/" + part);
    REQUIRE_FALSE(driver.has("day/" + part));
}

/// Types a text into a row that a tap opens, in the place of what stands there.
inline void type_into(Driver& driver, const std::string& name, std::string_view text) {
    driver.tap(name);
    REQUIRE(driver.has("typing"));
    driver.window().press(Key::a, true); // all of it
    driver.settle();
    driver.type(text);
    driver.tap("typing/done");
    REQUIRE_FALSE(driver.has("typing"));
}

/// Types a number on the pad and accepts it.
inline void type_number(Driver& driver, std::string_view number) {
    REQUIRE(driver.has("pad/display"));
    driver.pad(number);
    driver.tap("pad/accept");
}

/// Goes on by the key of the tabulator until a thing has the focus, and is in sight.
inline void focus_on(Driver& driver, const std::string& name) {
    for (int i = 0; i < 400 && driver.program().state().focus != name; ++i) driver.key(Key::tab);
    INFO(name);
    REQUIRE(driver.program().state().focus == name);
    const Thing& thing = driver.find(name);
    CHECK(driver.list().clip_box(thing.clip).contains(thing.box.centre()));
}

/// The same, and does what the thing does.
inline void enter_on(Driver& driver, const std::string& name) {
    focus_on(driver, name);
    driver.key(Key::enter);
}

inline std::string step_name(std::uint32_t item) { return "lists/step/" + std::to_string(item); }

/// "2 of 12".
inline std::string progress(int ticked, int steps) {
    return say(Language::english, Word::list_progress,
               {std::to_string(ticked), std::to_string(steps)});
}

/// Ids of the steps of a list, in their order.
inline std::vector<std::uint32_t> steps_of(Driver& driver, CheckList list) {
    std::vector<std::uint32_t> ids;
    for (const CheckItem& item : checks_of(driver.session().job().press))
        if (item.list == list) ids.push_back(item.id);
    return ids;
}

inline const RunRecord& record_of(Driver& driver) { return driver.session().job().record; }

inline constexpr Timestamp moment = 1'700'000'000'000; ///< of a driver with a library

inline void undo(Driver& driver) { driver.key(Key::z, true); }

} // namespace carriageway::listing
