// Edits that take more than one step: stops by the mark, numbers from the pad, names, new heads.
#include "app/program.h"
#include "app/text/sentences.h"
#include "app/views/exercise_view.h"

namespace carriageway {

namespace {

/// Stops keep at least this apart (mm) while they are dragged or stepped: bars can't overlap.
constexpr double least_apart = 1.0;

} // namespace

bool Program::apply_edit(const Edit& edit) {
    if (looked_at_only(model())) return false;
    if (const SetNumber* number = std::get_if<SetNumber>(&edit.what)) note_tilt(number->head, number->field);
    const std::optional<Applied> refused = session_.commit(edit);
    if (refused) refuse(*refused);
    return !refused;
}

void Program::refuse(const Applied& refused) {
    notice(refusal_text(state_.looks.language, state_.looks.units, *refused.refusal, refused.field,
                        session_.job().press.stations),
           true);
}

void Program::step_stop(const StepStop& step) {
    const Head* head = find_head(session_.job(), step.head);
    if (!head) return;
    const Ruler& ruler = session_.job().press.ruler;
    Stops stops = head->stops;
    double& stop = stop_of(stops, step.end);
    state_.stop = step.end;
    if (step.steps != 0.0) {
        // From between two marks, a step leads to the next mark; on a mark, to its neighbour.
        const Direction way = (step.steps > 0.0) == (ruler.counts == Direction::toward_machine)
                                  ? Direction::toward_machine
                                  : Direction::toward_operator;
        const double next = graduation_toward(ruler, stop, way);
        stop = std::abs(next - stop) > graduation_slack ? next : stop + sign_of(way) * ruler.graduation;
    }
    stop += step.mm;
    if (stops.machine_side - stops.operator_side < least_apart) return;
    apply_edit(Edit{SetStops{step.head, stops}});
}

void Program::press_pad(PadKey key) {
    if (!state_.pad) return;
    Pad& pad = *state_.pad;
    if (key == PadKey::cancel) {
        state_.pad.reset();
        return;
    }
    if (key == PadKey::accept) {
        accept_pad();
        return;
    }
    pad.trouble.clear();
    if (key == PadKey::backspace) {
        if (pad.fresh) pad.text.clear();
        else if (!pad.text.empty()) pad.text.pop_back();
        pad.fresh = false;
        return;
    }
    static constexpr const char* faces[] = {"0", "1", "2", "3", "4", "5", "6", "7", "8", "9",
                                            ".", "/", " ", "-", "", " mm", " in", " cm"};
    const bool unit = key == PadKey::mm || key == PadKey::inch || key == PadKey::cm;
    if (pad.fresh && !unit) pad.text.clear();
    if (unit)
        while (!pad.text.empty() && (std::isalpha(static_cast<unsigned char>(pad.text.back())) ||
                                     pad.text.back() == ' '))
            pad.text.pop_back();
    if (pad.text.size() < 24) pad.text += faces[static_cast<int>(key)];
    pad.fresh = false;
}

void Program::accept_pad() {
    if (state_.pad->reading) return accept_reading();
    Pad& pad = *state_.pad;
    if (pad.target.number != RegisterNumber::none) return accept_register_pad();
    if (pad.day.number != DayNumber::none) return accept_day_pad();
    const Language language = state_.looks.language;
    const LengthUnit units = state_.looks.units;
    const Quantity quantity = info_of(pad.field).quantity;
    const bool stop = is_stop(pad.field);
    const Ruler& ruler = session_.job().press.ruler;
    const std::optional<double> typed =
        read_quantity(pad.text, quantity, stop ? unit_of(ruler) : units);
    if (!typed) {
        pad.trouble = say(language,
                          quantity == Quantity::length ? Word::number_not_read : Word::number_not_read_plain,
                          {pad.text});
        return;
    }
    // A stop is typed as the ruler shows it, so it is measured from the ruler's zero.
    const double value =
        stop ? ruler_position(ruler, ruler.inches ? *typed / mm_per_inch : *typed) : *typed;
    // An outline has no size of its own: a typed one stretches it, both ways alike.
    const Head* head = find_head(session_.job(), pad.head);
    const bool across = pad.field == Field::image_width;
    const bool of_outline = head && !head->image.outline.empty() && (across || pad.field == Field::image_length);
    const Edit edit = of_outline && accepts(pad.field, value)
                          ? Edit{SetImage{pad.head, resized(head->image, across, value)}}
                          : Edit{SetNumber{pad.head, pad.field, value}};
    const std::optional<Applied> refused = session_.commit(edit);
    if (!refused) {
        note_read_out(pad.head, pad.field);
        state_.pad.reset();
        return;
    }
    pad.trouble = refusal_text(language, units, *refused->refusal, refused->field,
                               session_.job().press.stations);
}

void Program::add_head(int station) {
    const Head head = new_head(session_.job(), station,
                               std::string(word(state_.looks.language, Word::new_colour)));
    apply_edit(Edit{AddHead{head}});
    if (find_head(session_.job(), head.id)) choose_head(head.id);
}

void Program::edit_text(const EditText& edit) {
    TextEntry entry;
    entry.target = edit.target;
    entry.job = edit.job;
    entry.head = edit.head;
    entry.note = edit.note;
    switch (edit.target) {
    case TextTarget::search: entry.text = state_.search; break;
    case TextTarget::job_name: entry.text = session_.job().name; break;
    case TextTarget::head_colour:
        if (const Head* head = find_head(session_.job(), state_.head)) entry.text = head->colour;
        state_.panel_scroll = 0.0f;
        break;
    case TextTarget::row_name:
        for (const JobRow& row : session_.rows())
            if (row.id == edit.job) entry.text = row.name;
        break;
    case TextTarget::new_trainee:
    case TextTarget::trainee_name:
    case TextTarget::sender: entry.text = trainee_text(edit); break;
    case TextTarget::call_press:
    case TextTarget::call_notes: entry.text = call_text(edit); break;
    default: entry.text = day_text(edit); break;
    }
    state_.typing = entry;
}

void Program::text_changed() {
    if (!state_.typing || state_.typing->target != TextTarget::search) return;
    state_.search = state_.typing->text;
    session_.search(state_.search);
}

void Program::accept_text() {
    if (!state_.typing) return;
    const TextEntry entry = *state_.typing;
    state_.typing.reset();
    const bool of_job = entry.target != TextTarget::search && entry.target != TextTarget::initials;
    if (of_job && only_to_look()) return;
    const std::optional<bool> of_run = accept_day_text(entry);
    bool done = of_run.value_or(accept_trainee_text(entry).value_or(
        accept_call_text(entry).value_or(true)));
    switch (entry.target) {
    case TextTarget::search:
        state_.search = entry.text;
        session_.search(entry.text);
        break;
    case TextTarget::job_name: done = apply_edit(Edit{SetName{0, entry.text}}); break;
    case TextTarget::head_colour:
        done = apply_edit(Edit{SetName{state_.head, entry.text}});
        break;
    case TextTarget::row_name:
        if (!session_.rename(entry.job, entry.text))
            notice(session_.trouble().empty() ? std::string(word(state_.looks.language,
                                                                 Word::refusal_name_too_long))
                                              : session_.trouble(),
                   true);
        break;
    default: break;
    }
    if (done) return;
    // What is refused stays where it is typed, with the reason in the notice.
    state_.typing = entry;
    state_.typing->fresh = true;
}

void Program::cancel_text() { state_.typing.reset(); }

void Program::set_looks(const Looks& looks) {
    state_.looks = looks;
    ClassState& view = state_.class_view;
    Looks kept = looks;
    // Before a class the text is larger than the person has it otherwise, and that isn't stored.
    if (view.on) {
        view.scale = looks.text_scale;
        kept.text_scale = view.own_scale;
    }
    session_.set_looks(kept);
}

} // namespace carriageway
