// carriageway stations: the best station for every colour, or why there is none.
//
// --json: {format, job, state: "found", "impossible", "refused" or "too_large", nodes,
//   placements: [{idle, moved, wet_pairs, colours: [{colour, station}], flash_stations}],
//   reasons: [{what, idle, moved, wet_pairs}]        of the best placement
//   conflict: [what], needs: [what]                  where none is possible
// }
#include "app/records/command_json.h"
#include "app/records/command_options.h"
#include "app/records/job_source.h"
#include "app/text/sentences.h"
#include "app/text/station_sentences.h"

namespace carriageway {
namespace {

using Json = nlohmann::ordered_json;

constexpr int usual_alternatives = 5;
constexpr long steps_at_once = 100'000;

const char* state_name(PlacementState state) {
    switch (state) {
        case PlacementState::running: return "running";
        case PlacementState::found: return "found";
        case PlacementState::impossible: return "impossible";
        case PlacementState::refused: return "refused";
        case PlacementState::too_large: return "too_large";
    }
    return "";
}

void add_cost(Json& row, const PlacementCost& cost) {
    row["idle"] = cost.idle;
    row["moved"] = cost.moved;
    row["wet_pairs"] = cost.wet_pairs;
}

Json placements_report(const Job& job, const JobPlacement& asked, const PlacementStudy& study) {
    Json list = Json::array();
    for (const Placement& placement : study.placements()) {
        Json row;
        add_cost(row, placement.cost);
        row["colours"] = Json::array();
        for (std::size_t i = 0; i < placement.stations.size(); ++i) {
            const Head* head = find_head(job, asked.question.colours[i].id);
            row["colours"].push_back({{"colour", head ? head->colour : std::string()},
                                      {"station", station_of(asked, placement.stations[i])}});
        }
        row["flash_stations"] = Json::array();
        for (const int place : placement.flashes)
            row["flash_stations"].push_back(station_of(asked, place));
        list.push_back(std::move(row));
    }
    return list;
}

Json report_of(const Console& console, const Job& job, const JobPlacement& asked,
               const PlacementStudy& study) {
    Json report = started_report();
    report["job"] = job.name;
    report["state"] = state_name(study.state());
    report["nodes"] = study.nodes();
    report["placements"] = placements_report(job, asked, study);
    report["reasons"] = Json::array();
    for (const PlacementReason& reason : study.reasons()) {
        Json row;
        row["what"] = reason_text(console.language, job, asked, reason);
        add_cost(row, reason.cost);
        report["reasons"].push_back(std::move(row));
    }
    report["conflict"] = Json::array();
    report["needs"] = Json::array();
    for (const PlacementWish& wish : study.conflict().wishes)
        report["conflict"].push_back(wish_text(console.language, job, asked, wish));
    for (const PressNeed& need : study.conflict().needs)
        report["needs"].push_back(need_text(console.language, need));
    return report;
}

std::string found_text(const Console& console, const Job& job, const JobPlacement& asked,
                       const PlacementStudy& study) {
    std::string out;
    for (std::size_t rank = 0; rank < study.placements().size(); ++rank) {
        const Placement& placement = study.placements()[rank];
        const std::string name =
            rank == 0 ? console.text(Word::stations_best)
                      : say(console.language, Word::stations_other, {std::to_string(rank)});
        out += name + ": " + cost_text(console.language, placement.cost) + "\n    " +
               printable(placement_text(console.language, job, asked, placement)) + '\n';
    }
    out += '\n';
    const bool stopped = study.state() == PlacementState::too_large;
    if (stopped) out += console.text(Word::stations_too_large) + '\n';
    if (stopped && study.reasons().empty()) return out;
    out += console.text(Word::stations_reasons) + '\n';
    for (const PlacementReason& reason : study.reasons())
        out += "  " + printable(reason_text(console.language, job, asked, reason)) + '\n';
    if (study.reasons().empty()) out += "  " + console.text(Word::stations_reasons_none) + '\n';
    return out;
}

std::string impossible_text(const Console& console, const Job& job, const JobPlacement& asked,
                            const PlacementStudy& study) {
    const PlacementConflict& conflict = study.conflict();
    std::string out = console.text(Word::stations_none) + '\n' +
                      console.text(conflict.wishes.empty() ? Word::stations_no_wish
                                                           : Word::stations_conflict) +
                      '\n';
    for (const PlacementWish& wish : conflict.wishes)
        out += "  " + printable(wish_text(console.language, job, asked, wish)) + '\n';
    if (!conflict.needs.empty()) out += console.text(Word::stations_need) + '\n';
    for (const PressNeed& need : conflict.needs)
        out += "  " + need_text(console.language, need) + '\n';
    return out;
}

std::optional<int> alternatives_of(const Console& console, const Given& given) {
    if (!given.alternatives) return usual_alternatives;
    const std::optional<double> number = read_number(*given.alternatives);
    if (number && *number >= 1 && *number <= most_alternatives &&
        *number == static_cast<int>(*number))
        return static_cast<int>(*number);
    const std::string use =
        say(console.language, Word::from_to, {"1", std::to_string(most_alternatives)});
    console.misuse(
        say(console.language, Word::option_bad_value, {*given.alternatives, "--alternatives", use}));
    return std::nullopt;
}

} // namespace

int stations_command(const Console& console, const Given& given) {
    const std::optional<int> alternatives = alternatives_of(console, given);
    if (!alternatives) return exit_trouble;
    const std::optional<SourcedJob> sourced = job_from(console, given.operands.front());
    if (!sourced) return exit_trouble;
    const Job& job = sourced->job;
    const JobPlacement asked = job_placement(job, given.fixed_flashes);
    PlacementSettings settings;
    settings.alternatives = *alternatives;
    PlacementStudy study(asked.question, settings);
    while (study.run(steps_at_once) == PlacementState::running) {
    }
    const PlacementState state = study.state();
    const int status = state == PlacementState::found        ? exit_fit
                       : state == PlacementState::impossible ? exit_not_fit
                                                             : exit_trouble;
    if (console.json) {
        write_report(console.services.out, report_of(console, job, asked, study));
        return status;
    }
    if (state == PlacementState::refused) {
        const std::string name = subject_of(console, given.operands.front());
        return console.complain(name, job.heads.empty() ? console.text(Word::no_heads)
                                                        : console.text(Word::stations_refused));
    }
    write_out(console, printable(job.name) + '\n' +
                           (state == PlacementState::impossible
                                ? impossible_text(console, job, asked, study)
                                : found_text(console, job, asked, study)));
    return status;
}

} // namespace carriageway
