// What a person does on the walk, for the tests of it. Stops are typed as the ruler shows them: the
// demonstration's ruler begins 500 mm before the frame's middle.
#pragma once

#include <string>

#include <catch2/catch_test_macros.hpp>

#include "core/walk.h"
#include "tests/app/driver.h"

namespace carriageway::walking {

inline std::string number(Field field) { return std::string("walk/number/") + info_of(field).key; }
inline std::string tick_name(Field field) { return std::string("walk/tick/") + info_of(field).key; }

inline void open_walk(Driver& driver) {
    driver.tap("day");
    driver.tap("day/walk");
    REQUIRE(driver.has("walk/progress"));
}

inline HeadId on(Driver& driver, int station) {
    return head_on(driver.session().job(), station)->id;
}

/// "12 of 16 set" and the like.
inline std::string of(Word key, int done, int all) {
    return say(Language::english, key, {std::to_string(done), std::to_string(all)});
}

/// Types what was really set.
inline void type_real(Driver& driver, Field field, std::string_view keys) {
    driver.tap(number(field));
    REQUIRE(driver.has("pad/display"));
    driver.pad(keys);
    driver.tap("pad/accept");
    REQUIRE_FALSE(driver.has("pad"));
}

inline bool says(const Thing& thing, const std::string& words) {
    return thing.label.find(words) != std::string::npos ||
           thing.value.find(words) != std::string::npos;
}

/// Ticks the place that is shown and goes on, until all is set; how many places that took.
inline int tick_the_rest(Driver& driver) {
    int places = 0;
    while (driver.has("walk/tick-all") && places < 40) {
        driver.tap("walk/tick-all");
        driver.tap("walk/go-on");
        ++places;
    }
    return places;
}

} // namespace carriageway::walking
