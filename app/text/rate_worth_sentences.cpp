// What a change is worth, in words.
#include <algorithm>
#include <cmath>

#include "app/text/rate_sentences.h"
#include "app/text/rate_words.h"
#include "app/text/sentences.h"

namespace carriageway {

namespace {

constexpr double least_shown = 0.05; ///< pieces an hour that are written as 0.1

bool is_speed(Lever lever) {
    return lever == Lever::print_speed || lever == Lever::flood_speed;
}

/// A change's size with its unit, without a sign.
std::string amount_text(LengthUnit unit, Lever lever, double change) {
    const double size = std::abs(change);
    if (lever == Lever::stroke) return format_length(size, unit);
    return is_speed(lever) ? format_speed(size, unit) : pace_time(size);
}

double asked_step(Lever lever) {
    if (lever == Lever::stroke) return pace_steps.distance;
    return is_speed(lever) ? pace_steps.speed : pace_steps.time;
}

StationKind kind_of(const JobPace& pace, const Worth& worth) {
    return worth.lever == Lever::index ? StationKind::idle : pace.plan.stations[worth.place].kind;
}

std::string gained(Language language, double pieces) {
    if (pieces < least_shown) return std::string(word(language, Word::rate_gain_small));
    return say(language, Word::rate_gain, {format_number(pieces, 1)});
}

/// Another station takes as long or longer.
std::string held_text(Language language, const JobPace& pace, const Worth& worth) {
    const std::string others = stations_in_words(language, pace.plan, worth.held_by);
    const double slower = pace.rate.stations[worth.place].idle;
    if (slower < tie_slack) return say(language, Word::rate_nothing_tie, {others});
    return say(language, Word::rate_nothing_slower, {others, pace_time(slower)});
}

Word end_word(Lever lever) {
    if (lever == Lever::stroke) return Word::rate_nothing_shortest;
    return is_speed(lever) ? Word::rate_nothing_fastest : Word::rate_nothing_least;
}

Word no_effect_word(Lever lever, const JobPace& pace, const Worth& worth) {
    if (lever == Lever::index) return Word::rate_nothing_outlasts;
    const HeadPace& head = pace.plan.stations[worth.place].head;
    const double early = flood_in_index(head);
    const bool hidden = early > 0.0 && early <= pace.rate.index;
    return hidden && lever != Lever::print_speed ? Word::rate_nothing_hidden
                                                 : Word::rate_nothing_speed;
}

std::string row_text(Language language, LengthUnit unit, const JobPace& pace, const Worth& worth) {
    return capitalised(lever_text(language, unit, pace, worth)) + " → " +
           worth_text(language, pace, worth);
}

} // namespace

std::string lever_text(Language language, LengthUnit unit, const JobPace& pace,
                       const Worth& worth) {
    const double step = worth.step != 0.0 ? worth.step : asked_step(worth.lever);
    return say(language,
               lever_word(worth.lever, kind_of(pace, worth), handled_together(pace.plan)),
               {amount_text(unit, worth.lever, step)});
}

std::string worth_text(Language language, const JobPace& pace, const Worth& worth) {
    switch (worth.verdict) {
    case WorthVerdict::gains: return gained(language, worth.gain);
    case WorthVerdict::another_slower: return held_text(language, pace, worth);
    case WorthVerdict::at_its_end:
        if (kind_of(pace, worth) == StationKind::flash)
            return say(language, Word::rate_nothing_dwell, {pace_time(worth.end)});
        return std::string(word(language, end_word(worth.lever)));
    case WorthVerdict::no_effect: break;
    }
    return std::string(word(language, no_effect_word(worth.lever, pace, worth)));
}

std::string break_even_text(Language language, LengthUnit unit, const JobPace& pace,
                            const Worth& worth) {
    if (worth.verdict != WorthVerdict::gains || worth.most_gain < least_shown) return {};
    const std::string amount = amount_text(unit, worth.lever, worth.until);
    const std::string most = format_number(worth.most_gain, 1);
    if (worth.next.empty()) return say(language, Word::rate_even_end, {amount, most});
    return say(language, Word::rate_even,
               {amount, stations_in_words(language, pace.plan, worth.next), most});
}

std::vector<std::string> worth_lines(Language language, LengthUnit unit, const JobPace& pace,
                                     std::size_t place) {
    std::vector<std::string> lines;
    for (const Worth& worth : pace.worth) {
        if (worth.lever == Lever::index || worth.place != place) continue;
        const bool own = worth.lever == Lever::stroke || worth.lever == Lever::seconds;
        // Waits for a blade and the head's way down and up are as the press has them.
        if (!own && !(is_speed(worth.lever) && worth.verdict == WorthVerdict::gains)) continue;
        lines.push_back(row_text(language, unit, pace, worth));
        // How far it goes is told of what is asked for first.
        const std::string even = own ? break_even_text(language, unit, pace, worth) : "";
        if (!even.empty()) lines.push_back(even);
        if (!even.empty() && kind_of(pace, worth) == StationKind::flash)
            lines.emplace_back(word(language, Word::rate_still_gels));
    }
    return lines;
}

std::string index_worth_text(Language language, LengthUnit unit, const JobPace& pace) {
    const Worth* worth = worth_of(pace, 0, Lever::index);
    return worth ? row_text(language, unit, pace, *worth) : std::string();
}

std::string joint_text(Language language, const JobPace& pace) {
    const auto prints = [](const StationWork& work) { return work.kind == StationKind::print; };
    const std::vector<StationWork>& stations = pace.plan.stations;
    if (pace.joint.slowest.empty() || std::none_of(stations.begin(), stations.end(), prints))
        return {};
    const std::string then = stations_in_words(language, pace.plan, pace.joint.slowest);
    if (pace.joint.gain < least_shown) return say(language, Word::rate_joint_nothing, {then});
    return say(language, Word::rate_joint, {format_number(pace.joint.gain, 1), then});
}

} // namespace carriageway
