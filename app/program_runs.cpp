// A job's runs: finished, compared, set up again; and the same job on another press.
#include <algorithm>

#include "app/program.h"
#include "app/text/sentences.h"
#include "app/views/day_view.h"
#include "core/carry_over.h"
#include "core/walk.h"

namespace carriageway {

namespace {

int count_of(const CarryOver& carried, CarriedHow how) {
    return static_cast<int>(
        std::count_if(carried.numbers.begin(), carried.numbers.end(),
                      [&](const Carried& number) { return number.how == how; }));
}

const RunRow* find_run(const std::vector<RunRow>& runs, RunId id) {
    for (const RunRow& run : runs)
        if (run.id == id) return &run;
    return nullptr;
}

} // namespace

void Program::carry_out(const FinishRun&) {
    if (session_.visiting())
        return notice(std::string(word(state_.looks.language, Word::run_keep_first)), true);
    if (!session_.finish_run()) return say_trouble();
    notice(std::string(word(state_.looks.language, Word::runs_finished)));
}

void Program::carry_out(const ChooseRun& a) { state_.day.run = a.run; }

void Program::carry_out(const RemoveRun& a) {
    if (!session_.remove_run(a.run)) return say_trouble();
    state_.day.run = 0;
    notice(std::string(word(state_.looks.language, Word::runs_removed)));
    state_.notice->run_removed = session_.can_restore_run();
}

void Program::carry_out(const RestoreRun&) {
    if (session_.restore_run()) state_.notice.reset();
    else say_trouble();
}

void Program::show_compared(const std::string& name, const Job& job) {
    state_.day.compare = CompareState{name, as_set(job)};
    act(OpenDay{DayPart::compare});
}

void Program::carry_out(const CompareRun& a) {
    const RunRow* row = find_run(session_.runs(), a.run);
    const std::optional<Job> earlier = session_.read_run(a.run);
    if (!row || !earlier) return say_trouble();
    const Language language = state_.looks.language;
    const std::string date = stamp_text({row->ended, {}});
    show_compared(date.empty() ? std::string(word(language, Word::runs_undated))
                               : say(language, Word::compare_run_of, {date}),
                  *earlier);
}

void Program::carry_out(const CompareJob& a) {
    if (const std::optional<Job> other = session_.read(a.job)) show_compared(other->name, *other);
    else say_trouble();
}

void Program::carry_out(const CompareEverything& a) {
    if (state_.day.compare) state_.day.compare->everything = a.everything;
    state_.day_scroll = 0.0f;
}

void Program::carry_out(const RunAgain& a) {
    const RunRow* row = find_run(session_.runs(), a.run);
    const std::optional<Job> earlier = session_.read_run(a.run);
    if (!row || !earlier) return say_trouble();
    const Language language = state_.looks.language;
    const std::string date = stamp_text({row->ended, {}});
    Job again = start_again(*earlier, {true, false});
    again.name = say(language, Word::runs_again_name, {earlier->name});
    if (!session_.open_new(again)) return say_trouble();
    arrive(false);
    notice(say(language, Word::runs_again_made, {date}));
}

void Program::carry_out(const CarryToPress& a) {
    const std::optional<PressProfile> press = session_.kept_press(a.press);
    if (!press) return say_trouble();
    const Language language = state_.looks.language;
    // Stations that the other press uses otherwise are not known: its heads may stand anywhere, and
    // the uses are those of this job as far as they reach.
    const CarryOver carried = carry_over(as_set(session_.job()), *press, session_.job().uses);
    if (carried.refusal == CarryRefusal::too_few_stations)
        return notice(say(language, Word::carry_too_few,
                          {press->name, std::to_string(carried.missing)}),
                      true);
    if (carried.refusal != CarryRefusal::none)
        return notice(say(language, Word::carry_refused, {press->name}), true);
    const bool was_visiting = session_.visiting();
    if (!session_.open_new(carried.job)) return say_trouble();
    arrive(was_visiting);
    const auto count = [&](CarriedHow how) { return std::to_string(count_of(carried, how)); };
    notice(say(language, Word::carry_made,
               {press->name, count(CarriedHow::converted), count(CarriedHow::clamped),
                count(CarriedHow::solved), count(CarriedHow::cannot)}));
}

} // namespace carriageway
