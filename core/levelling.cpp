#include "core/levelling.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "core/levelling_fit.h"
#include "core/levelling_parts.h"
#include "core/robust.h"

namespace carriageway {

namespace {

/// Works through the readings group by group and fills a Levelling.
class Leveller {
  public:
    Leveller(const std::vector<HeightReading>& readings, const LevelSettings& settings)
        : readings_(readings), settings_(settings), parts_(level_parts(readings)) {}

    std::size_t parts() const { return parts_.count(); }
    Levelling run();

  private:
    using Indices = std::vector<std::size_t>;

    LevelledPart& part(std::size_t index) {
        const std::size_t heads = parts_.heads.size();
        return index < heads ? result_.heads[index] : result_.platens[index - heads];
    }
    Point point_of(std::size_t reading) const {
        return {readings_[reading].x, readings_[reading].y};
    }
    void do_group(const Indices& readings);
    /// Those readings whose head and platen both have points enough for tilts among those left.
    Indices with_tilts(Indices readings) const;
    bool one_set(const Indices& readings) const;
    bool fit(const Indices& readings, bool planes);
    void hang_on(const Indices& readings);
    void fill_residuals(const Indices& readings);

    const std::vector<HeightReading>& readings_;
    const LevelSettings& settings_;
    LevelParts parts_;
    Levelling result_;
};

Levelling Leveller::run() {
    result_.residuals.assign(readings_.size(), 0.0);
    for (std::uint32_t number : parts_.heads) {
        result_.heads.emplace_back();
        result_.heads.back().number = number;
    }
    for (std::uint32_t number : parts_.platens) {
        result_.platens.emplace_back();
        result_.platens.back().number = number;
    }
    Indices all(readings_.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
    const std::vector<std::size_t> sets = joined(parts_, all);
    std::vector<Indices> of_set(parts_.count());
    for (std::size_t reading : all) of_set[sets[parts_.head_of[reading]]].push_back(reading);
    for (const Indices& readings : of_set)
        if (!readings.empty()) do_group(readings);
    std::sort(result_.strays.begin(), result_.strays.end(),
              [](const StrayReading& a, const StrayReading& b) { return a.reading < b.reading; });
    return std::move(result_);
}

void Leveller::do_group(const Indices& readings) {
    const int index = static_cast<int>(result_.groups.size());
    LevelGroup& group = result_.groups.emplace_back();
    group.readings = static_cast<int>(readings.size());
    for (std::size_t reading : readings)
        for (std::size_t at : {parts_.head_of[reading], parts_.platen_of[reading]}) {
            LevelledPart& one = part(at);
            if (one.readings++ == 0) ++(at < parts_.heads.size() ? group.heads : group.platens);
            one.group = index;
        }

    const Indices wide = with_tilts(readings);
    if (!wide.empty() && one_set(wide) && fit(wide, true)) {
        if (wide.size() < readings.size()) {
            group.reason = LevelReason::few_points_of_some;
            hang_on(readings);
        }
    } else if (fit(readings, false)) {
        group.reason = LevelReason::few_points;
    } else {
        group.reason = LevelReason::too_few_readings;
    }
    fill_residuals(readings);
}

Leveller::Indices Leveller::with_tilts(Indices readings) const {
    for (;;) {
        std::vector<std::vector<Point>> points(parts_.count());
        for (std::size_t reading : readings) {
            points[parts_.head_of[reading]].push_back(point_of(reading));
            points[parts_.platen_of[reading]].push_back(point_of(reading));
        }
        std::vector<bool> carries(points.size());
        std::transform(points.begin(), points.end(), carries.begin(), carry_plane);
        const std::size_t before = readings.size();
        readings.erase(std::remove_if(readings.begin(), readings.end(),
                                      [&](std::size_t reading) {
                                          return !carries[parts_.head_of[reading]] ||
                                                 !carries[parts_.platen_of[reading]];
                                      }),
                       readings.end());
        if (readings.size() == before) return readings;
    }
}

bool Leveller::one_set(const Indices& readings) const {
    const std::vector<std::size_t> sets = joined(parts_, readings);
    return std::all_of(readings.begin(), readings.end(), [&](std::size_t reading) {
        return sets[parts_.head_of[reading]] == sets[parts_.head_of[readings.front()]];
    });
}

/// Fits the last group from these readings. False: something was left open, nothing was filled.
bool Leveller::fit(const Indices& readings, bool planes) {
    constexpr std::size_t none = std::numeric_limits<std::size_t>::max();
    std::vector<std::size_t> local(parts_.count(), none), heads, platens;
    const auto number = [&local](std::vector<std::size_t>& list, std::size_t at) {
        if (local[at] == none) {
            local[at] = list.size();
            list.push_back(at);
        }
        return local[at];
    };
    LevelTask task;
    task.planes = planes;
    for (std::size_t reading : readings) {
        const HeightReading& read = readings_[reading];
        task.rows.push_back({number(heads, parts_.head_of[reading]),
                             number(platens, parts_.platen_of[reading]), read.x, read.y,
                             read.height});
    }
    task.heads = heads.size();
    task.platens = platens.size();
    const LevelFit fit = fit_levels(task, settings_);
    if (!fit.solved) return false;

    LevelGroup& group = result_.groups.back();
    group.terms = planes ? LevelTerms::plane : LevelTerms::offset;
    group.freedom = fit.freedom;
    group.deviation = fit.deviation;
    group.rounds = fit.rounds;
    group.settled = fit.settled;
    heads.insert(heads.end(), platens.begin(), platens.end());
    for (std::size_t i = 0; i < heads.size(); ++i) {
        LevelledPart& one = part(heads[i]);
        one.known = group.terms;
        one.plane = fit.planes[i];
        one.errors_known = fit.freedom > 0;
        one.covariance = fit.covariances[i];
    }
    for (std::size_t i = 0; i < readings.size(); ++i) {
        if (fit.kept[i]) continue;
        ++group.strays;
        result_.strays.push_back({readings[i], fit.residuals[i], fit.scores[i]});
    }
    return true;
}

/// Parts that had too few points for the fit get the height that their readings have, in the
/// middle, over the planes of those that were fitted.
void Leveller::hang_on(const Indices& readings) {
    std::vector<std::vector<double>> heights(parts_.count());
    for (std::size_t reading : readings) {
        const std::size_t head = parts_.head_of[reading], platen = parts_.platen_of[reading];
        const bool head_known = part(head).known == LevelTerms::plane;
        const bool platen_known = part(platen).known == LevelTerms::plane;
        if (head_known == platen_known) continue;
        const Plane& known = part(head_known ? head : platen).plane;
        heights[head_known ? platen : head].push_back(readings_[reading].height -
                                                      known.at(point_of(reading)));
    }
    for (std::size_t at = 0; at < heights.size(); ++at) {
        if (heights[at].empty()) continue;
        part(at).known = LevelTerms::offset;
        part(at).plane = {median(heights[at]), 0.0, 0.0};
    }
}

void Leveller::fill_residuals(const Indices& readings) {
    for (std::size_t reading : readings) {
        const LevelledPart& head = part(parts_.head_of[reading]);
        const LevelledPart& platen = part(parts_.platen_of[reading]);
        if (head.known == LevelTerms::none || platen.known == LevelTerms::none) continue;
        const Point point = point_of(reading);
        result_.residuals[reading] =
            readings_[reading].height - head.plane.at(point) - platen.plane.at(point);
    }
}

Levelling refused(LevelRefusal refusal, std::size_t reading = 0) {
    Levelling result;
    result.refusal = refusal;
    result.refused_reading = reading;
    return result;
}

} // namespace

double standard_error(const LevelledPart& part, const Point& point) {
    if (!part.errors_known) return std::numeric_limits<double>::infinity();
    const auto& [oo, ox, oy, xx, xy, yy] = part.covariance;
    const double variance = oo + 2.0 * (ox * point.x + oy * point.y) + xx * point.x * point.x +
                            2.0 * xy * point.x * point.y + yy * point.y * point.y;
    return std::sqrt(std::max(0.0, variance));
}

Levelling level(const std::vector<HeightReading>& readings, const LevelSettings& settings) {
    if (readings.empty()) return refused(LevelRefusal::no_readings);
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const HeightReading& read = readings[i];
        if (!std::isfinite(read.x) || !std::isfinite(read.y) || !std::isfinite(read.height))
            return refused(LevelRefusal::not_finite, i);
    }
    Leveller leveller(readings, settings);
    return leveller.parts() > most_level_parts ? refused(LevelRefusal::too_many_parts)
                                               : leveller.run();
}

} // namespace carriageway
