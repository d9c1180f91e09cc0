#include "core/recipe.h"

#include <algorithm>
#include <iterator>

#include "core/walk.h"

namespace carriageway {
namespace {

/// Adds the entries of one head or of the job.
struct RecipeList {
    std::vector<RecipeEntry>& entries;
    HeadId head;
    void add(RecipeItem item, bool known) const { entries.push_back({item, head, known}); }
};

void add_head(const Head& head, std::vector<RecipeEntry>& entries) {
    const RecipeList list{entries, head.id};
    list.add(RecipeItem::mesh, true);
    list.add(RecipeItem::stencil_note, !head.notes.stencil.empty());
    list.add(RecipeItem::stencil_build_up, true);
    list.add(RecipeItem::ink_note, !head.notes.ink.empty());
    list.add(RecipeItem::blade_hardness,
             !is_not_noted(Field::squeegee_hardness, head.squeegee.hardness));
    list.add(RecipeItem::blade_edge, head.squeegee.edge != BladeEdge::not_noted);
    list.add(RecipeItem::stroke_pattern, true);
    list.add(RecipeItem::speeds, true);
    list.add(RecipeItem::pressures, true);
    list.add(RecipeItem::off_contact, true);
}

bool flashes(const Job& job) {
    const auto wants = [](const Head& head) { return head.wish.flash_after; };
    return std::find(job.uses.begin(), job.uses.end(), StationUse::flash) != job.uses.end() ||
           std::any_of(job.heads.begin(), job.heads.end(), wants);
}

void add_job(const Job& job, std::vector<RecipeEntry>& entries) {
    const RecipeList list{entries, 0};
    list.add(RecipeItem::garment_name, !job.garment.name.empty());
    list.add(RecipeItem::platen_size, true);
    if (flashes(job)) {
        list.add(RecipeItem::flash_dwell, true);
        list.add(RecipeItem::flash_temperature,
                 !is_not_noted(Field::flash_temperature, job.run.flash_temperature));
    }
    list.add(RecipeItem::dryer,
             !is_not_noted(Field::dryer_temperature, job.run.dryer_temperature) &&
                 !is_not_noted(Field::dryer_time, job.run.dryer_time));
}

} // namespace

std::vector<RecipeEntry> recipe_of(const Job& job) {
    const Job set = as_set(job);
    std::vector<RecipeEntry> entries;
    for (const Head& head : set.heads)
        add_head(head, entries);
    add_job(set, entries);
    return entries;
}

std::vector<RecipeEntry> recipe_gaps(const Job& job) {
    std::vector<RecipeEntry> gaps;
    const std::vector<RecipeEntry> entries = recipe_of(job);
    std::copy_if(entries.begin(), entries.end(), std::back_inserter(gaps),
                 [](const RecipeEntry& entry) { return !entry.known; });
    return gaps;
}

bool is_not_noted(Field field, double value) {
    switch (field) {
        case Field::squeegee_hardness:
        case Field::fabric_thickness:
        case Field::finest_detail:
        case Field::flash_temperature:
        case Field::dryer_temperature:
        case Field::dryer_time:
            return value == 0.0;
        default:
            return false;
    }
}

} // namespace carriageway
