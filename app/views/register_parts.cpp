// What the parts of the Register place share: which head and round, and what they come to.
#include <utility>

#include "app/text/sentences.h"
#include "app/views/register_view.h"

namespace carriageway {

const Head* registered_head(const Job& job, const ViewState& state) {
    if (const Head* head = find_head(job, state.head)) return head;
    return base_head(job);
}

std::size_t round_index(const Head& head, const RegisterState& state) {
    if (state.round && *state.round < head.rounds.size()) return *state.round;
    return head.rounds.empty() ? 0 : head.rounds.size() - 1;
}

void move_mark(MarkRound& round, std::size_t mark, const Point& to) {
    MarkReading& moved = round.marks[mark];
    moved.measured.x += to.x - moved.nominal.x;
    moved.measured.y += to.y - moved.nominal.y;
    moved.nominal = to;
}

RegisterView register_view(const Model& model, const Head& head) {
    RegisterView view;
    view.model = &model;
    view.head = &head;
    view.rounds = head.rounds;
    const RegisterState& state = model.state->registering;
    view.index = round_index(head, state);
    if (view.index < view.rounds.size()) {
        MarkRound& round = view.rounds[view.index];
        if (state.moving && state.mark && *state.mark < round.marks.size())
            move_mark(round, *state.mark, *state.moving);
        view.round = round;
    }
    view.result = register_head(model.job->press, view.rounds, view.index,
                                model.job->registration.tolerance);
    if (state.mode == RegisterMode::platens)
        view.prints = platen_prints(model.job->press, view.rounds);
    if (state.mode == RegisterMode::heights) view.levelling = job_levelling(*model.job);
    return view;
}

Edit with_round(const RegisterView& view, const MarkRound& round) {
    std::vector<MarkRound> rounds = view.head->rounds;
    if (view.index < rounds.size()) rounds[view.index] = round;
    else rounds.push_back(round);
    return Edit{SetRounds{view.head->id, std::move(rounds)}};
}

Point place_of(const HeightPoints& points, HeightPoint point) {
    const LevelPoints at = level_points(points);
    switch (point) {
    case HeightPoint::operator_left: return at.operator_left;
    case HeightPoint::operator_right: return at.operator_right;
    case HeightPoint::machine: return at.machine_side;
    case HeightPoint::centre: break;
    }
    return {0.0, 0.0};
}

Quantity register_quantity(RegisterNumber number) {
    return number == RegisterNumber::platen || number == RegisterNumber::turn ? Quantity::count
                                                                              : Quantity::length;
}

std::string register_title(const RegisterTarget& target, Language language) {
    const auto of_mark = [&](Word key) {
        return say(language, Word::reg_mark, {std::to_string(target.index + 1)}) + ": " +
               std::string(word(language, key));
    };
    switch (target.number) {
    case RegisterNumber::error_x: return of_mark(Word::reg_error_x);
    case RegisterNumber::error_y: return of_mark(Word::reg_error_y);
    case RegisterNumber::place_x: return of_mark(Word::reg_place_x);
    case RegisterNumber::place_y: return of_mark(Word::reg_place_y);
    case RegisterNumber::platen: return std::string(word(language, Word::reg_platen_number));
    case RegisterNumber::turn: return std::string(word(language, Word::reg_turn_number));
    case RegisterNumber::height: return std::string(word(language, Word::level_gap));
    case RegisterNumber::none: break;
    }
    return {};
}

} // namespace carriageway
