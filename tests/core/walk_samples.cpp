#include "tests/core/walk_samples.h"

#include <cmath>
#include <string>

namespace carriageway::sample {
namespace {

std::string likely_text(Random& random) {
    constexpr const char* texts[] = {"", "soft hand, 5 % thinner", "two coats", "black fleece"};
    return texts[random.whole(0, 3)];
}

HeadId likely_head(Random& random, const Job& job) {
    return job.heads[static_cast<std::size_t>(
                         random.whole(0, static_cast<int>(job.heads.size()) - 1))]
        .id;
}

/// A field of an owner.
Field likely_field(Random& random, FieldOwner owner) {
    for (;;) {
        const auto field = static_cast<Field>(random.whole(0, static_cast<int>(Field::count) - 1));
        if (info_of(field).owner == owner) return field;
    }
}

MarkRound likely_round(Random& random) {
    MarkRound round;
    round.platen = random.whole(0, 2);
    round.marks.push_back({{0.0, 0.0}, {0.1 * random.whole(0, 3), 0.0}});
    round.read = true;
    return round;
}

Edit change_of_head(Random& random, const Job& job) {
    const HeadId id = likely_head(random, job);
    const Head& head = *find_head(job, id);
    switch (random.whole(0, 10)) {
        case 0: return {SetInk{id, static_cast<std::uint32_t>(random.whole(0, 2))}};
        case 1:
            return {SetPrintStroke{id, random.chance(0.5) ? Direction::toward_machine
                                                          : Direction::toward_operator}};
        case 2: return {SetWinged{id, random.chance(0.5)}};
        case 3: return {SetHeightStop{id, random.chance(0.5)}};
        case 4: return {SetBladeEdge{id, static_cast<BladeEdge>(random.whole(0, 4))}};
        case 5: {
            Image image = head.image;
            image.offset_y += random.whole(-1, 1);
            return {SetImage{id, image}};
        }
        case 6: return {SetStops{id, {-300.0 + random.whole(0, 2), 300.0}}};
        case 7: {
            ColourWish wish = head.wish;
            wish.flash_after = random.chance(0.5);
            wish.cool_after = random.whole(0, 1);
            return {SetColourWish{id, wish}};
        }
        case 8:
            return {SetNote{id, random.chance(0.5) ? Note::ink : Note::stencil,
                            likely_text(random)}};
        case 9: {
            SetRounds rounds{id, head.rounds};
            if (random.chance(0.3)) rounds.rounds.clear();
            rounds.rounds.push_back(likely_round(random));
            return {rounds};
        }
        default: {
            const Field field = likely_field(random, FieldOwner::head);
            return {SetNumber{id, field, one_of_three(random, field)}};
        }
    }
}

Edit change_of_job(Random& random, const Job& job) {
    switch (random.whole(0, 6)) {
        case 0: return {SetName{0, likely_text(random)}};
        case 1:
            return {SetGarment{random.chance(0.5) ? GarmentKind::fleece : GarmentKind::t_shirt}};
        case 2: return {SetNote{0, Note::garment, likely_text(random)}};
        case 3: return {SetBaseHead{likely_head(random, job)}};
        case 4: {
            SetHeightReadings readings{job.height_readings};
            readings.readings.push_back(
                {1, likely_head(random, job), 0.0, 1.0 * random.whole(0, 2), 3.0});
            return {readings};
        }
        case 5:
            return {SetNumber{0, Field::index_time, one_of_three(random, Field::index_time)}};
        default: {
            const Field field = likely_field(random, FieldOwner::job);
            return {SetNumber{0, field, one_of_three(random, field)}};
        }
    }
}

} // namespace

Stamp likely_stamp(Random& random) {
    constexpr const char* initials[] = {"", "an", "bo"};
    return {1000 * random.whole(0, 5), initials[random.whole(0, 2)]};
}

double one_of_three(Random& random, Field field) {
    const FieldInfo& info = info_of(field);
    const double middle = 0.5 * (info.least + info.most);
    const double values[] = {info.least,
                             info.quantity == Quantity::count ? std::round(middle) : middle,
                             info.most};
    return values[random.whole(0, 2)];
}

void note_on_walk(Random& random, Job& job, int marks) {
    for (int i = 0; i < marks; ++i) {
        SetWalkMark edit;
        WalkMark& mark = edit.mark;
        const bool of_job = random.chance(0.15);
        if (!of_job) mark.head = random.chance(0.05) ? 7777 : likely_head(random, job);
        mark.field = likely_field(random, of_job ? FieldOwner::job : FieldOwner::head);
        mark.done = random.chance(0.8);
        if (random.chance(0.4)) mark.real = one_of_three(random, mark.field);
        mark.stamp = likely_stamp(random);
        apply(job, {edit});
    }
}

void note_in_run(Random& random, Job& job) {
    SetRecord edit{job.record};
    RunRecord& record = edit.record;
    for (std::uint32_t item = 1; item <= 5; ++item) {
        if (!random.chance(0.3)) continue;
        bool ticked = false;
        for (const CheckTick& tick : record.ticks)
            ticked = ticked || tick.item == item;
        if (!ticked) record.ticks.push_back({item, likely_stamp(random)});
    }
    if (random.chance(0.7)) {
        const double printed = random.whole(1, 3);
        record.counts.push_back({printed, random.chance(0.5) ? 0.0 : 1.0, likely_stamp(random)});
    }
    if (random.chance(0.7)) {
        record.stoppages.push_back({1.0 * random.whole(1, 3),
                                    static_cast<StopReason>(random.whole(0, 2)),
                                    likely_text(random), likely_stamp(random)});
    }
    if (random.chance(0.3)) record.approval = {"an", likely_text(random), 5};
    if (random.chance(0.3)) record.notes = likely_text(random);
    apply(job, {edit});
}

void change_plan(Random& random, Job& job, int changes) {
    for (int i = 0; i < changes; ++i)
        apply(job, random.chance(0.7) ? change_of_head(random, job) : change_of_job(random, job));
}

void change_heads(Random& random, Job& job) {
    const int what = random.whole(0, 2);
    if (what == 0 && job.heads.size() > 1) apply(job, {RemoveHead{likely_head(random, job)}});
    if (what == 1) {
        Head head = job.heads.front();
        head.id = static_cast<HeadId>(901 + random.whole(0, 1));
        head.station = job.press.stations - random.whole(0, 1);
        head.colour = "more";
        apply(job, {AddHead{head}});
    }
    if (what == 2) {
        apply(job, {SetUse{job.press.stations - 2, static_cast<StationUse>(random.whole(0, 4))}});
    }
}

} // namespace carriageway::sample
