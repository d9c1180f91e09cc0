#include "core/carry_over.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/assess.h"
#include "core/blade_pose.h"
#include "core/head_contact.h"
#include "core/job_check.h"
#include "core/pressure.h"
#include "core/walk.h"

namespace carriageway {
namespace {

/// Marks by which a setting may miss a graduation and still stand on it: rounding.
constexpr double mark_slack = 1e-9;

/// What a press has for one of its two blades.
struct BladeParts {
    const Holder& holder;
    const Gauge& gauge;
    double zero_height;
    Cylinders cylinders;
};

BladeParts squeegee_parts(const PressProfile& press) {
    return {press.squeegee_holder, press.squeegee_gauge, press.edge_heights.squeegee,
            {press.cylinders.squeegee_bore, 0.0,
             static_cast<int>(std::lround(press.cylinders.squeegee_count))}};
}
BladeParts flood_parts(const PressProfile& press) {
    return {press.flood_holder, press.flood_gauge, press.edge_heights.flood,
            {press.cylinders.flood_bore, 0.0,
             static_cast<int>(std::lround(press.cylinders.flood_count))}};
}

/// A number and what became of it.
struct Became {
    double value = 0.0;
    CarriedHow how = CarriedHow::kept;
};

Became limited(double value, double least, double most) {
    const double within = std::clamp(value, least, most);
    return {within, within == value ? CarriedHow::kept : CarriedHow::clamped};
}

/// The mark that puts an edge at the height at which it was.
Became gauge_for(const BladeParts& was, double old_angle, double old_marks, const BladeParts& is,
                 double angle) {
    const double lift_before = blade_pose(was.holder, was.gauge, old_angle, old_marks).height;
    const double lift_now = edge_lift(is.holder, 0.0, angle);
    const double marks =
        (was.zero_height + lift_before - is.zero_height - lift_now) / is.gauge.mm_per_mark;
    const bool on_scale = old_marks >= is.gauge.lowest && old_marks <= is.gauge.highest;
    if (on_scale && std::abs(marks - old_marks) <= mark_slack) return {old_marks};
    const auto set = restore_edge_height(is.holder, is.gauge, marks, angle, angle);
    if (!set || !accepts(Field::squeegee_gauge, set->setting)) {
        return {old_marks, CarriedHow::cannot};
    }
    if (!set->on_scale) return {set->setting, CarriedHow::clamped};
    return {set->setting, set->setting == old_marks ? CarriedHow::kept : CarriedHow::converted};
}

/// The pressure that gives a blade the line load that it had.
Became pressure_for(const Cylinders& was, const Cylinders& is, double pressure, double blade) {
    if (was.bore == is.bore && was.count == is.count) return {pressure};
    const auto load = line_load(was, pressure, blade, BladeRest::on_mesh);
    const auto wanted = load ? pressure_for_line_load(is, *load, blade) : std::nullopt;
    if (!wanted || std::isnan(*wanted)) return {pressure, CarriedHow::cannot};
    const FieldInfo& info = info_of(Field::squeegee_pressure);
    Became set = limited(*wanted, info.least, info.most);
    if (set.how == CarriedHow::kept && set.value != pressure) set.how = CarriedHow::converted;
    return set;
}

/// Works on one head, whose angles and speeds are still the old ones.
struct HeadCarrier {
    const PressProfile& was;
    const PressProfile& is;
    Head& head;
    std::vector<Carried>& numbers;

    double& number(Field field) const {
        Job without; // the numbers of a head don't depend on its job
        return number_of(without, &head, field);
    }

    void set(Field field, Became became) const {
        double& value = number(field);
        numbers.push_back({head.id, field, value, became.value, became.how});
        value = became.value;
    }

    void carry() const {
        for (const Field speed : {Field::print_speed, Field::flood_speed}) {
            set(speed, limited(number(speed), info_of(speed).least, is.carriage.fastest));
        }
        const double squeegee_angle = head.squeegee.angle;
        const double flood_angle = head.flood.angle;
        for (const Field angle : {Field::squeegee_angle, Field::flood_angle}) {
            set(angle, limited(number(angle), is.angles.least, is.angles.most));
        }
        set(Field::squeegee_gauge,
            gauge_for(squeegee_parts(was), squeegee_angle, head.squeegee.gauge,
                      squeegee_parts(is), head.squeegee.angle));
        set(Field::flood_gauge, gauge_for(flood_parts(was), flood_angle, head.flood.gauge,
                                          flood_parts(is), head.flood.angle));
        carry_heights();
        set(Field::squeegee_pressure,
            pressure_for(squeegee_parts(was).cylinders, squeegee_parts(is).cylinders,
                         head.pressure.squeegee, head.squeegee.width));
        set(Field::flood_pressure,
            pressure_for(flood_parts(was).cylinders, flood_parts(is).cylinders,
                         head.pressure.flood, head.flood.width));
        if (head.wish.screen_on != 0.0) set(Field::screen_on, {0.0, CarriedHow::cleared});
    }

    /// The plane of the mesh stays; its height is set at other points.
    void carry_heights() const {
        const OffContactPlane plane = plane_of(head.heights, was.height_points);
        const HeightPoints& points = is.height_points;
        const std::pair<Field, Point> places[] = {
            {Field::height_left, {-points.across, points.operator_y}},
            {Field::height_right, {points.across, points.operator_y}},
            {Field::height_machine, {0.0, points.machine_y}}};
        for (const auto& [field, at] : places) {
            if (was.height_points == points) {
                set(field, {number(field)});
                continue;
            }
            const FieldInfo& info = info_of(field);
            // A level screen is as high everywhere, whatever rounding makes of its plane.
            const double height = plane.slope_x == 0.0 && plane.slope_y == 0.0
                                      ? head.heights.left
                                      : plane.height_at(at);
            // Points next to one another give no plane that reaches to others.
            Became became = std::isfinite(height) ? limited(height, info.least, info.most)
                                                  : Became{number(field), CarriedHow::cannot};
            if (became.how == CarriedHow::kept && became.value != number(field)) {
                became.how = CarriedHow::converted;
            }
            set(field, became);
        }
    }
};

/// Stations of a job that are open and can hold a head, lowest first.
std::vector<int> stations_for_heads(const Job& job) {
    std::vector<int> stations;
    for (int station = 1; station <= job.press.stations; ++station) {
        if (use_of(job, station) != StationUse::open) continue;
        if (station_room(job.press, station).print_head) stations.push_back(station);
    }
    return stations;
}

/// New stations for heads on `old` stations, both ascending; there must be enough `free` ones.
std::vector<int> stations_in_order(const std::vector<Head>& heads, const std::vector<int>& free) {
    std::vector<int> stations;
    std::size_t next = 0; // the first free one behind the head before
    for (std::size_t i = 0; i < heads.size(); ++i) {
        const std::size_t latest = free.size() - (heads.size() - i);
        std::size_t at = next;
        while (at < latest && free[at] < heads[i].station)
            ++at;
        stations.push_back(free[at]);
        next = at + 1;
    }
    return stations;
}

void carry_stops(CarryOver& carried, std::vector<std::vector<Carried>>& of_heads) {
    Assessment assessment;
    assess(carried.job, assessment);
    for (std::size_t i = 0; i < carried.job.heads.size(); ++i) {
        Stops& stops = carried.job.heads[i].stops;
        const auto& advised = assessment.heads[i].advised;
        const Stops after = advised.value_or(stops);
        const CarriedHow how = !advised         ? CarriedHow::cannot
                               : after == stops ? CarriedHow::kept
                                                : CarriedHow::solved;
        const HeadId id = carried.job.heads[i].id;
        of_heads[i].push_back(
            {id, Field::operator_stop, stops.operator_side, after.operator_side, how});
        of_heads[i].push_back(
            {id, Field::machine_stop, stops.machine_side, after.machine_side, how});
        stops = after;
    }
}

void clear_noted(Job& job) {
    job.walk.clear();
    job.record = {};
}

/// A job with the old one's recipe on another press, its heads not yet carried over.
Job on_press(const Job& old, const PressProfile& press, const std::vector<StationUse>& uses) {
    Job job = old;
    clear_noted(job);
    job.height_readings.clear();
    for (Head& head : job.heads)
        head.rounds.clear();
    job.press = press;
    job.uses = uses;
    job.uses.resize(static_cast<std::size_t>(press.stations), StationUse::open);
    return job;
}

} // namespace

CarryOver carry_over(const Job& old, const PressProfile& press,
                     const std::vector<StationUse>& uses) {
    CarryOver carried;
    if (fault_of(old)) {
        carried.refusal = CarryRefusal::not_a_job;
        return carried;
    }
    if (fault_of(press)) {
        carried.refusal = CarryRefusal::not_a_press;
        return carried;
    }
    Job job = on_press(old, press, uses);
    const std::vector<int> free = stations_for_heads(job);
    if (free.size() < job.heads.size()) {
        carried.refusal = CarryRefusal::too_few_stations;
        carried.missing = static_cast<int>(job.heads.size() - free.size());
        return carried;
    }
    const std::vector<int> stations = stations_in_order(job.heads, free);
    std::vector<std::vector<Carried>> of_heads(job.heads.size());
    for (std::size_t i = 0; i < job.heads.size(); ++i) {
        Head& head = job.heads[i];
        const CarriedHow how =
            head.station == stations[i] ? CarriedHow::kept : CarriedHow::moved;
        of_heads[i].push_back({head.id, Field::count, static_cast<double>(head.station),
                               static_cast<double>(stations[i]), how});
        head.station = stations[i];
        HeadCarrier{old.press, press, head, of_heads[i]}.carry();
    }
    carried.job = std::move(job);
    carry_stops(carried, of_heads);
    for (const auto& numbers : of_heads)
        carried.numbers.insert(carried.numbers.end(), numbers.begin(), numbers.end());
    return carried;
}

Job start_again(const Job& old, const StartAgain& how) {
    Job job = how.as_really_set ? as_set(old) : old;
    clear_noted(job);
    if (!how.keep_rounds) {
        for (Head& head : job.heads) {
            head.rounds.clear();
            head.wish.screen_on = 0.0;
        }
    }
    return job;
}

} // namespace carriageway
