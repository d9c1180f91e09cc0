#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <algorithm>

#include "core/recipe.h"
#include "core/walk.h"
#include "tests/core/walk_samples.h"

using namespace carriageway;
using sample::one_head;
using sample::Random;

namespace {

bool has_gap(const Job& job, RecipeItem item, HeadId head) {
    const std::vector<RecipeEntry> gaps = recipe_gaps(job);
    return std::find(gaps.begin(), gaps.end(), RecipeEntry{item, head, false}) != gaps.end();
}

} // namespace

TEST_CASE("A job as it is first has the gaps of what nobody noted", "[recipe]") {
    const Job job = one_head();
    CHECK(recipe_gaps(job) ==
          std::vector<RecipeEntry>{{RecipeItem::stencil_note, 1, false},
                                   {RecipeItem::ink_note, 1, false},
                                   {RecipeItem::blade_hardness, 1, false},
                                   {RecipeItem::blade_edge, 1, false},
                                   {RecipeItem::garment_name, 0, false},
                                   {RecipeItem::dryer, 0, false}});
    CHECK(recipe_of(job).size() == 13);
}

TEST_CASE("What is noted closes the gaps", "[recipe]") {
    Job job = one_head();
    for (const Edit& edit :
         {Edit{SetNote{1, Note::stencil, "two coats"}}, Edit{SetNote{1, Note::ink, "soft"}},
          Edit{SetNumber{1, Field::squeegee_hardness, 70.0}},
          Edit{SetBladeEdge{1, BladeEdge::square}}, Edit{SetNote{0, Note::garment, "fleece"}},
          Edit{SetNumber{0, Field::dryer_temperature, 160.0}}}) {
        REQUIRE(apply(job, edit));
    }
    CHECK(recipe_gaps(job) == std::vector<RecipeEntry>{{RecipeItem::dryer, 0, false}});
    REQUIRE(apply(job, {SetNumber{0, Field::dryer_time, 90.0}}));
    CHECK(recipe_gaps(job).empty());
}

TEST_CASE("A number that was never touched, or is 0 and means it, is known", "[recipe]") {
    Job job = one_head();
    job.heads[0].deposit.stencil = 0.0;
    job.heads[0].heights = {0.0, 0.0, 0.0};
    CHECK_FALSE(has_gap(job, RecipeItem::stencil_build_up, 1));
    CHECK_FALSE(has_gap(job, RecipeItem::off_contact, 1));
    CHECK_FALSE(has_gap(job, RecipeItem::mesh, 1));
    CHECK(is_not_noted(Field::dryer_time, 0.0));
    CHECK_FALSE(is_not_noted(Field::dryer_time, 1.0));
    CHECK_FALSE(is_not_noted(Field::stencil, 0.0));
}

TEST_CASE("The flash belongs to it where there is one, or one is wanted", "[recipe]") {
    Job job = one_head();
    CHECK_FALSE(has_gap(job, RecipeItem::flash_temperature, 0));
    job.heads[0].wish.flash_after = true;
    CHECK(has_gap(job, RecipeItem::flash_temperature, 0));
    job.heads[0].wish.flash_after = false;
    job.uses[5] = StationUse::flash;
    CHECK(has_gap(job, RecipeItem::flash_temperature, 0));
    CHECK_FALSE(has_gap(job, RecipeItem::flash_dwell, 0));
    job.run.flash_temperature = 350.0;
    CHECK_FALSE(has_gap(job, RecipeItem::flash_temperature, 0));
}

TEST_CASE("What was really set counts as known", "[recipe]") {
    Job job = one_head();
    REQUIRE(apply(job, {really_set(job, 1, Field::squeegee_hardness, 65.0, {})}));
    CHECK_FALSE(has_gap(job, RecipeItem::blade_hardness, 1));
}

TEST_CASE("Random jobs have each entry once, the gaps among them", "[recipe]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    for (int i = 0; i < 500; ++i) {
        CAPTURE(i);
        Job job = sample::likely_job(random, random.whole(1, 6));
        sample::change_plan(random, job, 30);
        const std::vector<RecipeEntry> entries = recipe_of(job);
        const std::vector<RecipeEntry> gaps = recipe_gaps(job);
        std::size_t unknown = 0;
        for (std::size_t e = 0; e < entries.size(); ++e) {
            REQUIRE((entries[e].head == 0) == (entries[e].item >= RecipeItem::garment_name));
            for (std::size_t other = 0; other < e; ++other) {
                REQUIRE_FALSE((entries[e].item == entries[other].item &&
                               entries[e].head == entries[other].head));
            }
            if (!entries[e].known) REQUIRE(gaps.at(unknown++) == entries[e]);
        }
        REQUIRE(unknown == gaps.size());
    }
}
