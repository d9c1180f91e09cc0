// Edits of what colours want, what is noted, the walk and the record of a run.
#include <string>

#include "core/job_check.h"
#include "tests/core/edited.h"

using namespace carriageway;
using sample::accept;
using sample::refuse;
using sample::two_heads;

namespace {

constexpr std::int64_t some_time = 1'760'000'000'000;

WalkMark mark_of(HeadId head, Field field, bool done = true) {
    return {head, field, done, std::nullopt, {some_time, "AB"}};
}

} // namespace

TEST_CASE("a colour's wish is set whole, its numbers within their limits", "[edit]") {
    Job job = two_heads();
    const ColourWish wish{2.0, 1.0, 4.0, true, true, false, true};
    accept(job, {SetColourWish{2, wish}});
    CHECK(find_head(job, 2)->wish == wish);
    CHECK(find_head(job, 1)->wish == ColourWish{});
    accept(job, {SetColourWish{2, {}}});
    accept(job, {SetNumber{2, Field::print_order, 3.0}});
    CHECK(find_head(job, 2)->wish.order == 3.0);

    ColourWish bad = wish;
    bad.order = 1.5;
    refuse(job, {SetColourWish{2, bad}}, Refusal::out_of_range, Field::print_order);
    bad = wish;
    bad.cool_after = -1.0;
    refuse(job, {SetColourWish{2, bad}}, Refusal::out_of_range, Field::cool_after);
    bad = wish;
    bad.screen_on = most_stations + 1.0;
    refuse(job, {SetColourWish{2, bad}}, Refusal::out_of_range, Field::screen_on);
    refuse(job, {SetColourWish{9, wish}}, Refusal::no_such_head);
    refuse(job, {SetColourWish{0, wish}}, Refusal::no_such_head);
}

TEST_CASE("a blade's edge and hardness are set", "[edit]") {
    Job job = two_heads();
    accept(job, {SetBladeEdge{1, BladeEdge::single_bevel}});
    CHECK(job.heads[0].squeegee.edge == BladeEdge::single_bevel);
    accept(job, {SetNumber{1, Field::squeegee_hardness, 70.0}});
    CHECK(job.heads[0].squeegee.hardness == 70.0);
    refuse(job, {SetBladeEdge{0, BladeEdge::square}}, Refusal::no_such_head);
    refuse(job, {SetBladeEdge{9, BladeEdge::square}}, Refusal::no_such_head);
    refuse(job, {SetNumber{1, Field::squeegee_hardness, 101.0}}, Refusal::out_of_range,
           Field::squeegee_hardness);
}

TEST_CASE("notes belong to a head or to the job", "[edit]") {
    Job job = two_heads();
    accept(job, {SetNote{1, Note::ink, "plastisol, 5 % reducer"}});
    accept(job, {SetNote{2, Note::stencil, "1:1, 90 s"}});
    accept(job, {SetNote{0, Note::garment, "180 g/m\xC2\xB2, navy"}});
    accept(job, {SetNote{0, Note::run, "washed twice"}});
    CHECK(find_head(job, 1)->notes == ColourNotes{"plastisol, 5 % reducer", ""});
    CHECK(find_head(job, 2)->notes == ColourNotes{"", "1:1, 90 s"});
    CHECK(job.garment.name == "180 g/m\xC2\xB2, navy");
    CHECK(job.record.notes == "washed twice");
    accept(job, {SetNote{1, Note::ink, ""}});

    for (const Note note : {Note::ink, Note::stencil}) {
        refuse(job, {SetNote{0, note, "x"}}, Refusal::no_such_head);
        refuse(job, {SetNote{9, note, "x"}}, Refusal::no_such_head);
        refuse(job, {SetNote{1, note, std::string(longest_name + 1, 'x')}}, Refusal::name_too_long);
        refuse(job, {SetNote{1, note, "\xC3"}}, Refusal::name_too_long);
    }
    for (const Note note : {Note::garment, Note::run}) {
        refuse(job, {SetNote{1, note, "x"}}, Refusal::no_such_head);
        refuse(job, {SetNote{0, note, std::string(longest_name + 1, 'x')}}, Refusal::name_too_long);
        refuse(job, {SetNote{0, note, "\xFF"}}, Refusal::name_too_long);
    }
}

TEST_CASE("marks of a walk come, change and go, in order whatever the order they came in",
          "[edit]") {
    Job job = two_heads();
    accept(job, {SetWalkMark{mark_of(2, Field::squeegee_width)}});
    accept(job, {SetWalkMark{mark_of(1, Field::squeegee_angle)}});
    accept(job, {SetWalkMark{mark_of(0, Field::pieces)}});
    accept(job, {SetWalkMark{mark_of(1, Field::squeegee_width)}});
    REQUIRE(job.walk.size() == 4);
    CHECK(is_walk(job.walk));
    CHECK(job.walk[0].field == Field::pieces);
    CHECK(job.walk[1].field == Field::squeegee_width);

    WalkMark changed = mark_of(1, Field::squeegee_angle, false);
    changed.real = radians(12.0);
    accept(job, {SetWalkMark{changed}});
    REQUIRE(job.walk.size() == 4);
    CHECK(job.walk[2] == changed);

    accept(job, {SetWalkMark{mark_of(1, Field::squeegee_angle), false}}); // whatever it says
    CHECK(job.walk.size() == 3);
    accept(job, {SetWalkMark{mark_of(1, Field::squeegee_angle), false}}); // not there any more
    CHECK(job.walk.size() == 3);

    refuse(job, {SetWalkMark{mark_of(1, Field::pieces)}}, Refusal::not_a_record);
    refuse(job, {SetWalkMark{mark_of(0, Field::index_time)}}, Refusal::not_a_record);
    refuse(job, {SetWalkMark{mark_of(1, Field::count)}}, Refusal::not_a_record);
    refuse(job, {SetWalkMark{mark_of(1, Field::pieces), false}}, Refusal::not_a_record);
    changed.real = radians(60.0);
    refuse(job, {SetWalkMark{changed}}, Refusal::not_a_record);
}

TEST_CASE("a walk takes so many marks and no more", "[edit]") {
    Job job = two_heads();
    std::vector<WalkMark> marks;
    for (std::size_t i = 0; i < most_walk_marks; ++i)
        marks.push_back(mark_of(static_cast<HeadId>(i + 1), Field::stencil));
    accept(job, {SetWalk{marks}});
    refuse(job, {SetWalkMark{mark_of(1, Field::squeegee_width)}}, Refusal::not_a_record);
    accept(job, {SetWalkMark{mark_of(1, Field::stencil, false)}}); // one that is there changes
    accept(job, {SetWalkMark{mark_of(1, Field::stencil), false}});
    accept(job, {SetWalkMark{mark_of(1, Field::squeegee_width)}});
}

TEST_CASE("a walk is replaced whole", "[edit]") {
    Job job = two_heads();
    const std::vector<WalkMark> marks{mark_of(0, Field::pieces), mark_of(2, Field::stencil)};
    accept(job, {SetWalk{marks}});
    CHECK(job.walk == marks);
    refuse(job, {SetWalk{{marks[1], marks[0]}}}, Refusal::not_a_record);
    refuse(job, {SetWalk{{marks[1], marks[1]}}}, Refusal::not_a_record);
    accept(job, {SetWalk{}});
    CHECK(job.walk.empty());
}

TEST_CASE("marks outlive their head, so that taking it off and back loses none", "[edit]") {
    Job job = two_heads();
    accept(job, {SetWalkMark{mark_of(2, Field::stencil)}});
    accept(job, {RemoveHead{2}});
    CHECK(job.walk.size() == 1);
    CHECK_FALSE(fault_of(job));
}

TEST_CASE("a record of a run is replaced whole", "[edit]") {
    Job job = two_heads();
    RunRecord record;
    record.ticks = {{4, {some_time, "AB"}}, {2, {}}};
    record.counts = {{50.0, 1.0, {some_time, ""}}};
    record.stoppages = {{3.0, StopReason::screen, "torn", {some_time, "AB"}}};
    record.approval = {"AB", "a sample", some_time};
    record.notes = "so";
    accept(job, {SetRecord{record}});
    CHECK(job.record == record);
    RunRecord bad = record;
    bad.ticks.push_back({4, {}});
    refuse(job, {SetRecord{bad}}, Refusal::not_a_record);
    bad = record;
    bad.counts[0].spoiled = 51.0;
    refuse(job, {SetRecord{bad}}, Refusal::not_a_record);
    bad = record;
    bad.stoppages[0].minutes = -1.0;
    refuse(job, {SetRecord{bad}}, Refusal::not_a_record);
    accept(job, {SetRecord{}});
    CHECK(job.record == RunRecord{});
}

TEST_CASE("a press's rooms and lists come with its profile", "[edit]") {
    Job job = two_heads();
    PressProfile press = job.press;
    press.rooms = {{true, false}, {false, true}};
    press.checks = {{1, CheckList::before_night, CheckStep::own, "shutters down", Caution::none}};
    accept(job, {SetPress{press, {}}});
    CHECK(job.press == press);
    press.checks.push_back(press.checks.front());
    refuse(job, {SetPress{press, {}}}, Refusal::not_a_press);
}
