// What the tests of the first steps share: a first start, and what is seen and done in it.
#pragma once

#include <algorithm>

#include <catch2/catch_test_macros.hpp>

#include "app/views/first_view.h"
#include "tests/app/exercise_steps.h"
#include "tests/scratch_folder.h"

namespace carriageway {

inline constexpr Language both_languages[] = {Language::english, Language::spanish};
inline constexpr double frame_time = 1.0 / 60.0;

inline FirstStep step_of(Driver& driver) { return driver.program().state().first.step; }

inline std::string head_thing(Driver& driver) {
    const Head* head = find_head(driver.session().job(), driver.program().state().first.head);
    REQUIRE(head != nullptr);
    return "head/" + std::to_string(head->station);
}

inline Driver start_new(const ScratchFolder& folder, WindowSize size = phone,
                 Language language = Language::english) {
    return Driver(size, folder.path(), language, 1.0f, FirstSteps::shown);
}

inline bool due(Driver& driver) {
    const double next = driver.program().next_frame(driver.window().now());
    return next >= 0.0 && next <= driver.window().now();
}

/// One turn of the loop, a sixtieth of a second later, with something that wakes it.
inline void one_frame(Driver& driver) {
    driver.window().pass(frame_time);
    InputEvent nudge;
    driver.window().happen(nudge);
    REQUIRE(driver.loop().turn());
}

/// How far the widest ring in the focus's colour reaches on the diagram; 0: there is none.
inline float widest_ring(Driver& driver) {
    float widest = 0.0f;
    for (const Mark& mark : driver.list().marks())
        if (mark.kind == MarkKind::ring && mark.layer == 0 && mark.colour.role == Role::focus) {
            const Vec* corners = driver.list().points(mark);
            widest = std::max(widest, corners[1].x - corners[0].x);
        }
    return widest;
}

inline void rest(Driver& driver) {
    for (int frames = 0; frames < 600 && due(driver); ++frames) one_frame(driver);
    REQUIRE_FALSE(due(driver));
}

/// Drags a stop of the head that is looked at 40 dp outward along its arm.
inline void drag_a_stop(Driver& driver) {
    const Box handle = driver.find(head_thing(driver) + "/machine-stop").box;
    const Box other = driver.find(head_thing(driver) + "/operator-stop").box;
    const Vec way = handle.centre() - other.centre();
    driver.drag(head_thing(driver) + "/machine-stop",
                way * (40.0f / std::max(1.0f, length(way))));
}

} // namespace carriageway
