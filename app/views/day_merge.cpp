// Another half of the walk: what is taken over, and where the two are at odds a choice.
#include <algorithm>

#include "app/text/merge_sentences.h"
#include "app/text/walk_sentences.h"
#include "app/views/list_view.h"

namespace carriageway {

namespace {

constexpr float pad = 12.0f;
constexpr float tick_side = 24.0f;
constexpr float least_height = 72.0f;
constexpr float between = 8.0f;

/// A place with what comes of it, as one thing to read.
void taken_line(const std::string& name, std::string_view label, const std::string& words,
                Rows& rows) {
    Canvas& canvas = rows.canvas;
    const float top = rows.y;
    if (!label.empty()) rows.text(label, bold_text, Role::ink, 0.0f);
    rows.text(words, body_text, Role::ink, 0.0f);
    const Box box{rows.x, top, rows.x + rows.width, rows.y};
    if (label.empty()) canvas.reading("merge/takes/" + name, box, words, {});
    else canvas.reading("merge/takes/" + name, box, label, words);
    rows.space(8.0f);
}

void taken_over(const Model& model, const MergeState& state, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const TakenOver& taken = state.taken_over;
    list_heading(canvas.word(Word::merge_takes), rows);
    const auto counted = [&](Word words, int count) {
        return say(canvas.language(), words, {std::to_string(count)});
    };
    for (const TakenOver::Place& place : taken.walk) {
        const Head* head = find_head(*model.job, place.head);
        const std::string name = head ? "head/" + std::to_string(head->station) : "job";
        std::string label = walk_place(canvas.language(), *model.job, place.head);
        if (label.empty()) label = canvas.word(Word::merge_head_unknown);
        taken_line(name, label, counted(Word::merge_takes_walk, place.marks), rows);
    }
    const struct {
        const char* name;
        Word words;
        int count;
    } lists[] = {{"steps", Word::merge_takes_steps, taken.steps},
                 {"counts", Word::merge_takes_counts, taken.counts},
                 {"stoppages", Word::merge_takes_stoppages, taken.stoppages},
                 {"readings", Word::merge_takes_readings, taken.readings},
                 {"others", Word::merge_takes_plan, taken.others}};
    for (const auto& list : lists)
        if (list.count > 0) taken_line(list.name, {}, counted(list.words, list.count), rows);
    if (taken.nothing())
        rows.text(canvas.word(Word::merge_takes_nothing), body_text, Role::soft_ink, 8.0f);
}

/// One of two things that may be chosen.
struct Half {
    std::string name;
    std::string_view title;
    std::string value;
    std::string stamp;
    bool chosen = false;
    ChooseSide action;
};

Half half_of(const Model& model, const MergeState& state, std::size_t index, bool theirs) {
    const MergeConflict& conflict = state.merge.conflicts[index];
    const Language language = model.state->looks.language;
    Half half;
    half.name = "merge/" + std::to_string(index + 1) + (theirs ? "/theirs" : "/mine");
    half.title = word(language, theirs ? Word::merge_theirs : Word::merge_mine);
    half.value = half_text(language, model.state->looks.units, state.merge, conflict, theirs);
    half.stamp = stamp_text(theirs ? conflict.theirs_stamp : conflict.mine_stamp);
    half.chosen = state.take_theirs[index] == theirs;
    half.action = ChooseSide{index, theirs};
    return half;
}

float inside(float width) { return width - 3.0f * pad - tick_side; }

float height_of(const Half& half, float width, const Canvas& canvas) {
    const float within = inside(width);
    float height = canvas.paragraph_height(within, half.title, small_text) +
                   canvas.paragraph_height(within, half.value, bold_text);
    if (!half.stamp.empty()) height += canvas.paragraph_height(within, half.stamp, small_text);
    return height;
}

/// The one that is chosen has a tick and a ring: colour alone tells nothing.
void draw_half(const Half& half, Box box, Canvas& canvas) {
    constexpr float corner = 12.0f, mark = 20.0f;
    DrawingList& list = canvas.list();
    const Role on = half.chosen ? Role::panel : Role::quiet;
    list.round(box, corner, paint(on));
    const Vec centre{box.x0 + pad + 0.5f * tick_side, box.centre().y};
    if (half.chosen) {
        list.ring(box.inset(1.0f), corner - 1.0f, paint(Role::ink), 2.0f);
        list.disc(centre, 0.5f * tick_side, paint(Role::strong));
        canvas.icon(Icon::check, centre, mark, Role::on_strong);
    } else {
        list.circle(centre, 0.5f * tick_side - 1.0f, paint(Role::soft_ink), 1.8f);
    }
    const float width = inside(box.width());
    Vec at{box.x0 + 2.0f * pad + tick_side,
           box.centre().y - 0.5f * height_of(half, box.width(), canvas)};
    at.y += canvas.paragraph(at, width, half.title, small_text, Role::soft_ink, on);
    at.y += canvas.paragraph(at, width, half.value, bold_text, Role::ink, on);
    if (!half.stamp.empty())
        canvas.paragraph(at, width, half.stamp, small_text, Role::soft_ink, on);
    Thing& thing = list.thing(half.name, ThingRole::tab, box);
    thing.label.assign(half.title);
    thing.value = half.stamp.empty() ? half.value : half.value + " · " + half.stamp;
    thing.chosen = half.chosen;
    thing.action = canvas.action(half.action);
}

/// Side by side where every word has room and neither becomes a wall of text.
bool across(const Half& mine, const Half& theirs, float each, const Canvas& canvas) {
    const float line = canvas.type().height(bold_text);
    for (const Half* half : {&mine, &theirs}) {
        const float widest = std::max({canvas.widest_word(half->value, bold_text),
                                       canvas.widest_word(half->title, small_text),
                                       canvas.widest_word(half->stamp, small_text)});
        if (widest > inside(each)) return false;
        if (canvas.paragraph_height(inside(each), half->value, bold_text) > 3.4f * line)
            return false;
    }
    return true;
}

void conflict_card(const Model& model, const MergeState& state, std::size_t index, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const std::string what =
        odds_text(canvas.language(), state.merge, state.merge.conflicts[index]);
    const float top = rows.y;
    rows.text(what, bold_text, Role::ink, 6.0f);
    const Half mine = half_of(model, state, index, false);
    const Half theirs = half_of(model, state, index, true);
    float each = 0.5f * (rows.width - between);
    const bool beside = across(mine, theirs, each, canvas);
    if (!beside) each = rows.width;
    const float height =
        std::max({least_height, height_of(mine, each, canvas) + 20.0f,
                  height_of(theirs, each, canvas) + 20.0f});
    const Box box = rows.next(beside ? height : 2.0f * height + between, 18.0f);
    canvas.list()
        .thing("merge/" + std::to_string(index + 1), ThingRole::region,
               {box.x0, top, box.x1, box.y1})
        .label = what;
    draw_half(mine, {box.x0, box.y0, box.x0 + each, box.y0 + height}, canvas);
    draw_half(theirs, {box.x1 - each, box.y1 - height, box.x1, box.y1}, canvas);
}

void conflicts(const Model& model, const MergeState& state, Rows& rows) {
    if (state.merge.conflicts.empty()) return;
    Canvas& canvas = rows.canvas;
    list_heading(say(canvas.language(), Word::merge_at_odds,
                     {std::to_string(state.merge.conflicts.size())}),
                 rows);
    rows.text(canvas.word(Word::merge_at_odds_explained), small_text, Role::soft_ink, 10.0f);
    for (std::size_t i = 0; i < state.merge.conflicts.size(); ++i)
        conflict_card(model, state, i, rows);
}

} // namespace

void merge_part(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const std::optional<MergeState>& state = model.state->day.merge;
    const std::string_view words =
        canvas.word(state ? Word::merge_explained : Word::merge_none);
    const float top = rows.y;
    rows.text(words, body_text, state ? Role::ink : Role::soft_ink, 6.0f);
    canvas.reading("merge/about", {rows.x, top, rows.x + rows.width, rows.y - 6.0f}, words,
                   state ? std::string_view(state->merge.theirs.name) : std::string_view());
    if (!state) return;
    taken_over(model, *state, rows);
    conflicts(model, *state, rows);
    rows.space(6.0f);
    wide_button("merge/accept", canvas.word(Word::merge_accept), ButtonLook::strong, AcceptMerge{},
                rows, true);
    wide_button("merge/own", canvas.word(Word::merge_own), ButtonLook::plain, OpenTheirs{}, rows);
    wide_button("merge/drop", canvas.word(Word::merge_drop), ButtonLook::plain, DropMerge{}, rows);
}

} // namespace carriageway
