// What a person does in a call, for the tests of calls and of replies.
#pragma once

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>

#include "app/records/job_link.h"
#include "app/records/reply_link.h"
#include "app/views/call_view.h"
#include "tests/app/exercise_steps.h"
#include "tests/app/list_steps.h"
#include "tests/app/visit_call.h"
#include "tests/scratch_folder.h"

namespace carriageway::calling {

inline const FaultBook& book() { return fault_lore().book; }

inline void open_calls(Driver& driver) {
    driver.tap("place/practice");
    driver.tap("practice/call");
}

/// A call about head 6, which clicks because its stops stand too near each other.
inline void begin_at_head_6(Driver& driver) {
    open_calls(driver);
    driver.tap("call/begin");
    driver.tap("call/symptom/no_stroke");
    driver.tap("call/head/6");
    REQUIRE(call_of(driver).id != 0);
}

/// Answers with the likeliest cause in mind, one question after the other; how many there were.
inline int ask_everything(Driver& driver) {
    int asked = 0;
    while (driver.has("call/question")) {
        REQUIRE(asked < 20);
        const std::optional<CallQuestion> question = question_of(driver);
        REQUIRE(question);
        CHECK_FALSE(driver.find("call/question").label.empty());
        CHECK_FALSE(driver.find("call/why").label.empty());
        ++asked;
        if (question->kind == CallQuestion::Kind::number) driver.tap("call/as-shown");
        else driver.tap(answer_for(*question, *find_cause(book(), "both_sensors")));
        const std::optional<CallQuestion> next = question_of(driver);
        CHECK_FALSE((next && same_question(*next, *question))); // never the same twice
    }
    return asked;
}

inline std::string copied(Driver& driver) {
    REQUIRE_FALSE(driver.window().errands().empty());
    const Errand& last = driver.window().errands().back();
    REQUIRE(last.kind == ErrandKind::copy_text);
    return last.text;
}

/// A reply of head 6's better stops, made by a whole call.
inline std::string reply_link(const ScratchFolder& folder, Language language = Language::english) {
    Driver driver(desktop, folder.path(), language);
    driver.as_in_a_browser();
    begin_at_head_6(driver);
    driver.tap("call/cause/both_sensors/tell");
    driver.tap("call/copy");
    return copied(driver);
}

} // namespace carriageway::calling
