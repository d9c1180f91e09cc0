// The walk round the press: one head a screen, in walking order.
#include <algorithm>

#include "app/drawing/diagram.h"
#include "app/text/walk_sentences.h"
#include "app/views/measure_words.h"
#include "app/views/walk_view.h"

namespace carriageway {

namespace {

constexpr float end_side = 60.0f; ///< of the buttons that lead on and back

/// Where one is: the places of the walk, and behind them all of them at once.
struct Course {
    std::vector<HeadId> order;
    std::size_t at = 0; ///< order.size(): all of them
    WalkTo to(std::size_t place) const {
        return place < order.size() ? WalkTo{order[place]} : WalkTo{0, true};
    }
};

Course course_of(const Model& model) {
    const DayState& day = model.state->day;
    Course course;
    course.order = walk_order(*model.job);
    const auto found = std::find(course.order.begin(), course.order.end(), day.walk_head);
    course.at = static_cast<std::size_t>(found - course.order.begin());
    // A head that has been taken off since: what comes last is always there.
    if (course.at == course.order.size()) --course.at;
    if (day.walk_all) course.at = course.order.size();
    return course;
}

/// One piece a place, filled as far as the place is; the one that is shown stands out by height.
void progress_bar(const Model& model, const Course& course, Rows& rows) {
    constexpr float gap = 3.0f, low = 8.0f, high = 14.0f;
    DrawingList& list = rows.canvas.list();
    const Box box = rows.next(high, 14.0f);
    const float count = static_cast<float>(course.order.size());
    const float each = (box.width() - gap * (count - 1.0f)) / count;
    for (std::size_t i = 0; i < course.order.size(); ++i) {
        const WalkProgress here = progress_at(*model.job, course.order[i]);
        const float x = box.x0 + (each + gap) * static_cast<float>(i);
        const float half = 0.5f * (i == course.at ? high : low);
        const Box piece{x, box.centre().y - half, x + each, box.centre().y + half};
        const float radius = std::min(half, 0.5f * each);
        list.round(piece, radius, paint(Role::quiet));
        if (i == course.at) list.ring(piece, radius, paint(Role::soft_ink), 1.4f);
        if (here.done == 0) continue;
        const float share = static_cast<float>(here.done) / static_cast<float>(here.of);
        list.push_clip({piece.x0, piece.y0, piece.x0 + each * share, piece.y1});
        list.round(piece, radius, paint(Role::strong));
        list.pop_clip();
    }
}

/// The way back and the way on, with where one is between them.
void steps_row(const Model& model, const Course& course, Rows& rows) {
    constexpr float beside = 8.0f;
    Canvas& canvas = rows.canvas;
    const std::size_t last = course.order.size();
    const WalkProgress all = progress_of(*model.job);
    const std::string position =
        course.at == last ? std::string(canvas.word(Word::walk_all))
                          : say(canvas.language(), Word::walk_position,
                                {std::to_string(course.at + 1), std::to_string(last)});
    // Where all places are shown, how far the walk is stands over them.
    const std::string progress =
        course.at == last ? std::string()
                          : say(canvas.language(), Word::walk_progress,
                                {std::to_string(all.done), std::to_string(all.of)});
    const float width = rows.width - 2.0f * (end_side + beside);
    const float first = canvas.paragraph_height(width, position, bold_text);
    const float second = canvas.paragraph_height(width, progress, small_text);
    const Box row = rows.next(std::max(end_side, first + second + 8.0f), 8.0f);
    const Vec centre = row.centre();
    const auto end = [&](const char* name, float x, Icon icon, Word words, std::size_t to,
                         bool enabled) {
        const Box box = around({x, centre.y}, end_side, end_side);
        canvas.icon_button(name, box, icon, canvas.word(words), canvas.action(course.to(to)),
                           enabled, ButtonLook::quiet);
    };
    end("walk/previous", row.x0 + 0.5f * end_side, Icon::back, Word::walk_previous,
        course.at > 0 ? course.at - 1 : 0, course.at > 0);
    const float top = centre.y - 0.5f * (first + second);
    canvas.centred_paragraph({centre.x, top + 0.5f * first}, width, position, bold_text, Role::ink,
                             rows.on);
    canvas.centred_paragraph({centre.x, top + first + 0.5f * second}, width, progress, small_text,
                             Role::soft_ink, rows.on);
    canvas.reading("walk/progress", around(centre, width, row.height()), position, progress);
    canvas.list().things().back().live = true;
    end("walk/next", row.x1 - 0.5f * end_side, Icon::next, Word::walk_next,
        std::min(course.at + 1, last), course.at < last);
}

/// Name of the place with its ink, and how much of it is set.
void place_title(const Model& model, HeadId head, Rows& rows) {
    constexpr float radius = 10.0f;
    Canvas& canvas = rows.canvas;
    const Head* set = find_head(*model.job, head);
    const std::string name = walk_place(canvas.language(), *model.job, head);
    const WalkProgress here = progress_at(*model.job, head);
    const std::string progress = say(canvas.language(), Word::walk_place_progress,
                                     {std::to_string(here.done), std::to_string(here.of)});
    const float indent = set ? 2.0f * radius + 10.0f : 0.0f;
    const float top = rows.y;
    if (set) {
        const Vec centre{rows.x + radius, top + 0.5f * canvas.type().height(title_text)};
        canvas.list().disc(centre, radius, own_colour(set->ink));
        canvas.list().circle(centre, radius, paint(Role::edge), 1.4f);
    }
    rows.y += canvas.paragraph({rows.x + indent, rows.y}, rows.width - indent, name, title_text,
                               Role::ink, rows.on);
    rows.text(progress, body_text, Role::soft_ink, 0.0f);
    canvas.reading("walk/head", {rows.x, top, rows.x + rows.width, rows.y}, name, progress);
    rows.space(10.0f);
}

/// Where hands go, what has to be done before.
void cautions(const Model& model, HeadId head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    std::vector<Caution> shown;
    if (head != 0) shown = {Caution::hands_in_carriage, Caution::isolated_and_bled};
    else if (walk_fields(*model.job, 0).size() > 1) shown = {Caution::hot_surface};
    if (shown.empty()) return;
    std::string words;
    for (const Caution caution : shown)
        words += (words.empty() ? "" : " ") + std::string(canvas.word(caution_word(caution)));
    const float top = rows.y;
    caution_row(words, rows);
    canvas.reading("walk/caution", {rows.x, top, rows.x + rows.width, rows.y}, words, {});
}

/// Title, verdict and cautions; beside them a drawing where there is room.
void top_of_place(const Model& model, HeadId head, Rows& rows) {
    constexpr float drawing = 230.0f, drawing_height = 270.0f, gap = 16.0f;
    constexpr float roomy = 470.0f; ///< dp of width at a text size of 100 %
    const bool drawn = head != 0 && rows.width >= roomy * std::max(1.0f, rows.canvas.scale());
    const float top = rows.y;
    Rows left{rows.canvas, rows.x, rows.width - (drawn ? drawing + gap : 0.0f), top, rows.on};
    place_title(model, head, left);
    walk_verdict(model, head, left);
    cautions(model, head, left);
    rows.y = left.y;
    if (!drawn) return;
    const float right = rows.x + rows.width;
    walk_drawing(model, head, {right - drawing, top, right, top + drawing_height}, rows.canvas);
    rows.y = std::max(left.y, top + drawing_height + 12.0f);
}

/// Ticks the rest; once nothing is left, leads on.
void buttons_of_place(const Model& model, HeadId head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const WalkProgress here = progress_at(*model.job, head);
    const std::optional<HeadId> next = next_unfinished(*model.job, head);
    rows.space(6.0f);
    if (!here.finished()) {
        const std::string left = std::to_string(here.of - here.done);
        wide_button("walk/tick-all", say(canvas.language(), Word::walk_tick_all, {left}),
                    ButtonLook::plain, TickHead{head, true}, rows, true);
    } else if (next) {
        const std::string place = walk_place(canvas.language(), *model.job, *next);
        wide_button("walk/go-on", say(canvas.language(), Word::walk_go_on, {place}),
                    ButtonLook::strong, WalkTo{*next}, rows, true);
    } else {
        wide_button("walk/go-on",
                    say(canvas.language(), Word::walk_go_on, {canvas.word(Word::walk_all)}),
                    ButtonLook::strong, WalkTo{0, true}, rows, true);
    }
    if (here.finished())
        wide_button("walk/untick-all", canvas.word(Word::walk_untick_all), ButtonLook::plain,
                    TickHead{head, false}, rows);
}

} // namespace

void walk_part(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Course course = course_of(model);
    if (model.state->day.merge)
        wide_button("walk/merge", canvas.word(Word::walk_merge_waits), ButtonLook::strong,
                    ShowDay{DayPart::merge}, rows);
    steps_row(model, course, rows);
    progress_bar(model, course, rows);
    if (course.at == course.order.size()) return walk_all(model, rows);
    const HeadId head = course.order[course.at];
    top_of_place(model, head, rows);
    if (model.state->habits.initials.empty())
        text_row(model, "walk/initials", canvas.word(Word::initials), {},
                 canvas.word(Word::initials_hint), EditText{TextTarget::initials}, rows);
    walk_cards(model, head, rows);
    buttons_of_place(model, head, rows);
    walk_findings(model, head, rows);
    rows.space(8.0f);
    wide_button("walk/all", canvas.word(Word::walk_all), ButtonLook::plain, WalkTo{0, true}, rows);
}

std::string walk_status(const Model& model) {
    return walk_progress_text(model.state->looks.language, *model.job);
}

} // namespace carriageway
