// Measuring a press: readings come in by the number pad; what follows from them is one edit.
#include "app/program.h"
#include "app/text/sentences.h"
#include "app/views/measure_words.h"

namespace carriageway {

namespace {

Taking& taking_of(Measuring& measuring, const MeasureTarget& target, const PressProfile& press) {
    for (Taking& taking : measuring.taken)
        if (taking.target == target) return taking;
    Taking taking;
    taking.target = target;
    const Procedure& procedure = procedure_of(target);
    for (int i = 0; i < procedure.needed_count; ++i) {
        const NeededReading& needed = procedure.needed[static_cast<std::size_t>(i)];
        const double step = !needed.exact ? usual_step(press, target, needed.kind) : 0.0;
        taking.lists.push_back({needed.kind, {}, 0.5 * step});
    }
    measuring.taken.push_back(std::move(taking));
    return measuring.taken.back();
}

int lacking(const Procedure& procedure, const Taking& taking, std::size_t list) {
    return procedure.needed[list].least - static_cast<int>(taking.lists[list].values.size());
}

/// The list whose turn it is after a reading went into `list`: of a pair the other one, else the
/// same until it has what it needs, then the first that lacks something.
std::size_t next_list(const Procedure& procedure, const Taking& taking, std::size_t list) {
    if (in_pairs(procedure))
        return taking.lists[0].values.size() <= taking.lists[1].values.size() ? 0 : 1;
    if (lacking(procedure, taking, list) > 0) return list;
    for (std::size_t i = 0; i < taking.lists.size(); ++i)
        if (lacking(procedure, taking, i) > 0) return i;
    return list;
}

bool complete(const Procedure& procedure, const Taking& taking) {
    for (std::size_t i = 0; i < taking.lists.size(); ++i)
        if (lacking(procedure, taking, i) > 0) return false;
    return !in_pairs(procedure) || taking.lists[0].values.size() == taking.lists[1].values.size();
}

Pad pad_for(const Job& job, const Looks& looks, const Taking& taking, std::size_t list, bool step) {
    const KindReadings& readings = taking.lists[list];
    PadReading reading;
    reading.list = list;
    reading.step = step;
    reading.quantity = reading_quantity(taking.target, readings.kind);
    reading.on_ruler = !step && on_ruler(taking.target, readings.kind);
    reading.label = step ? std::string(word(looks.language, Word::measure_nearest_title))
                         : std::string(word(looks.language, reading_word(taking.target, readings.kind)));
    Pad pad;
    pad.fresh = step;
    if (step) pad.text = plain_quantity(2.0 * readings.half_step, reading.quantity, looks.units);
    // What is known of it already is offered: only the step and a gauge's own height a mark are.
    if (!step && readings.kind == ReadingKind::height_a_mark && readings.values.empty()) {
        const Field field = taking.target.field == Field::flood_zero_height ? Field::flood_mm_per_mark
                                                                            : Field::squeegee_mm_per_mark;
        pad.text = plain_quantity(number_of(job, nullptr, field), Quantity::length, looks.units);
        pad.fresh = true;
    }
    pad.reading = reading;
    return pad;
}

} // namespace

Taking* Program::taking() {
    Measuring& measuring = state_.measuring;
    if (!measuring.open || !measuring.target) return nullptr;
    return &taking_of(measuring, *measuring.target, session_.job().press);
}

void Program::carry_out(const OpenMeasuring& a) {
    Measuring& measuring = state_.measuring;
    measuring.open = true;
    measuring.opener = state_.focus;
    measuring.target = target_for(a.field);
    measuring.direct = measuring.target.has_value();
    (void)taking();
    state_.measure_scroll = 0.0f;
    state_.pad.reset();
    state_.typing.reset();
    state_.notice.reset();
    if (state_.show_focus) state_.focus = "measure/close";
}

void Program::carry_out(const ShowProcedure& a) {
    state_.measuring.target = a.target;
    state_.measuring.direct = false;
    (void)taking();
    state_.measure_scroll = 0.0f;
    state_.pad.reset();
    if (state_.show_focus) state_.focus = "measure/back";
}

void Program::carry_out(const LeaveProcedure&) {
    if (!state_.measuring.target || state_.measuring.direct) return act(CloseMeasuring{});
    state_.pad.reset();
    state_.measuring.target.reset();
    state_.measure_scroll = 0.0f;
    if (state_.show_focus) state_.focus = "measure/close";
}

void Program::carry_out(const CloseMeasuring&) {
    if (!state_.measuring.open) return;
    state_.pad.reset();
    state_.focus = state_.measuring.opener;
    state_.measuring.open = false;
    state_.measuring.target.reset();
}

void Program::carry_out(const AddReading& a) {
    const Taking* shown = taking();
    if (!shown || a.list >= shown->lists.size()) return;
    state_.pad = pad_for(session_.job(), state_.looks, *shown, a.list, false);
    state_.measure_scroll = 0.0f;
}

void Program::carry_out(const SetReadingStep& a) {
    const Taking* shown = taking();
    if (!shown || a.list >= shown->lists.size()) return;
    state_.pad = pad_for(session_.job(), state_.looks, *shown, a.list, true);
    state_.measure_scroll = 0.0f;
}

void Program::carry_out(const RemoveReading& a) {
    Taking* shown = taking();
    if (!shown || a.list >= shown->lists.size()) return;
    std::vector<double>& values = shown->lists[a.list].values;
    if (a.reading >= values.size()) return;
    values.erase(values.begin() + static_cast<std::ptrdiff_t>(a.reading));
    // Of a pair both belong to one go: the other reading of it went with it.
    const bool pairs = in_pairs(procedure_of(shown->target));
    if (pairs) {
        std::vector<double>& other = shown->lists[1 - a.list].values;
        if (a.reading < other.size()) other.erase(other.begin() + static_cast<std::ptrdiff_t>(a.reading));
    }
    if (a.again) act(AddReading{pairs ? 0 : a.list});
}

/// What the pad says goes into its list; the pad stays for the next reading until nothing is lacking.
void Program::accept_reading() {
    Pad& pad = *state_.pad;
    Taking* shown = taking();
    if (!shown || pad.reading->list >= shown->lists.size() || pad.text.empty()) return state_.pad.reset();
    const PadReading reading = *pad.reading;
    const Ruler& ruler = session_.job().press.ruler;
    const LengthUnit unit = reading.on_ruler ? unit_of(ruler) : state_.looks.units;
    const std::optional<double> typed = read_quantity(pad.text, reading.quantity, unit);
    if (!typed || (reading.step && !(*typed > 0.0))) {
        pad.trouble = say(state_.looks.language,
                          reading.quantity == Quantity::length ? Word::number_not_read : Word::number_not_read_plain,
                          {pad.text});
        return;
    }
    if (reading.step) {
        shown->lists[reading.list].half_step = 0.5 * *typed;
        return state_.pad.reset();
    }
    const Procedure& procedure = procedure_of(shown->target);
    const bool was_complete = complete(procedure, *shown);
    shown->lists[reading.list].values.push_back(
        reading.on_ruler ? ruler_position(ruler, ruler.inches ? *typed / mm_per_inch : *typed) : *typed);
    if (complete(procedure, *shown) && (!was_complete || in_pairs(procedure))) {
        state_.pad.reset();
        // Where readings stand below one another, the result is at the end.
        state_.measure_scroll = 1e6f;
        return;
    }
    state_.pad = pad_for(session_.job(), state_.looks, *shown,
                         next_list(procedure, *shown, reading.list), false);
}

void Program::carry_out(const UseMeasured&) {
    const Taking* shown = taking();
    if (!shown) return;
    const MeasureTarget target = shown->target;
    const Measured result = measured(procedure_of(target), shown->lists);
    const std::optional<PressProfile> press = with_measured(session_.job().press, result, target.screw);
    if (!press) return;
    if (const std::optional<Applied> refused = session_.commit(Edit{SetPress{*press, {}}})) return refuse(*refused);
    const Language language = state_.looks.language;
    std::vector<Taking>& taken = state_.measuring.taken;
    for (std::size_t i = 0; i < taken.size(); ++i)
        if (taken[i].target == target) taken.erase(taken.begin() + static_cast<std::ptrdiff_t>(i--));
    act(LeaveProcedure{});
    notice(say(language, Word::measure_used,
               {target_title(language, *press, target), result_text(language, state_.looks.units, result)}));
}

/// The sheet lies over everything: only what moves about in it goes on to the rest.
bool Program::measure_key(const InputEvent& event) {
    if (event.key == Key::escape) {
        act(LeaveProcedure{});
        return true;
    }
    return sheet_key(event);
}

} // namespace carriageway
