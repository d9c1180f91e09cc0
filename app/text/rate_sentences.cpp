#include "app/text/rate_sentences.h"

#include <cmath>

#include "app/text/rate_words.h"
#include "app/text/sentences.h"

namespace carriageway {

namespace {

/// "2.69 s each × 2": the same work, one after the other.
struct Stretch {
    StepKind kind = StepKind::wait;
    double length = 0.0;
    int times = 0;
};

/// Steps of a station by kind, in the order of their first; equal ones counted.
std::vector<Stretch> stretches_of(const StationPace& station) {
    std::vector<Stretch> out;
    for (const RateStep& step : station.steps) {
        bool found = false;
        for (Stretch& one : out)
            if (one.kind == step.kind && std::abs(one.length - step.length) < tie_slack) {
                ++one.times;
                found = true;
                break;
            }
        if (!found) out.push_back({step.kind, step.length, 1});
    }
    return out;
}

std::string whole(double number) { return format_number(number, 0); }

/// A flood that is done, or begins, while the table turns.
std::string early_flood_text(Language language, const JobPace& pace, std::size_t place) {
    const StationWork& work = pace.plan.stations[place];
    const double early =
        work.kind == StationKind::print ? flood_in_index(work.head) : 0.0;
    if (!(early > 0.0)) return {};
    if (early > pace.rate.index)
        return say(language, Word::rate_flood_outlasts,
                   {pace_time(early), pace_time(pace.rate.index)});
    return say(language, Word::rate_flood_hidden, {pace_time(early)});
}

} // namespace

std::string pace_time(double seconds) { return format_number(seconds, 2) + " s"; }

std::string duration_text(double seconds) {
    constexpr double minute = 60.0, least_minutes = 2.0;
    if (!(seconds >= least_minutes * minute)) return format_number(seconds, 0) + " s";
    const double minutes = std::round(seconds / minute);
    const double hours = std::floor(minutes / minute);
    if (hours < 1.0) return whole(minutes) + " min";
    return whole(hours) + " h " + whole(minutes - hours * minute) + " min";
}

std::string station_name(Language language, const Job& job, const RatePlan& plan,
                         std::size_t place) {
    const StationWork& work = plan.stations[place];
    if (const Head* head = head_on(job, work.station); head && work.kind == StationKind::print)
        return head_title(language, *head);
    return say(language, Word::station_title,
               {std::to_string(work.station),
                word(language, kind_word(work.kind, handled_together(plan)))});
}

std::string station_in_words(Language language, const RatePlan& plan, std::size_t place) {
    const StationWork& work = plan.stations[place];
    return say(language, sentence_word(work.kind, handled_together(plan)),
               {std::to_string(work.station)});
}

std::string stations_in_words(Language language, const RatePlan& plan,
                              const std::vector<std::size_t>& places) {
    std::string out;
    for (std::size_t i = 0; i < places.size(); ++i) {
        const std::string one = station_in_words(language, plan, places[i]);
        const bool last = i + 1 == places.size();
        out = i == 0 ? one : last ? say(language, Word::rate_and, {out, one}) : out + ", " + one;
    }
    return out;
}

std::string rate_text(Language language, const Rate& rate) {
    return say(language, Word::rate_pieces, {whole(rate.pieces_an_hour)});
}

std::string dozens_text(Language language, const Rate& rate) {
    return say(language, Word::rate_dozens, {format_number(rate.dozens_an_hour, 1)});
}

std::string cycle_text(Language language, const JobPace& pace) {
    const std::string cycle = pace_time(pace.rate.cycle);
    if (pace.rate.slowest.empty()) return say(language, Word::rate_cycle_index, {cycle});
    return say(language, Word::rate_cycle,
               {cycle, pace_time(pace.rate.index),
                station_in_words(language, pace.plan, pace.rate.slowest.front()),
                pace_time(pace.rate.longest)});
}

std::string steps_text(Language language, const StationPace& station, bool both) {
    std::string out;
    for (const Stretch& one : stretches_of(station)) {
        const std::string_view what = word(language, step_word(one.kind, both));
        const std::string time = pace_time(one.length);
        out += (out.empty() ? "" : ", ") +
               (one.times == 1 ? say(language, Word::rate_step_time, {what, time})
                               : say(language, Word::rate_step_times,
                                     {what, time, std::to_string(one.times)}));
    }
    return out;
}

SaidStation slowest_text(Language language, const Job& job, const JobPace& pace) {
    const Rate& rate = pace.rate;
    SaidStation said;
    if (rate.slowest.empty()) {
        said.title = word(language, Word::rate_slowest_none);
        return said;
    }
    const std::string longest = pace_time(rate.longest);
    if (rate.slowest.size() > 1) {
        said.title =
            say(language, Word::rate_slowest_tie,
                {stations_in_words(language, pace.plan, rate.slowest), longest});
        said.why.emplace_back(word(language, Word::rate_all_wait_tie));
        return said;
    }
    const std::size_t place = rate.slowest.front();
    const bool both = handled_together(pace.plan);
    said.title = say(language, Word::rate_slowest,
                     {station_name(language, job, pace.plan, place), longest});
    const StationPace& station = rate.stations[place];
    if (station.steps.size() > 1)
        said.why.push_back(
            say(language, Word::rate_of_it, {steps_text(language, station, both)}));
    const std::string early = early_flood_text(language, pace, place);
    if (!early.empty()) said.why.push_back(early);
    said.why.emplace_back(word(language, Word::rate_all_wait));
    return said;
}

std::vector<std::string> run_text(Language language, const Job& job, const JobPace& pace) {
    if (!pace.run) return {};
    const double filling = pace.run->with_filling - pace.run->pieces_only;
    return {say(language, Word::rate_run_time,
                {whole(job.run.pieces), duration_text(pace.run->with_filling)}),
            say(language, Word::rate_run_filling, {duration_text(filling)})};
}

std::vector<std::string> range_text(Language language, const JobPace& pace) {
    if (!pace.range) return {};
    const RateRange& range = *pace.range;
    std::vector<std::string> lines{
        say(language, Word::rate_range_likely,
            {whole(range.likely_slowest.pieces_an_hour),
             whole(range.likely_fastest.pieces_an_hour)}),
        say(language, Word::rate_range_worst,
            {whole(range.slowest.pieces_an_hour), whole(range.fastest.pieces_an_hour)})};
    if (range.may_be_slowest.size() > 1)
        lines.push_back(say(language, Word::rate_range_slowest,
                            {stations_in_words(language, pace.plan, range.may_be_slowest)}));
    lines.push_back(say(language, Word::rate_range_assumed,
                        {format_share(handling_share), format_share(machine_share)}));
    return lines;
}

std::vector<std::string> no_rate_text(Language language, const Job& job, const JobPace& pace) {
    if (pace.runs()) return {};
    std::vector<std::string> lines;
    for (const StillHead& still : pace.still) {
        const Head* head = find_head(job, still.head);
        const std::string name =
            head ? head_title(language, *head)
                 : say(language, Word::head_title_plain, {std::to_string(still.station)});
        lines.push_back(say(language,
                            still.both_on ? Word::rate_still_both : Word::rate_still_travel,
                            {name}));
    }
    if (lines.empty()) lines.emplace_back(word(language, Word::rate_fault));
    return lines;
}

std::string handling_text(Language language, const JobPace& pace) {
    switch (pace.handling) {
    case HandlingAt::own_stations: return {};
    case HandlingAt::open_station:
        return say(language, Word::rate_open_station, {std::to_string(pace.handling_station)});
    case HandlingAt::nowhere: break;
    }
    return std::string(word(language, Word::rate_nobody));
}

std::string heat_cycle_text(Language language, const Job& job, const JobPace& pace) {
    if (!cycle_differs(job, pace)) return {};
    return say(language, Word::rate_heat_cycle,
               {pace_time(job.run.cycle), pace_time(pace.rate.cycle)});
}

} // namespace carriageway
