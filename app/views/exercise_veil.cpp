#include "app/views/exercise_veil.h"

namespace carriageway {

namespace {

HeadAssessment what_can_be_seen(const HeadAssessment& full) {
    HeadAssessment seen;
    seen.head = full.head;
    seen.geometry = full.geometry;
    seen.ends = full.ends;
    seen.squeegee = full.squeegee;
    seen.flood = full.flood;
    seen.image = full.image;
    seen.image_bounds = full.image_bounds;
    seen.print_time = full.print_time;
    seen.flood_time = full.flood_time;
    return seen;
}

} // namespace

void keep_answers_back(const Assessment& full, Assessment& kept) {
    kept.heads.clear();
    for (const HeadAssessment& head : full.heads) kept.heads.push_back(what_can_be_seen(head));
    kept.fit_heads = 0;
    kept.fit = false;
}

} // namespace carriageway
