#include "core/job_levelling.h"

#include <cmath>

#include "core/head_contact.h"

namespace carriageway {

namespace {

/// Off-contact is set for each head on purpose. Taken off each reading and not off the planes, so
/// that it is right as well where too few points were read for a plane.
std::vector<HeightReading> beyond_set_heights(const Job& job) {
    std::vector<HeightReading> readings = job.height_readings;
    for (HeightReading& reading : readings)
        if (const Head* head = find_head(job, reading.head))
            reading.height -= plane_of(head->heights, job.press.height_points)
                                  .height_at({reading.x, reading.y});
    return readings;
}

/// Without the heads that were taken off the press: next to the others, which stand on their set
/// heights, these would seem to be off by all of theirs.
Levelling of_this_press(const Job& job, Levelling levelling) {
    for (LevelledPart& head : levelling.heads)
        if (find_head(job, head.number) == nullptr) head.known = LevelTerms::none;
    return levelling;
}

void count(const std::vector<PartOff>& parts, bool heads, JobLevelling& into) {
    for (const PartOff& part : parts) {
        if (!part.out) continue;
        ++into.out;
        if (!into.worst || std::abs(part.worst) > std::abs(into.worst->off.worst))
            into.worst = WorstOff{heads, part};
    }
}

} // namespace

LevelPoints level_points(const HeightPoints& points) {
    return {{-points.across, points.operator_y}, {points.across, points.operator_y},
            {0.0, points.machine_y}};
}

JobLevelling job_levelling(const Job& job) {
    JobLevelling result;
    result.levelling = level(beyond_set_heights(job));
    result.targets.points = level_points(job.press.height_points);
    result.heads = heads_off(of_this_press(job, result.levelling), result.targets);
    result.platens = platens_off(result.levelling, result.targets);
    count(result.heads, true, result);
    count(result.platens, false, result);
    return result;
}

PlatenTurns platen_turns(const Job& job, const JobLevelling& levelling, std::size_t platen) {
    const LevelledPart& part = levelling.levelling.platens[platen];
    return turns_of(part, usual_platen(levelling.levelling, part.group, levelling.targets.points),
                    job.press.level_screws);
}

} // namespace carriageway
