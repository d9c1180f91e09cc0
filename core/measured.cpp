// The numbers of a procedure from its readings (procedures.h).
#include <algorithm>
#include <cassert>
#include <cmath>
#include <initializer_list>
#include <limits>

#include "core/procedures.h"

namespace carriageway {

namespace {

using Values = std::vector<double>;
constexpr double endless = std::numeric_limits<double>::infinity();

/// Sines, marks and the like that differ by less can't be divided by. Ours: far below any scale.
constexpr double least_difference = 1e-6;

std::optional<double> quotient(double above, double below) {
    if (!(std::abs(below) > least_difference)) return std::nullopt;
    return above / below;
}

/// The readings in the order in which the procedure names their kinds.
struct Sorted {
    std::vector<const KindReadings*> readings;
    std::vector<ReadingStatistics> statistics;
    std::vector<Estimate> estimates;
    bool uncertain_known = true; ///< false: something was read once, with no step given
};

Measured refused(MeasuredRefusal refusal, ReadingKind kind = ReadingKind::length) {
    Measured result;
    result.refusal = refusal;
    result.kind = kind;
    return result;
}

/// Refuses readings that are not finite, not wanted or too few.
Measured checked(const Procedure& procedure, const std::vector<KindReadings>& readings) {
    const auto first = procedure.needed.begin(), last = first + procedure.needed_count;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const KindReadings& one = readings[i];
        const auto same = [&one](const auto& other) { return other.kind == one.kind; };
        const auto before = readings.begin() + static_cast<std::ptrdiff_t>(i);
        if (std::none_of(first, last, same) || std::any_of(readings.begin(), before, same))
            return refused(MeasuredRefusal::not_wanted, one.kind);
        const auto finite = [](double value) { return std::isfinite(value); };
        if (!std::all_of(one.values.begin(), one.values.end(), finite) ||
            !finite(one.half_step) || one.half_step < 0.0)
            return refused(MeasuredRefusal::not_finite, one.kind);
    }
    for (auto needed = first; needed != last; ++needed) {
        const auto found =
            std::find_if(readings.begin(), readings.end(),
                         [&](const KindReadings& one) { return one.kind == needed->kind; });
        if (found == readings.end() ||
            found->values.size() < static_cast<std::size_t>(needed->least))
            return refused(MeasuredRefusal::missing, needed->kind);
    }
    return {};
}

Sorted sorted(const Procedure& procedure, const std::vector<KindReadings>& readings) {
    Sorted result;
    for (int i = 0; i < procedure.needed_count; ++i) {
        const NeededReading& needed = procedure.needed[static_cast<std::size_t>(i)];
        const KindReadings& given =
            *std::find_if(readings.begin(), readings.end(),
                          [&](const KindReadings& one) { return one.kind == needed.kind; });
        result.readings.push_back(&given);
        result.statistics.push_back(statistics_of(given.values, 2.0 * given.half_step));
        const ReadingStatistics& statistics = result.statistics.back();
        if (needed.exact) {
            result.estimates.push_back({statistics.mean, 0.0, endless});
            continue;
        }
        result.estimates.push_back(estimate_of(statistics, given.half_step));
        if (statistics.count < 2 && !(given.half_step > 0.0)) result.uncertain_known = false;
    }
    return result;
}

/// What a procedure's formula gives for its first or second field; nothing where it can't be
/// worked out.
std::optional<double> formula(Steps steps, int place, const Values& v) {
    switch (steps) {
        case Steps::decide:
        case Steps::read:
            return v[0];
        case Steps::read_half:
            return 0.5 * v[0];
        case Steps::difference:
        case Steps::lamps_out:
            return v[1] - v[0];
        case Steps::ratio:
            return quotient(v[0], v[1]);
        case Steps::acceleration_of_stroke:
            return acceleration_of_stroke(v[0], v[1], v[2]);
        case Steps::latency_at_two_speeds:
            return latency_at_two_speeds(v[0], v[1], v[2], v[3]);
        case Steps::gauge_marks: {
            const auto value = quotient(v[3] - v[1], v[2] - v[0]);
            return value ? std::optional(std::abs(*value)) : std::nullopt;
        }
        case Steps::two_angles:
            return place == 0 ? pivot_offset_of(v[0], v[1], v[2], v[3])
                              : pivot_height_of(v[0], v[1], v[2], v[3]);
        case Steps::height_at_zero:
            return v[2] - v[0] * v[1];
        case Steps::rise_a_second:
            return quotient(v[1] - v[0], v[2]);
        case Steps::cooling:
            return cooling_constant_of(v[0], v[1], v[2], v[3]);
        case Steps::scatter:
        case Steps::scatter_of_difference:
            break; // not a function of means
    }
    return std::nullopt;
}

/// A standard deviation and its own standard uncertainty, about s/√(2(n − 1)) (JCGM 100:2008,
/// E.4.3). Readings to a step hide what is finer: each of `half_steps` adds that of its step
/// (F.2.2.1), so that readings that are all alike don't pass for a thing that never strays.
Estimate scatter_of(const ReadingStatistics& statistics, std::initializer_list<double> half_steps) {
    const auto freedom = static_cast<double>(statistics.count - 1);
    double variance = statistics.deviation * statistics.deviation;
    for (const double half_step : half_steps) variance += half_step * half_step / 3.0;
    return {std::sqrt(variance), statistics.deviation / std::sqrt(2.0 * freedom), freedom};
}

MeasuredRefusal add_value(Measured& result, Field field, const Estimate& estimate, bool known) {
    MeasuredValue value;
    value.field = field;
    value.value = estimate.value;
    if (known && std::isfinite(estimate.uncertainty)) {
        value.spread = Spread{estimate.uncertainty, true};
        value.freedom = estimate.freedom;
    }
    result.values.push_back(value);
    if (field == Field::count)
        return estimate.value > 0.0 ? MeasuredRefusal::none : MeasuredRefusal::impossible;
    return accepts(field, estimate.value) ? MeasuredRefusal::none
                                          : MeasuredRefusal::outside_limits;
}

MeasuredRefusal add_scatter(Measured& result, const Procedure& procedure, const Sorted& data) {
    if (procedure.steps == Steps::scatter)
        return add_value(result, procedure.fields[0],
                         scatter_of(data.statistics[0], {data.readings[0]->half_step}), true);
    const Values &first = data.readings[0]->values, &second = data.readings[1]->values;
    if (first.size() != second.size()) return MeasuredRefusal::unequal_counts;
    Values differences;
    for (std::size_t i = 0; i < first.size(); ++i) differences.push_back(second[i] - first[i]);
    const Estimate scatter = scatter_of(
        statistics_of(differences), {data.readings[0]->half_step, data.readings[1]->half_step});
    return add_value(result, procedure.fields[0], scatter, true);
}

MeasuredRefusal add_from_means(Measured& result, const Procedure& procedure,
                               const Sorted& data) {
    Values means;
    for (const Estimate& estimate : data.estimates) means.push_back(estimate.value);
    const int count = procedure.steps == Steps::lamps_out ? 1 : std::max(1, procedure.field_count);
    for (int place = 0; place < count; ++place) {
        if (!formula(procedure.steps, place, means))
            return procedure.steps == Steps::acceleration_of_stroke ||
                           procedure.steps == Steps::cooling
                       ? MeasuredRefusal::impossible
                       : MeasuredRefusal::no_difference;
        // Where the formula ends within the uncertainty, the uncertainty has no end.
        const Estimate estimate = propagate(
            [&](const Values& values) {
                return formula(procedure.steps, place, values)
                    .value_or(std::numeric_limits<double>::quiet_NaN());
            },
            data.estimates);
        const bool known = data.uncertain_known && procedure.steps != Steps::decide;
        const Field field = procedure.fields[static_cast<std::size_t>(place)];
        const MeasuredRefusal refusal = add_value(result, field, estimate, known);
        if (refusal != MeasuredRefusal::none) return refusal;
        if (procedure.steps == Steps::lamps_out)
            return add_value(result, procedure.fields[1], {estimate.uncertainty, 0.0, endless},
                             false);
    }
    return MeasuredRefusal::none;
}

} // namespace

Measured measured(const Procedure& procedure, const std::vector<KindReadings>& readings) {
    Measured result = checked(procedure, readings);
    if (result.refusal != MeasuredRefusal::none) return result;
    const Sorted data = sorted(procedure, readings);
    for (std::size_t i = 0; i < data.statistics.size(); ++i)
        if (data.statistics[i].stands_off)
            result.standing_off.push_back(
                {data.readings[i]->kind, *data.statistics[i].stands_off});
    const bool scatters =
        procedure.steps == Steps::scatter || procedure.steps == Steps::scatter_of_difference;
    result.refusal = scatters ? add_scatter(result, procedure, data)
                              : add_from_means(result, procedure, data);
    return result;
}

std::optional<double> acceleration_of_stroke(double distance, double time, double speed) {
    if (!std::isfinite(distance) || !std::isfinite(time) || !std::isfinite(speed) ||
        !(distance > 0.0) || !(time > 0.0) || !(speed > 0.0))
        return std::nullopt;
    const double steady = distance / speed;
    if (!(time > steady)) return std::nullopt;
    // A triangle's time is at least twice s/v: where s = v²/a both formulas give it.
    if (time >= 2.0 * steady) return 4.0 * distance / (time * time);
    return speed / (time - steady);
}

std::optional<double> latency_at_two_speeds(double slow_speed, double slow_overtravel,
                                            double fast_speed, double fast_overtravel) {
    if (!(slow_speed > 0.0) || !(fast_speed > 0.0)) return std::nullopt;
    return quotient(slow_overtravel / slow_speed * fast_speed -
                        fast_overtravel / fast_speed * slow_speed,
                    fast_speed - slow_speed);
}

std::optional<double> pivot_height_of(double first_angle, double first_edge, double second_angle,
                                      double second_edge) {
    return quotient(second_edge - first_edge, std::sin(second_angle) - std::sin(first_angle));
}

std::optional<double> cooling_constant_of(double room, double warm, double later, double time) {
    if (!std::isfinite(warm) || !std::isfinite(time) || !(time > 0.0) || !(later > room) ||
        !(warm > later))
        return std::nullopt;
    return time / std::log((warm - room) / (later - room));
}

std::optional<double> pivot_offset_of(double first_angle, double first_edge, double second_angle,
                                      double second_edge) {
    const auto height = pivot_height_of(first_angle, first_edge, second_angle, second_edge);
    if (!height) return std::nullopt;
    return first_edge - *height * std::sin(first_angle);
}

} // namespace carriageway
