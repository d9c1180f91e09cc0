#include <algorithm>
#include <array>
#include <cmath>

#include "app/text/rate_sentences.h"
#include "app/text/sentences.h"
#include "app/views/cycle_view.h"

namespace carriageway {

namespace {

constexpr float pad = 8.0f, gap = 4.0f, touch = 44.0f, button = 48.0f;

Word doing_word(const CyclePose& pose, bool still) {
    switch (pose.doing) {
    case StepKind::index: return Word::cycle_index;
    case StepKind::lower: return Word::cycle_lower;
    case StepKind::drop:
        return pose.stroke % 2 == 1 ? Word::cycle_drop_flood : Word::cycle_drop_squeegee;
    case StepKind::flood: return Word::cycle_flood;
    case StepKind::print: return Word::cycle_print;
    case StepKind::empty: return Word::cycle_empty;
    case StepKind::dwell: return Word::cycle_dwell;
    case StepKind::lift: return Word::cycle_lift;
    case StepKind::stay: return still ? Word::cycle_stays : Word::cycle_wait;
    default: return Word::cycle_wait;
    }
}

struct Speed {
    double pace;
    std::string_view name, face;
    Word said;
};
constexpr std::array<Speed, 3> speeds{{{1.0, "cycle/speed/1", "1", Word::cycle_real},
                                       {0.25, "cycle/speed/4", "1/4", Word::cycle_quarter},
                                       {0.1, "cycle/speed/10", "1/10", Word::cycle_tenth}}};

/// What a sentence says before its colon.
std::string_view name_in(std::string_view words) { return words.substr(0, words.find(':')); }

constexpr std::array<Word, 12> all_words{
    Word::cycle_index, Word::cycle_lower, Word::cycle_drop_flood, Word::cycle_drop_squeegee,
    Word::cycle_flood, Word::cycle_print, Word::cycle_empty, Word::cycle_dwell,
    Word::cycle_lift, Word::cycle_stays, Word::cycle_wait, Word::cycle_press};

/// Where everything in the strip lies. Its height never depends on what is said just now, so that
/// nothing moves under a finger.
struct StripParts {
    Box words; ///< what happens, and the time below it; empty where there is no room for it
    bool whole = true; ///< whole sentences fit in one line; else their names stand there
    Box track;
    std::array<Box, 3> steps; ///< back, play, on
    std::array<Box, 3> speeds;
    Box close;
    float bottom = 0.0f;
};

/// One of `count` buttons side by side.
Box one_of(const Box& row, int i, int count) {
    const float all = static_cast<float>(count);
    const float wide = (row.width() - gap * (all - 1.0f)) / all;
    const float x = row.x0 + static_cast<float>(i) * (wide + gap);
    return {x, row.y0, x + wide, row.y1};
}

/// Words at the left and what closes the strip at their right.
void place_words(Canvas& canvas, const Box& inside, StripParts& parts) {
    const TypeMeasure& type = canvas.type();
    const float width = inside.width() - pad - touch - gap;
    float line = 0.0f, tall = 0.0f;
    for (const Word one : all_words)
        line = std::max(line, type.width(small_bold_text, canvas.word(one)));
    parts.whole = line <= width;
    for (const Word one : all_words) {
        const std::string_view words = canvas.word(one);
        const bool names = !parts.whole && one != Word::cycle_press;
        tall = std::max(
            tall, canvas.paragraph_height(width, names ? name_in(words) : words, small_bold_text));
    }
    const float y = inside.y0 + std::max(touch, tall + type.height(small_text));
    parts.words = {inside.x0 + pad, inside.y0, inside.x0 + pad + width, y};
    parts.close = {inside.x1 - touch, inside.y0, inside.x1, y};
}

StripParts strip_parts(Canvas& canvas, const Box& box, bool tight) {
    StripParts parts;
    Box inside = box.inset(pad);
    inside.y0 = box.y0 + pad;
    parts.track = {inside.x0, inside.y0, inside.x1, inside.y0 + touch};
    if (!tight) {
        place_words(canvas, inside, parts);
        parts.track.y0 = parts.words.y1;
        parts.track.y1 = parts.words.y1 + touch;
    }
    Box row{inside.x0, parts.track.y1, inside.x1, parts.track.y1 + button};
    const float each = (inside.width() - 5.0f * gap) / 6.0f;
    const bool in_one =
        !tight && canvas.type().width(small_bold_text, speeds.back().face) + 12.0f <= each;
    const int columns = in_one ? 6 : tight ? 4 : 3;
    for (int i = 0; i < 3; ++i) parts.steps[static_cast<std::size_t>(i)] = one_of(row, i, columns);
    if (tight) parts.close = one_of(row, 3, columns);
    if (!in_one) row = {row.x0, row.y1 + gap, row.x1, row.y1 + gap + button};
    for (int i = 0; i < 3; ++i)
        parts.speeds[static_cast<std::size_t>(i)] =
            in_one ? one_of(row, 3 + i, 6) : one_of(row, i, 3);
    parts.bottom = row.y1 + pad;
    return parts;
}

void what_happens(const Model& model, const CycleView& cycle, const StripParts& parts,
                  Canvas& canvas) {
    const bool one_head = model.state->head != 0;
    const std::string words = cycle_words(canvas.language(), cycle, one_head);
    const std::string time = say(canvas.language(), Word::cycle_at,
                                 {pace_time(model.state->cycle.time), pace_time(cycle.seconds)});
    const Box at = parts.words;
    if (at.empty()) return canvas.reading("cycle/now", parts.track, words, time);
    // Of a press it is counts, unless the table turns.
    const bool counts = !one_head && !cycle.heads.empty() &&
                        cycle.heads.front().pose.doing != StepKind::index;
    const std::string_view shown = parts.whole || counts ? std::string_view(words) : name_in(words);
    const float tall = canvas.paragraph({at.x0, at.y0}, at.width(), shown, small_bold_text,
                                        Role::ink, Role::panel);
    canvas.list().text({at.x0, at.y0 + tall}, time, small_text, Role::soft_ink, Role::panel);
    canvas.reading("cycle/now", at, words, time);
}

void speed_button(const Speed& speed, Box box, bool chosen, Canvas& canvas) {
    DrawingList& list = canvas.list();
    if (chosen) list.round(box, 12.0f, paint(Role::quiet));
    canvas.centred_paragraph(box.centre(), box.width(), speed.face, small_bold_text, Role::ink,
                             chosen ? Role::quiet : Role::panel);
    Thing& thing = list.thing(speed.name, ThingRole::button, box);
    thing.label.assign(canvas.word(speed.said));
    thing.hint = thing.label;
    thing.chosen = chosen;
    thing.action = canvas.action(PaceCycle{speed.pace});
}

void time_track(const Model& model, const CycleView& cycle, Box box, Canvas& canvas) {
    DrawingList& list = canvas.list();
    const float y = box.centre().y, x0 = box.x0 + 10.0f, x1 = box.x1 - 10.0f;
    const double time = model.state->cycle.time;
    const auto at = [&](double t) {
        return x0 + static_cast<float>(cycle.seconds > 0.0 ? t / cycle.seconds : 0.0) * (x1 - x0);
    };
    list.round({x0, y - 3.0f, x1, y + 3.0f}, 3.0f, paint(Role::edge));
    list.round({x0, y - 3.0f, std::max(x0 + 3.0f, at(time)), y + 3.0f}, 3.0f, paint(Role::focus));
    for (const double event : cycle.events) {
        const Vec mark[] = {{at(event), y - 7.0f}, {at(event), y + 7.0f}};
        list.line(mark, 2, paint(Role::soft_ink), 1.2f);
    }
    list.disc({at(time), y}, 10.0f, paint(Role::focus));
    list.circle({at(time), y}, 10.0f, paint(Role::panel), 2.0f);
    Thing& thing = list.thing("cycle/time", ThingRole::slider, box);
    thing.label.assign(canvas.word(Word::cycle_time));
    thing.value =
        say(canvas.language(), Word::cycle_at, {pace_time(time), pace_time(cycle.seconds)});
    thing.hold = canvas.hold(HoldCycle{cycle.seconds / std::max(1.0f, x1 - x0)});
    thing.less = canvas.action(StepCycle{-1});
    thing.more = canvas.action(StepCycle{1});
    const auto passed = std::upper_bound(cycle.events.begin(), cycle.events.end(), time + 1e-6);
    thing.now = static_cast<double>(passed - cycle.events.begin());
    thing.least = 1.0;
    thing.most = static_cast<double>(cycle.events.size());
}

} // namespace

CycleView cycle_view(const Job& job, const Assessment& assessment, HeadId chosen, double time) {
    CycleView view;
    for (const Head& head : job.heads) {
        if (chosen != 0 && head.id != chosen) continue;
        view.heads.push_back({head_cycle(job, assessment, head.id), {}});
        view.seconds = std::max(view.seconds, view.heads.back().cycle.seconds);
    }
    // A whole press turns on when its slowest station is done, which may have no head.
    if (chosen == 0) {
        const JobPace pace = job_pace(job, assessment);
        if (pace.runs()) view.seconds = std::max(view.seconds, pace.rate.cycle);
    }
    for (RunningHead& head : view.heads) {
        head.pose = pose(head.cycle, time, view.seconds);
        for (const double event : cycle_events(head.cycle)) view.events.push_back(event);
    }
    std::sort(view.events.begin(), view.events.end());
    constexpr double apart = 0.02; // s: heads that do the same at nearly the same time
    const auto close = [](double a, double b) { return b - a < apart; };
    view.events.erase(std::unique(view.events.begin(), view.events.end(), close),
                      view.events.end());
    return view;
}

std::string cycle_words(Language language, const CycleView& cycle, bool one_head) {
    if (cycle.heads.empty()) return {};
    const RunningHead& head = cycle.heads.front();
    if (one_head)
        return std::string(word(language, doing_word(head.pose, head.cycle.still)));
    if (head.pose.doing == StepKind::index)
        return std::string(word(language, Word::cycle_index));
    const auto count = [&](StepKind kind) {
        return std::to_string(std::count_if(
            cycle.heads.begin(), cycle.heads.end(),
            [&](const RunningHead& one) { return one.pose.doing == kind; }));
    };
    return say(language, Word::cycle_press, {count(StepKind::flood), count(StepKind::print)});
}

bool cycle_on_screen(const Model& model) {
    const ViewState& state = *model.state;
    return state.cycle.open && state.place == Place::press && !state.day.open && !state.share &&
           !state.measuring.open && !examined(state.practice.exercise) &&
           !model.job->heads.empty();
}

float cycle_strip_height(Canvas& canvas, float width, float most) {
    const Box box{0.0f, 0.0f, width, 0.0f};
    const float whole = strip_parts(canvas, box, false).bottom;
    return whole <= most ? whole : strip_parts(canvas, box, true).bottom;
}

void cycle_strip(const Model& model, const CycleView& cycle, Box box, Canvas& canvas) {
    DrawingList& list = canvas.list();
    const CycleState& state = model.state->cycle;
    StripParts parts = strip_parts(canvas, box, false);
    if (parts.bottom > box.y1 + 0.5f) parts = strip_parts(canvas, box, true);
    list.round(box, 14.0f, paint(Role::panel));
    list.ring(box, 14.0f, paint(Role::edge), 1.2f);
    list.thing("cycle", ThingRole::region, box).label.assign(canvas.word(Word::run_cycle));
    what_happens(model, cycle, parts, canvas);
    time_track(model, cycle, parts.track, canvas);
    const auto& [back, play, on] = parts.steps;
    canvas.icon_button("cycle/previous", back, Icon::back, canvas.word(Word::cycle_previous),
                       canvas.action(StepCycle{-1}));
    canvas.icon_button("cycle/play", play, state.playing ? Icon::pause : Icon::play,
                       canvas.word(state.playing ? Word::pause : Word::cycle_play),
                       canvas.action(PlayCycle{!state.playing}), true, ButtonLook::strong);
    canvas.icon_button("cycle/next", on, Icon::next, canvas.word(Word::cycle_next),
                       canvas.action(StepCycle{1}));
    for (std::size_t i = 0; i < speeds.size(); ++i)
        speed_button(speeds[i], parts.speeds[i], state.pace == speeds[i].pace, canvas);
    canvas.icon_button("cycle/close", parts.close, Icon::close, canvas.word(Word::close),
                       canvas.action(OpenCycle{false}), true, ButtonLook::bare);
}

void cycle_button(const Model& model, Rows& rows) {
    if (model.job->heads.empty() || model.state->cycle.open) return;
    Canvas& canvas = rows.canvas;
    const std::string_view words = canvas.word(Word::run_cycle);
    const float height = canvas.button_height(words, {}, rows.width, 48.0f);
    canvas.button("cycle/open", rows.next(height), words, ButtonLook::plain,
                  canvas.action(OpenCycle{true}));
}

} // namespace carriageway
