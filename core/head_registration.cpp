#include "core/head_registration.h"

#include <algorithm>
#include <cmath>

namespace carriageway {

namespace {

/// What a round says to the judge of rounds; nothing where its marks give no answer.
std::optional<Round> judged_round(const PressProfile& press, std::span<const MarkRound> rounds,
                                  std::size_t index) {
    const MarkRound& round = rounds[index];
    const auto lies = register_marks(round.marks, press.readings.mark);
    const Registration* registration = std::get_if<Registration>(&lies);
    if (registration == nullptr) return std::nullopt;
    const auto advice =
        advise(*registration, press.adjusters, play_of(press, rounds.first(index)));
    const Advice* given = std::get_if<Advice>(&advice);
    if (given == nullptr) return std::nullopt;
    Round judged = round_of(*registration, *given, press.adjusters);
    judged.turned = {};
    for (std::size_t i = 0; i < std::min(round.turned.size(), press.adjusters.size()); ++i)
        judged.turned[index_of(press.adjusters[i].side)] = round.turned[i];
    return judged;
}

RoundSize size_of_round(const PressProfile& press, const MarkRound& round) {
    RoundSize size;
    size.read = is_read(round);
    const auto lies = register_marks(round.marks, press.readings.mark);
    if (const Registration* registration = std::get_if<Registration>(&lies)) {
        size.answered = true;
        size.rms = registration->error_rms;
        size.max = registration->error_max;
    }
    return size;
}

RegistrationVerdict verdict_of(const HeadRegistration& head) {
    const Registration* lies = std::get_if<Registration>(&head.lies);
    const Advice* advice = head.advice ? std::get_if<Advice>(&*head.advice) : nullptr;
    if (lies == nullptr || advice == nullptr) return RegistrationVerdict::no_answer;
    if (head.within) return RegistrationVerdict::within;
    if (advice->screws.empty()) return RegistrationVerdict::no_adjusters;
    if (!advice->settled) return RegistrationVerdict::turn;
    return advice->plain || errors_stand_out(*lies) ? RegistrationVerdict::leave
                                                    : RegistrationVerdict::read_finer;
}

} // namespace

bool is_read(const MarkRound& round) {
    return round.read ||
           std::any_of(round.marks.begin(), round.marks.end(),
                       [](const MarkReading& mark) { return !(mark.nominal == mark.measured); });
}

bool is_of_platen(const MarkRound& round) { return round.platen > 0 && round.turn > 0; }

Play play_of(const PressProfile& press, std::span<const MarkRound> before) {
    Play play;
    play.backlash = press.readings.backlash;
    // Each screw counts for itself, but a person who follows the advice has the play in mind: only
    // when every adjuster has been turned is all of it taken up.
    for (std::size_t i = 0; i < press.adjusters.size(); ++i) {
        const bool turned = std::any_of(before.begin(), before.end(), [&](const MarkRound& round) {
            return i < round.turned.size() && round.turned[i] != 0.0;
        });
        if (!turned) return play;
    }
    play.taken_up = !press.adjusters.empty();
    return play;
}

HeadRegistration register_head(const PressProfile& press, std::span<const MarkRound> rounds,
                               std::size_t index, double tolerance) {
    static const MarkRound nothing;
    const bool there = index < rounds.size();
    const MarkRound& round = there ? rounds[index] : nothing;
    const std::span<const MarkRound> before = there ? rounds.first(index) : rounds;
    HeadRegistration head{is_read(round), register_marks(round.marks, press.readings.mark),
                          {}, false, {}, {}, RegistrationVerdict::no_answer};
    if (const Registration* registration = std::get_if<Registration>(&head.lies)) {
        head.advice =
            advise(*registration, press.adjusters, play_of(press, before), tolerance);
        head.within = registration->error_max <= tolerance;
    }
    head.verdict = verdict_of(head);
    for (const MarkRound& one : rounds) head.sizes.push_back(size_of_round(press, one));
    std::vector<Round> judged;
    for (std::size_t i = 0; i <= index && i < rounds.size(); ++i) {
        const bool lone = is_of_platen(rounds[i]) && rounds[i].turned.empty() && i != index;
        if (lone || !is_read(rounds[i])) continue;
        if (const std::optional<Round> one = judged_round(press, rounds, i)) judged.push_back(*one);
    }
    head.judged = judge_rounds(judged, press.adjusters, tolerance);
    return head;
}

std::vector<double> advised_turns(const Advice& advice, std::span<const Adjuster> adjusters) {
    std::vector<double> turns(adjusters.size(), 0.0);
    for (const ScrewAdvice& screw : advice.screws)
        if (screw.adjuster < adjusters.size())
            turns[screw.adjuster] = static_cast<double>(screw.graduations) /
                                    static_cast<double>(adjusters[screw.adjuster].graduations);
    return turns;
}

std::vector<PlatenReading> platen_readings(std::span<const MarkRound> rounds,
                                           std::vector<std::size_t>& places) {
    std::vector<PlatenReading> readings;
    places.clear();
    for (std::size_t i = 0; i < rounds.size(); ++i) {
        if (is_of_platen(rounds[i]) && is_read(rounds[i])) {
            readings.push_back({rounds[i].platen, rounds[i].turn, rounds[i].marks});
            places.push_back(i);
        }
        const std::vector<double>& turned = rounds[i].turned;
        if (std::none_of(turned.begin(), turned.end(), [](double turn) { return turn != 0.0; }))
            continue;
        readings.clear();
        places.clear();
    }
    return readings;
}

PlatenPrints platen_prints(const PressProfile& press, std::span<const MarkRound> rounds) {
    PlatenPrints prints;
    prints.readings = platen_readings(rounds, prints.places);
    prints.scatter = scatter_of(prints.readings, press.readings.mark);
    return prints;
}

} // namespace carriageway
