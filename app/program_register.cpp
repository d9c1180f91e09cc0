// The Register place: heads, marks, rounds and heights.
#include <algorithm>
#include <cmath>

#include "app/program.h"
#include "app/text/sentences.h"
#include "app/views/register_view.h"

namespace carriageway {

namespace {

/// Marks are put on whole millimetres by a finger; finer places are typed. Ours.
double whole_mm(double mm) { return std::round(mm); }

/// A count as typed, kept within what an int holds; what is beyond any number of platens or turns
/// is left for the job to refuse.
int whole_count(double typed) { return static_cast<int>(std::clamp(std::round(typed), -1.0, 1e9)); }

std::vector<MarkRound> with_new_mark(const Head& head, const RegisterState& state,
                                     const Point& at) {
    std::vector<MarkRound> rounds = head.rounds;
    if (rounds.empty()) rounds.emplace_back();
    rounds[round_index(head, state)].marks.push_back({at, at});
    return rounds;
}

} // namespace

void Program::carry_out(const RegisterHead& a) {
    state_.head = a.head;
    state_.own_camera = false;
    state_.pad.reset();
    state_.panel_scroll = 0.0f;
    state_.registering.round.reset();
    state_.registering.mark.reset();
}

void Program::carry_out(const ChooseRegisterMode& a) {
    state_.registering.mode = a.mode;
    state_.panel_scroll = 0.0f;
}

void Program::carry_out(const ChooseMark& a) { state_.registering.mark = a.mark; }

void Program::carry_out(const ChooseRound& a) {
    state_.registering.round = a.round;
    state_.registering.mark.reset();
    if (state_.registering.mode == RegisterMode::platens)
        state_.registering.mode = RegisterMode::marks;
    state_.panel_scroll = 0.0f;
}

void Program::carry_out(const AddMarkAt& a) {
    const Head* head = find_head(session_.job(), a.head);
    if (!head) return;
    // By the keyboard there is no place: the centre of the frame, to be typed from there.
    Point at{0.0, 0.0};
    if (touched_at_) at = a.scale.from(*touched_at_);
    at = {whole_mm(at.x), whole_mm(at.y)};
    const std::vector<MarkRound> rounds = with_new_mark(*head, state_.registering, at);
    const std::size_t index = round_index(*head, state_.registering);
    const std::size_t mark = rounds[index].marks.size() - 1;
    if (const std::optional<Applied> refused = session_.commit(Edit{SetRounds{a.head, rounds}}))
        return refuse(*refused);
    state_.registering.mark = mark;
}

void Program::carry_out(const RegisterEdit& a) {
    if (const std::optional<Applied> refused = session_.commit(a.edit)) return refuse(*refused);
    state_.registering.round = a.round;
    state_.registering.mark = a.mark;
    const bool next = std::holds_alternative<SetRounds>(a.edit.what) && !a.round && !a.mark;
    if (next) state_.panel_scroll = 0.0f;
}

void Program::carry_out(const ChooseHeightPlace& a) {
    state_.registering.platen = a.platen;
    state_.registering.point = a.point;
}

void Program::carry_out(const RemoveHeightReading& a) {
    std::vector<HeightReading> readings = session_.job().height_readings;
    if (a.reading >= readings.size()) return;
    readings.erase(readings.begin() + static_cast<std::ptrdiff_t>(a.reading));
    carry_out(RegisterEdit{Edit{SetHeightReadings{std::move(readings)}}, {}, {}});
}

void Program::carry_out(const OpenRegisterPad& a) {
    const Head* head = find_head(session_.job(), a.head);
    if (!head) return;
    Pad pad;
    pad.head = a.head;
    pad.target = a.target;
    const std::size_t index = round_index(*head, state_.registering);
    const MarkRound round = index < head->rounds.size() ? head->rounds[index] : MarkRound{};
    MarkReading mark;
    if (a.target.index < round.marks.size()) mark = round.marks[a.target.index];
    double value = 0.0;
    switch (a.target.number) {
    case RegisterNumber::error_x: value = error_of(mark).x; break;
    case RegisterNumber::error_y: value = error_of(mark).y; break;
    case RegisterNumber::place_x: value = mark.nominal.x; break;
    case RegisterNumber::place_y: value = mark.nominal.y; break;
    case RegisterNumber::platen: value = round.platen; break;
    case RegisterNumber::turn: value = round.turn; break;
    case RegisterNumber::height:
    case RegisterNumber::none: break;
    }
    if (a.target.number != RegisterNumber::height)
        pad.text = plain_quantity(value, register_quantity(a.target.number), state_.looks.units);
    state_.pad = pad;
}

/// The edit that a typed number stands for; nothing where there is no such mark any more.
std::optional<Edit> Program::typed_edit(const Pad& pad, double value) const {
    const Job& job = session_.job();
    const Head* head = find_head(job, pad.head);
    if (!head) return std::nullopt;
    const RegisterTarget& target = pad.target;
    if (target.number == RegisterNumber::height) {
        const Point at = place_of(job.press.height_points, state_.registering.point);
        std::vector<HeightReading> readings = job.height_readings;
        readings.push_back({state_.registering.platen, head->id, at.x, at.y, value});
        return Edit{SetHeightReadings{std::move(readings)}};
    }
    std::vector<MarkRound> rounds = head->rounds;
    if (rounds.empty()) rounds.emplace_back();
    MarkRound& round = rounds[round_index(*head, state_.registering)];
    const bool of_round =
        target.number == RegisterNumber::platen || target.number == RegisterNumber::turn;
    if (!of_round && target.index >= round.marks.size()) return std::nullopt;
    if (target.number == RegisterNumber::platen) round.platen = whole_count(value);
    if (target.number == RegisterNumber::turn) round.turn = whole_count(value);
    if (of_round) return Edit{SetRounds{head->id, std::move(rounds)}};
    MarkReading& mark = round.marks[target.index];
    if (target.number == RegisterNumber::error_x || target.number == RegisterNumber::error_y)
        round.read = true;
    if (target.number == RegisterNumber::error_x) mark.measured.x = mark.nominal.x + value;
    if (target.number == RegisterNumber::error_y) mark.measured.y = mark.nominal.y + value;
    if (target.number == RegisterNumber::place_x)
        move_mark(round, target.index, {value, mark.nominal.y});
    if (target.number == RegisterNumber::place_y)
        move_mark(round, target.index, {mark.nominal.x, value});
    return Edit{SetRounds{head->id, std::move(rounds)}};
}

void Program::accept_register_pad() {
    Pad& pad = *state_.pad;
    const Language language = state_.looks.language;
    const Quantity quantity = register_quantity(pad.target.number);
    const std::optional<double> typed = read_quantity(pad.text, quantity, state_.looks.units);
    const bool whole = quantity == Quantity::count;
    if (!typed || (whole && *typed != std::round(*typed))) {
        pad.trouble =
            say(language, whole ? Word::number_not_read_plain : Word::number_not_read, {pad.text});
        return;
    }
    const std::optional<Edit> edit = typed_edit(pad, *typed);
    if (!edit) {
        state_.pad.reset();
        return;
    }
    if (const std::optional<Applied> refused = session_.commit(*edit)) {
        pad.trouble = refusal_text(language, state_.looks.units, *refused->refusal, refused->field,
                                   session_.job().press.stations);
        return;
    }
    const Pad done = pad;
    state_.pad.reset();
    if (done.target.number == RegisterNumber::error_x) {
        // Both numbers of a mark are read together: the other one follows while it stands at zero.
        const Head& head = *find_head(session_.job(), done.head);
        const MarkReading& mark =
            head.rounds[round_index(head, state_.registering)].marks[done.target.index];
        if (mark.measured.y == mark.nominal.y)
            carry_out(OpenRegisterPad{done.head, {RegisterNumber::error_y, done.target.index}});
    }
    if (done.target.number == RegisterNumber::height) {
        const int next = (static_cast<int>(state_.registering.point) + 1) % height_points;
        state_.registering.point = static_cast<HeightPoint>(next);
    }
}

void Program::take_mark(const HoldMark& hold) {
    const Head* head = find_head(session_.job(), hold.head);
    if (!head || head->rounds.empty()) return;
    const MarkRound& round = head->rounds[round_index(*head, state_.registering)];
    if (hold.mark >= round.marks.size()) return;
    state_.registering.mark = hold.mark;
    state_.registering.moving = round.marks[hold.mark].nominal;
}

void Program::drag_mark(const HoldMark& hold, Vec by) {
    if (!state_.registering.moving) return;
    state_.registering.moving->x += static_cast<double>(by.x / hold.dp_per_mm);
    state_.registering.moving->y -= static_cast<double>(by.y / hold.dp_per_mm);
}

void Program::drop_mark() {
    if (!state_.registering.moving || !hold_) return;
    const Point to{whole_mm(state_.registering.moving->x), whole_mm(state_.registering.moving->y)};
    state_.registering.moving.reset();
    const HoldMark* hold = std::get_if<HoldMark>(&*hold_);
    const Head* head = hold ? find_head(session_.job(), hold->head) : nullptr;
    if (!head || head->rounds.empty()) return;
    std::vector<MarkRound> rounds = head->rounds;
    MarkRound& round = rounds[round_index(*head, state_.registering)];
    if (hold->mark >= round.marks.size()) return;
    move_mark(round, hold->mark, to);
    apply_edit(Edit{SetRounds{head->id, std::move(rounds)}});
}

} // namespace carriageway
