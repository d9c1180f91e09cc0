#include "core/walk_merge.h"

#include <algorithm>
#include <utility>

#include "core/job_check.h"
#include "core/noted_merge.h"
#include "core/recipe.h"

namespace carriageway {
namespace {

/// Whether a job that doesn't have this head could have it on its station.
bool has_room_for(const Job& job, const Head& head) {
    return head_on(job, head.station) == nullptr &&
           use_of(job, head.station) == StationUse::open;
}

void refuse(WalkMerge& merge, MergeRefusal refusal, const Head* head = nullptr) {
    merge.refusal = refusal;
    if (head == nullptr) return;
    merge.head = head->id;
    merge.station = head->station;
}

/// Fills in why the two can't be put together, if so.
void find_refusal(WalkMerge& merge) {
    const Job& mine = merge.mine;
    const Job& theirs = merge.theirs;
    if (fault_of(mine) || fault_of(theirs)) return refuse(merge, MergeRefusal::not_a_job);
    if (mine.press.stations != theirs.press.stations) {
        return refuse(merge, MergeRefusal::other_press);
    }
    const auto is_common = [&](const Head& head) { return find_head(theirs, head.id) != nullptr; };
    if (std::none_of(mine.heads.begin(), mine.heads.end(), is_common)) {
        return refuse(merge, MergeRefusal::no_common_heads);
    }
    for (const Head& head : mine.heads) {
        const Head* other = find_head(theirs, head.id);
        if (other == nullptr) continue;
        if (other->station != head.station) {
            return refuse(merge, MergeRefusal::other_station, &head);
        }
        if (other->colour != head.colour) return refuse(merge, MergeRefusal::other_colour, &head);
    }
    for (const auto& [own, other] : {std::pair(&mine, &theirs), std::pair(&theirs, &mine)}) {
        for (const Head& head : own->heads) {
            if (find_head(*other, head.id) != nullptr || has_room_for(*other, head)) continue;
            return refuse(merge, MergeRefusal::station_taken, &head);
        }
    }
    if (!fits_one_job(mine, theirs)) return refuse(merge, MergeRefusal::too_much);
}

// Parts that are put together by choosing; what they hold is not chosen by number.
constexpr JobPart parts_of_head[] = {
    JobPart::ink,        JobPart::print_stroke, JobPart::winged,   JobPart::height_stop,
    JobPart::blade_edge, JobPart::image,        JobPart::stops,    JobPart::wish,
    JobPart::ink_note,   JobPart::stencil_note, JobPart::rounds};
constexpr JobPart parts_of_job[] = {JobPart::name, JobPart::garment_kind, JobPart::garment_name,
                                    JobPart::base_head};

bool is_in_a_part(Field field) {
    switch (field) {
        case Field::image_width:
        case Field::image_length:
        case Field::image_offset_x:
        case Field::image_offset_y:
        case Field::image_rotation:
        case Field::operator_stop:
        case Field::machine_stop:
        case Field::print_order:
        case Field::cool_after:
        case Field::screen_on:
            return true;
        default:
            return false;
    }
}

/// Goes through everything in one order, asking where the two are at odds, and gathers the edits.
class Merger {
  public:
    Merger(const Job& mine, const Job& theirs, AskWhose whose)
        : mine_(mine), theirs_(theirs), merged_(mine), whose_(std::move(whose)) {}

    std::optional<Edit> run() {
        merge_part(0, JobPart::press);
        merge_heads();
        for (const JobPart part : parts_of_job)
            merge_part(0, part);
        merge_numbers(0, FieldOwner::job);
        for (const Head& head : mine_.heads) {
            if (find_head(theirs_, head.id) == nullptr) continue;
            for (const JobPart part : parts_of_head)
                merge_part(head.id, part);
            merge_numbers(head.id, FieldOwner::head);
        }
        merge_noted();
        if (together_.edits.empty()) return std::nullopt;
        return Edit{std::move(together_)};
    }

  private:
    void add(Edit edit) {
        if (apply(merged_, edit)) together_.edits.push_back(std::move(edit));
    }

    void take(HeadId head, JobPart part) {
        if (auto edit = edit_of_part(theirs_, merged_, head, part)) add(std::move(*edit));
    }

    /// Takes theirs of a part if mine isn't noted, or if that is chosen.
    void merge_part(HeadId head, JobPart part) {
        const Head* my = find_head(mine_, head);
        const Head* their = find_head(theirs_, head);
        if (same_part(mine_, my, theirs_, their, part) || !is_noted(theirs_, their, part)) return;
        if (is_noted(mine_, my, part) && !only_goes_on(my, their, part)) {
            MergeConflict conflict;
            conflict.kind = MergeKind::part;
            conflict.head = head;
            conflict.part = part;
            if (!whose_(conflict)) return;
        } else if (part == JobPart::rounds && goes_on(my->rounds, their->rounds)) {
            return;
        }
        take(head, part);
    }

    /// Whether one side has only read more rounds after the other's.
    static bool only_goes_on(const Head* my, const Head* their, JobPart part) {
        return part == JobPart::rounds &&
               (goes_on(my->rounds, their->rounds) || goes_on(their->rounds, my->rounds));
    }

    void merge_numbers(HeadId head, FieldOwner owner) {
        const Head* my = find_head(mine_, head);
        const Head* their = find_head(theirs_, head);
        for (int i = 0; i < static_cast<int>(Field::count); ++i) {
            const auto field = static_cast<Field>(i);
            if (info_of(field).owner != owner || is_in_a_part(field)) continue;
            const double mine = number_of(mine_, my, field);
            const double theirs = number_of(theirs_, their, field);
            if (mine == theirs || is_not_noted(field, theirs)) continue;
            if (!is_not_noted(field, mine)) {
                MergeConflict conflict;
                conflict.kind = MergeKind::number;
                conflict.head = head;
                conflict.field = field;
                conflict.mine = mine;
                conflict.theirs = theirs;
                if (!whose_(conflict)) continue;
            }
            add({SetNumber{head, field, theirs}});
        }
    }

    bool takes_theirs(HeadId head, bool mine_has_it) {
        MergeConflict conflict;
        conflict.kind = MergeKind::head;
        conflict.head = head;
        conflict.mine_done = mine_has_it;
        conflict.theirs_done = !mine_has_it;
        return whose_(conflict);
    }

    /// Heads that one side has alone, and what stations are for: a head goes before its station may
    /// be used otherwise, and comes after.
    void merge_heads() {
        for (const Head& head : mine_.heads) {
            if (find_head(theirs_, head.id) != nullptr || !takes_theirs(head.id, true)) continue;
            add({RemoveHead{head.id}});
        }
        merge_part(0, JobPart::uses);
        for (const Head& head : theirs_.heads) {
            if (find_head(mine_, head.id) != nullptr || !takes_theirs(head.id, false)) continue;
            add({AddHead{head}});
        }
    }

    void merge_noted() {
        auto readings = merged_readings(mine_.height_readings, theirs_.height_readings);
        if (readings != mine_.height_readings) add({SetHeightReadings{std::move(readings)}});
        auto walk = merged_walk(mine_, theirs_, merged_, whose_);
        if (walk != mine_.walk) add({SetWalk{std::move(walk)}});
        RunRecord record = merged_record(mine_, theirs_, whose_);
        if (record != mine_.record) add({SetRecord{std::move(record)}});
    }

    const Job& mine_;
    const Job& theirs_;
    Job merged_; ///< mine with every edit so far
    AskWhose whose_;
    Together together_;
};

} // namespace

WalkMerge merge_walks(const Job& mine, const Job& theirs) {
    WalkMerge merge;
    merge.mine = mine;
    merge.theirs = theirs;
    find_refusal(merge);
    if (merge.refusal != MergeRefusal::none) return merge;
    Merger merger(merge.mine, merge.theirs, [&merge](const MergeConflict& conflict) {
        merge.conflicts.push_back(conflict);
        return false;
    });
    merge.edit = merger.run();
    return merge;
}

std::optional<Edit> resolve(const WalkMerge& merge, const std::vector<bool>& take_theirs) {
    if (merge.refusal != MergeRefusal::none) return std::nullopt;
    std::size_t next = 0;
    Merger merger(merge.mine, merge.theirs, [&](const MergeConflict&) {
        const std::size_t at = next++;
        return at < take_theirs.size() && take_theirs[at];
    });
    return merger.run();
}

} // namespace carriageway
