#include "app/records/command_rate_report.h"

#include "app/records/command_json.h"
#include "app/records/exchange.h"

namespace carriageway {
namespace {

using Json = nlohmann::ordered_json;

const char* name_of(StationKind kind, bool both) {
    switch (kind) {
    case StationKind::print: return "print";
    case StationKind::flash: return "flash";
    case StationKind::load: return both ? "load_and_unload" : "load";
    case StationKind::unload: return "unload";
    case StationKind::cool: return "cool";
    case StationKind::idle: break;
    }
    return "idle";
}

const char* name_of(StepKind kind) {
    switch (kind) {
    case StepKind::index: return "index";
    case StepKind::lower: return "lower";
    case StepKind::drop: return "drop";
    case StepKind::flood: return "flood";
    case StepKind::print: return "print";
    case StepKind::empty: return "empty";
    case StepKind::dwell: return "dwell";
    case StepKind::lift: return "lift";
    case StepKind::flash: return "flash";
    case StepKind::load: return "load";
    case StepKind::unload: return "unload";
    case StepKind::cool: return "cool";
    case StepKind::stay: return "stay";
    case StepKind::wait: break;
    }
    return "wait";
}

const char* name_of(Lever lever) {
    switch (lever) {
    case Lever::stroke: return "stroke_mm";
    case Lever::print_speed: return "print_speed_mm_per_s";
    case Lever::flood_speed: return "flood_speed_mm_per_s";
    case Lever::drop: return "drop_s";
    case Lever::dwell: return "dwell_s";
    case Lever::lower: return "lower_s";
    case Lever::lift: return "lift_s";
    case Lever::seconds: return "seconds";
    case Lever::index: break;
    }
    return "index_s";
}

const char* name_of(WorthVerdict verdict) {
    switch (verdict) {
    case WorthVerdict::gains: return "gains";
    case WorthVerdict::another_slower: return "another_slower";
    case WorthVerdict::at_its_end: return "at_its_end";
    case WorthVerdict::no_effect: break;
    }
    return "no_effect";
}

const char* name_of(HandlingAt handling) {
    switch (handling) {
    case HandlingAt::own_stations: return "own_stations";
    case HandlingAt::open_station: return "open_station";
    case HandlingAt::nowhere: break;
    }
    return "nowhere";
}

Json stations_at(const RatePlan& plan, const std::vector<std::size_t>& places) {
    Json out = Json::array();
    for (const std::size_t place : places) out.push_back(plan.stations[place].station);
    return out;
}

Json still_report(const Job& job, const std::vector<StillHead>& still) {
    Json out = Json::array();
    for (const StillHead& one : still) {
        const Head* head = find_head(job, one.head);
        Json said;
        said["station"] = one.station;
        said["colour"] = head ? head->colour : std::string();
        said["both_sensors_on"] = one.both_on;
        out.push_back(std::move(said));
    }
    return out;
}

Json station_report(const Job& job, const StationPace& station, bool both) {
    const Head* head = head_on(job, station.station);
    Json out;
    out["station"] = station.station;
    out["kind"] = name_of(station.kind, both);
    out["colour"] = nullptr;
    if (head != nullptr) out["colour"] = head->colour;
    out["seconds"] = rounded(station.seconds);
    out["waits_s"] = rounded(station.idle);
    out["slowest"] = station.slowest;
    Json steps = Json::array();
    for (const RateStep& step : station.steps) {
        Json one;
        one["kind"] = name_of(step.kind);
        one["start_s"] = rounded(step.start);
        one["length_s"] = rounded(step.length);
        one["stroke"] = step.stroke;
        steps.push_back(std::move(one));
    }
    out["steps"] = std::move(steps);
    return out;
}

Json worth_report(const RatePlan& plan, const Worth& worth) {
    Json out;
    out["station"] = nullptr;
    if (worth.lever != Lever::index) out["station"] = plan.stations[worth.place].station;
    out["lever"] = name_of(worth.lever);
    out["verdict"] = name_of(worth.verdict);
    out["now"] = rounded(worth.now);
    out["end"] = rounded(worth.end);
    out["step"] = rounded(worth.step);
    out["until"] = rounded(worth.until);
    out["per_unit"] = rounded(worth.per_unit);
    out["time_saved_s_per_unit"] = rounded(worth.time_saved);
    out["gain_pieces_an_hour"] = rounded(worth.gain);
    out["most_gain_pieces_an_hour"] = rounded(worth.most_gain);
    out["held_by_stations"] = stations_at(plan, worth.held_by);
    out["next_stations"] = stations_at(plan, worth.next);
    return out;
}

Json figures_report(const RateFigures& figures) {
    return {{"cycle_s", rounded(figures.cycle)},
            {"pieces_an_hour", rounded(figures.pieces_an_hour)},
            {"dozens_an_hour", rounded(figures.dozens_an_hour)}};
}

Json range_report(const JobPace& pace) {
    if (!pace.range) return nullptr;
    Json out;
    out["fastest"] = figures_report(pace.range->fastest);
    out["likely_fastest"] = figures_report(pace.range->likely_fastest);
    out["likely_slowest"] = figures_report(pace.range->likely_slowest);
    out["slowest"] = figures_report(pace.range->slowest);
    out["may_be_slowest_stations"] = stations_at(pace.plan, pace.range->may_be_slowest);
    out["handling_share"] = handling_share;
    out["machine_share"] = machine_share;
    return out;
}

Json run_report(const Job& job, const JobPace& pace) {
    if (!pace.run) return nullptr;
    Json out;
    out["pieces"] = rounded(job.run.pieces);
    out["indexes"] = rounded(pace.run->indexes);
    out["pieces_only_s"] = rounded(pace.run->pieces_only);
    out["with_filling_s"] = rounded(pace.run->with_filling);
    out["first_piece_s"] = rounded(pace.run->first_piece);
    return out;
}

Json joint_report(const JobPace& pace) {
    Json out;
    out["gain_pieces_an_hour"] = rounded(pace.joint.gain);
    out["cycle_s"] = rounded(pace.joint.cycle);
    out["slowest_stations"] = stations_at(pace.plan, pace.joint.slowest);
    return out;
}

void add_rate(Json& out, const Job& job, const JobPace& pace) {
    const Rate& rate = pace.rate;
    out["cycle_s"] = rounded(rate.cycle);
    out["index_s"] = rounded(rate.index);
    out["pieces_an_index"] = rate.pieces_an_index;
    out["pieces_an_hour"] = rounded(rate.pieces_an_hour);
    out["dozens_an_hour"] = rounded(rate.dozens_an_hour);
    out["slowest_stations"] = stations_at(pace.plan, rate.slowest);
    Json stations = Json::array();
    const bool both = handled_together(pace.plan);
    for (const StationPace& station : rate.stations)
        stations.push_back(station_report(job, station, both));
    out["stations"] = std::move(stations);
    Json worth = Json::array();
    for (const Worth& one : pace.worth) worth.push_back(worth_report(pace.plan, one));
    out["worth"] = std::move(worth);
    out["shortest_strokes"] = joint_report(pace);
    out["range"] = range_report(pace);
    out["run"] = run_report(job, pace);
    out["heat_cycle_s"] = rounded(job.run.cycle);
    const std::optional<Edit> edit = take_cycle(job, pace);
    out["heat_cycle_edit"] = edit ? Json::parse(write_edit(*edit)) : Json(nullptr);
}

} // namespace

Json rate_report(const Job& job, const JobPace& pace) {
    Json out = started_report();
    out["job"] = job.name;
    out["press"] = job.press.name;
    out["runs"] = pace.runs();
    out["still_heads"] = still_report(job, pace.still);
    out["handling"] = name_of(pace.handling);
    if (pace.runs()) add_rate(out, job, pace);
    return out;
}

} // namespace carriageway
