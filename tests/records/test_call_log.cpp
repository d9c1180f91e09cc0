// Calls that were taken, kept on the device.
#include <string>

#include <catch2/catch_test_macros.hpp>

#include "app/records/call_log.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Kind = LibraryFault::Kind;

namespace {

CallRecord call(Timestamp time, const std::string& notes = "clicks, no stroke") {
    return {time, "Line two, eight colours", "clicks", notes, "stops_together",
            CallOutcome::solved};
}

CallId added(Library& library, const CallRecord& record) {
    const LibraryResult<CallId> id = add_call(library, record);
    if (!id) FAIL(id.fault().detail);
    return *id;
}

} // namespace

TEST_CASE("calls are kept, the last begun first", "[library][calls]") {
    const ScratchFolder folder;
    CallId first = 0, second = 0, third = 0;
    {
        LibraryResult<Library> library = Library::open(folder.path());
        REQUIRE(library);
        second = added(*library, call(20));
        first = added(*library, call(10, ""));
        third = added(*library, call(20, "the other one"));
    }
    LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE(library);
    CHECK(*calls(*library, 10) ==
          std::vector<CallRow>{{third, call(20, "the other one")}, {second, call(20)},
                               {first, call(10, "")}});
    CHECK(*calls(*library, 1, 1) == std::vector<CallRow>{{second, call(20)}});
    CHECK(calls(*library, -1, -1)->empty());
    CHECK(*open_call(*library, first) == call(10, ""));
    CHECK_FALSE(library->check());
}

TEST_CASE("a call is gone on with, in every outcome", "[library][calls]") {
    Library library = Library::in_memory();
    const CallId id = added(library, {});
    CHECK(*open_call(library, id) == CallRecord{});
    for (int i = 0; i < static_cast<int>(CallOutcome::count); ++i) {
        CallRecord record = call(5);
        record.outcome = static_cast<CallOutcome>(i);
        REQUIRE_FALSE(change_call(library, id, record));
        CHECK(*open_call(library, id) == record);
    }
    CHECK(change_call(library, 99, call(1))->kind == Kind::no_such_call);
    CHECK(open_call(library, 99).fault().kind == Kind::no_such_call);
}

TEST_CASE("a text that is too long or no UTF-8 is refused, and nothing is stored",
          "[library][calls]") {
    Library library = Library::in_memory();
    CallRecord longest = call(1, std::string(longest_call_notes, 'n'));
    longest.press = std::string(longest_call_text, 'p');
    const CallId id = added(library, longest);
    CallRecord wrong = longest;
    wrong.notes += 'n';
    CHECK(add_call(library, wrong).fault().kind == Kind::bad_name);
    wrong = longest;
    wrong.press += 'p';
    CHECK(change_call(library, id, wrong)->kind == Kind::bad_name);
    wrong = longest;
    wrong.found = "\xC3";
    CHECK(add_call(library, wrong).fault().kind == Kind::bad_name);
    CHECK(*calls(library, 10) == std::vector<CallRow>{{id, longest}});
}

TEST_CASE("a call that is erased leaves no bytes behind", "[library][calls][erase]") {
    const ScratchFolder folder;
    LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE(library);
    const CallId kept = added(*library, call(1));
    const CallId id = added(*library, call(2, "Said by Wilhelmina " + std::string(6000, 'w')));
    const auto anywhere = [&] {
        return (bytes_of(folder.file("library.db")) + bytes_of(folder.file("library.db-wal")))
                   .find("Wilhelmina") != std::string::npos;
    };
    REQUIRE(anywhere());
    REQUIRE_FALSE(erase_call(*library, id));
    CHECK_FALSE(anywhere());
    CHECK_FALSE(erase_call(*library, id));
    CHECK(open_call(*library, kept));
    CHECK(added(*library, call(3)) > id);
}
