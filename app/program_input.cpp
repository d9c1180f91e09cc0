// Taps, drags, wheel and keys.
#include <variant>

#include "app/program.h"

namespace carriageway {

namespace {

/// dp across the rail beyond which a drag slows down for fine work, and how fast it does. Ours.
/// Way of a finger that tilts a blade by a degree: a gloved hand can stop on one. Ours.
constexpr double dp_per_degree = 6.0;
constexpr float fine_from = 60.0f;
constexpr float fine_over = 50.0f;
constexpr double least_apart = 1.0; ///< mm between the bars while they are dragged

/// A list runs on when the finger left it at more than this (dp/s), at most so fast, and slows down
/// with this time constant (s). Common practice on phones, no source.
constexpr float least_fling = 120.0f;
constexpr float most_fling = 6000.0f;
constexpr double fling_time = 0.325;

} // namespace

void Program::take_gestures() {
    for (const Gesture& gesture : gestured_) take(gesture);
    gestured_.clear();
}

void Program::take(const Gesture& gesture) {
    switch (gesture.kind) {
    case GestureKind::press: fling_.reset(); break; // a touch stops what runs
    case GestureKind::tap: tap(gesture); break;
    case GestureKind::long_press: {
        const int found = thing_at(frame_.list, gesture.at);
        if (found < 0) break;
        const Thing& thing = frame_.list.things()[static_cast<std::size_t>(found)];
        const std::string value = thing.value.empty() ? thing.hint : thing.value;
        notice(value.empty() || value == thing.label ? thing.label : thing.label + ": " + value);
        break;
    }
    case GestureKind::drag_start: start_drag(gesture); break;
    case GestureKind::drag: drag(gesture); break;
    case GestureKind::drag_end: drop(gesture); break;
    case GestureKind::drag_cancel:
        let_go();
        break;
    case GestureKind::pinch:
        if (!frame_.diagram.contains(gesture.at)) break;
        state_.own_camera = true;
        state_.move.reset();
        // About where the fingers' middle was, and then along with it: what lies there stays there.
        state_.camera = zoomed({state_.camera, layout_.diagram}, gesture.factor, gesture.at - gesture.by);
        state_.camera = panned({state_.camera, layout_.diagram}, gesture.by);
        break;
    }
}

void Program::let_go() {
    session_.drop_preview();
    state_.registering.moving.reset();
    state_.colour_drag.reset();
    state_.held = panning_ = false;
    hold_.reset();
    scroll_.reset();
}

void Program::tap(const Gesture& gesture) {
    state_.show_focus = false;
    const int found = thing_at(frame_.list, gesture.at);
    if (found < 0) {
        if (state_.typing) accept_text();
        return;
    }
    touched_at_ = gesture.at;
    touch(Thing(frame_.list.things()[static_cast<std::size_t>(found)]));
    touched_at_.reset();
}

void Program::touch(const Thing& thing) {
    state_.focus = thing.name;
    if (thing.action < 0) return;
    const Action action = frame_.actions[static_cast<std::size_t>(thing.action)];
    const EditText* edit = action.as<EditText>();
    const bool same = edit && state_.typing && is_for(*state_.typing, *edit);
    if (state_.typing && !same && !action.as<AcceptText>()) accept_text();
    // A text that was refused stays where it is typed: no other field takes its place.
    if (state_.typing && edit && !same) return;
    act(action);
}

void Program::start_drag(const Gesture& gesture) {
    state_.show_focus = false;
    drag_start_ = gesture.from;
    hold_.reset();
    scroll_.reset();
    panning_ = false;
    const int found = thing_at(frame_.list, gesture.from);
    if (found >= 0) {
        const Thing& thing = frame_.list.things()[static_cast<std::size_t>(found)];
        if (thing.hold >= 0) {
            const bool stops = !std::holds_alternative<HoldSheet>(frame_.holds[static_cast<std::size_t>(thing.hold)]);
            if (stops && only_to_look()) return;
            hold_ = frame_.holds[static_cast<std::size_t>(thing.hold)];
            if (const HoldMark* mark = std::get_if<HoldMark>(&*hold_)) return take_mark(*mark);
            HeadId head = 0;
            if (const HoldStop* stop = std::get_if<HoldStop>(&*hold_)) {
                head = stop->head;
                state_.stop = stop->end;
            }
            if (const HoldPlot* plot = std::get_if<HoldPlot>(&*hold_)) head = plot->head;
            if (const HoldTilt* tilt = std::get_if<HoldTilt>(&*hold_)) {
                note_tilt(tilt->head, tilt->field);
                raw_tilt_ = number_of(session_.job(), find_head(session_.job(), tilt->head), tilt->field);
            }
            if (const HoldGauge* gauge = std::get_if<HoldGauge>(&*hold_))
                raw_gauge_ = number_of(session_.job(), find_head(session_.job(), gauge->head), gauge->field);
            if (const Head* of = find_head(session_.job(), head)) {
                raw_ = of->stops;
                state_.held = std::holds_alternative<HoldStop>(*hold_);
            }
            return;
        }
    }
    for (std::size_t i = 0; i < frame_.scrolls.size(); ++i)
        if (!frame_.scrolls[i].covered && frame_.scrolls[i].box.contains(gesture.from)) {
            scroll_ = i;
            return;
        }
    panning_ = frame_.diagram.contains(gesture.from);
}

void Program::drag_stop(const HoldStop& hold, Vec by, Vec at) {
    const Head* head = find_head(session_.job(), hold.head);
    if (!head) return;
    const HeadPlace place = place_of_station(session_.job().press, head->station);
    const Projection projection{state_.camera, layout_.diagram};
    const Vec tip = projection.to_screen(place.to_press({0.0, 1000.0}));
    const Vec root = projection.to_screen(place.to_press({0.0, 0.0}));
    const Vec along = (tip - root) * (1.0f / std::max(1e-3f, length(tip - root)));
    const Vec across{-along.y, along.x};
    const Vec out = at - drag_start_;
    const float sideways = std::abs(out.x * across.x + out.y * across.y);
    const double slow = 1.0 / (1.0 + std::max(0.0f, sideways - fine_from) / fine_over);
    const double mm = (by.x * along.x + by.y * along.y) / state_.camera.scale * slow;
    double& raw = stop_of(raw_, hold.end);
    const FieldInfo& info = info_of(hold.end == End::machine_side ? Field::machine_stop : Field::operator_stop);
    raw = std::clamp(raw + mm, info.least, info.most);
    Stops stops = head->stops;
    double& stop = stop_of(stops, hold.end);
    stop = nearest_graduation(session_.job().press.ruler, raw);
    const double apart = std::max(least_apart, session_.job().press.ruler.graduation);
    if (hold.end == End::machine_side) stop = std::max(stop, stops.operator_side + apart);
    else stop = std::min(stop, stops.machine_side - apart);
    session_.preview(hold.head, Edit{SetStops{hold.head, stops}});
}

void Program::drag_plot(const HoldPlot& hold, Vec by) {
    raw_.operator_side += by.x * hold.mm_per_dp;
    raw_.machine_side -= by.y * hold.mm_per_dp;
    const Ruler& ruler = session_.job().press.ruler;
    Stops stops{nearest_graduation(ruler, raw_.operator_side), nearest_graduation(ruler, raw_.machine_side)};
    if (stops.machine_side - stops.operator_side < least_apart) return;
    session_.preview(hold.head, Edit{SetStops{hold.head, stops}});
}

void Program::drag_tilt(const HoldTilt& hold, Vec by) {
    if (!find_head(session_.job(), hold.head)) return;
    // Whole degrees, as a holder's scale shows, within what this press's holders allow.
    raw_tilt_ += radians(static_cast<double>(hold.lean * by.x) / dp_per_degree);
    const Angles& angles = session_.job().press.angles;
    const double whole = radians(std::round(degrees(raw_tilt_)));
    session_.preview(hold.head, Edit{SetNumber{hold.head, hold.field, std::clamp(whole, angles.least, angles.most)}});
}

void Program::drag_gauge(const HoldGauge& hold, Vec by) {
    const PressProfile& press = session_.job().press;
    const Gauge& gauge = hold.field == Field::flood_gauge ? press.flood_gauge : press.squeegee_gauge;
    if (!find_head(session_.job(), hold.head) || !(hold.dp_per_mark > 0.0)) return;
    raw_gauge_ -= by.y / hold.dp_per_mark;
    const double steps = std::round((raw_gauge_ - gauge.lowest) / gauge.graduation);
    const double marks = std::clamp(gauge.lowest + steps * gauge.graduation, gauge.lowest, gauge.highest);
    session_.preview(hold.head, Edit{SetNumber{hold.head, hold.field, marks}});
}

/// Notes how a blade stands before its angle changes, so that the gauge which brings its edge back
/// can be told.
void Program::note_tilt(HeadId id, Field field) {
    const bool flood = field == Field::flood_angle;
    if (!flood && field != Field::squeegee_angle) return;
    const Head* head = find_head(session_.job(), id);
    if (!head) return;
    // Steps one after the other count from the first.
    const std::optional<TiltNote>& note = state_.tilted;
    const double gauge = flood ? head->flood.gauge : head->squeegee.gauge;
    if (note && note->head == id && note->flood == flood && note->gauge == gauge) return;
    state_.tilted = TiltNote{id, flood, flood ? head->flood.angle : head->squeegee.angle, gauge};
}

void Program::drag(const Gesture& gesture) {
    if (hold_) {
        if (const HoldStop* stop = std::get_if<HoldStop>(&*hold_)) drag_stop(*stop, gesture.by, gesture.at);
        if (const HoldPlot* plot = std::get_if<HoldPlot>(&*hold_)) drag_plot(*plot, gesture.by);
        if (const HoldTilt* tilt = std::get_if<HoldTilt>(&*hold_)) drag_tilt(*tilt, gesture.by);
        if (const HoldGauge* gauge = std::get_if<HoldGauge>(&*hold_)) drag_gauge(*gauge, gesture.by);
        if (const HoldMark* mark = std::get_if<HoldMark>(&*hold_)) drag_mark(*mark, gesture.by);
        if (const HoldCycle* cycle = std::get_if<HoldCycle>(&*hold_)) drag_cycle(*cycle, gesture.by);
        if (const HoldColour* colour = std::get_if<HoldColour>(&*hold_)) drag_colour(*colour, gesture.at);
        if (std::holds_alternative<HoldSheet>(*hold_)) {
            const float up = drag_start_.y - gesture.at.y;
            if (up > 40.0f) state_.tall_sheet = true;
            if (up < -40.0f) state_.tall_sheet = false;
        }
    } else if (scroll_ && *scroll_ < frame_.scrolls.size()) {
        state_.*frame_.scrolls[*scroll_].offset -= gesture.by.y;
    } else if (panning_) {
        state_.own_camera = true;
        state_.move.reset();
        state_.camera = panned({state_.camera, layout_.diagram}, gesture.by);
    }
}

void Program::start_fling(const Gesture& gesture) {
    if (!scroll_ || *scroll_ >= frame_.scrolls.size() || !gesture.touch) return;
    const float speed = -gesture.velocity.y;
    if (std::abs(speed) < least_fling) return;
    fling_ = Fling{frame_.scrolls[*scroll_].offset, std::clamp(speed, -most_fling, most_fling), now_};
}

/// Speed falls off exponentially, so the way it still has to run is speed times time constant.
void Program::run_fling() {
    if (!fling_) return;
    const double dt = std::clamp(now_ - fling_->last, 0.0, 0.1);
    const double left = std::exp(-dt / fling_time);
    state_.*fling_->offset += fling_->speed * static_cast<float>(fling_time * (1.0 - left));
    fling_->speed *= static_cast<float>(left);
    fling_->last = now_;
    if (std::abs(fling_->speed) < 12.0f) fling_.reset();
}

void Program::drop(const Gesture& gesture) {
    start_fling(gesture);
    drop_mark();
    if (hold_)
        if (const HoldColour* colour = std::get_if<HoldColour>(&*hold_)) drop_colour(*colour);
    state_.colour_drag.reset();
    session_.keep_preview();
    state_.held = false;
    hold_.reset();
    scroll_.reset();
    panning_ = false;
}

void Program::scroll_at(Vec at, float by) {
    for (const ScrollArea& area : frame_.scrolls)
        if (!area.covered && area.box.contains(at)) state_.*area.offset += by;
}

void Program::wheel(const InputEvent& event) {
    if (frame_.diagram.contains(event.at)) {
        state_.own_camera = true;
        state_.move.reset();
        state_.camera = zoomed({state_.camera, layout_.diagram}, std::pow(1.15, event.by.y), event.at);
        return;
    }
    scroll_at(event.at, -48.0f * event.by.y);
}

void Program::step_thing(const std::string& name, int steps) {
    const Thing* thing = frame_.list.find(name);
    if (!thing || thing->less < 0 || thing->more < 0) return;
    const Action action = frame_.actions[static_cast<std::size_t>(steps < 0 ? thing->less : thing->more)];
    for (int i = 0; i < std::abs(steps); ++i) act(action);
}

void Program::handle(const InputEvent& event) {
    now_ = std::max(now_, event.time);
    trace_pointer(event);
    switch (event.kind) {
    case InputKind::down:
    case InputKind::move:
    case InputKind::up:
    case InputKind::cancel: {
        gestures_.feed(event, gestured_);
        take_gestures();
        break;
    }
    case InputKind::wheel: wheel(event); break;
    case InputKind::pinch:
        if (!frame_.diagram.contains(event.at)) break;
        state_.own_camera = true;
        state_.camera = zoomed({state_.camera, layout_.diagram}, event.by.x, event.at);
        break;
    case InputKind::key: key(event); break;
    case InputKind::text: (void)pad_key(event); break;
    case InputKind::file: open_file(event.text); break;
    case InputKind::link: open_link(event.text); break;
    case InputKind::act:
        // The frame may have changed since the person's screen reader was told of it.
        if (const Thing* thing = frame_.list.find(event.text)) touch(Thing(*thing));
        break;
    case InputKind::step: step_thing(event.text, static_cast<int>(event.by.x)); break;
    case InputKind::focus:
        state_.focus = event.text;
        state_.show_focus = !event.text.empty();
        keep_focus_in_sight();
        break;
    case InputKind::edit:
        if (!state_.typing) break;
        state_.typing->text = event.text;
        text_changed();
        break;
    case InputKind::newer: state_.newer_ready = true; break;
    case InputKind::copied:
        notice(std::string(word(state_.looks.language, event.text.empty() ? Word::link_copied : Word::not_copied)),
               !event.text.empty());
        break;
    case InputKind::close: closing_ = true; break;
    case InputKind::redraw: break;
    }
}

} // namespace carriageway
