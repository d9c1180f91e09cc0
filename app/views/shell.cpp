// What surrounds every place: the bar of places and the line of notice.
#include "app/views/views.h"

namespace carriageway {

namespace {

struct PlaceRow {
    Place place;
    std::string_view name;
    Word words;
    Icon icon;
};
constexpr PlaceRow place_rows[] = {{Place::press, "place/press", Word::place_press, Icon::press},
                                   {Place::registration, "place/register", Word::place_register, Icon::registration},
                                   {Place::rate, "place/rate", Word::place_rate, Icon::clock},
                                   {Place::practice, "place/practice", Word::place_practice, Icon::practice},
                                   {Place::jobs, "place/jobs", Word::place_jobs, Icon::jobs}};
constexpr int place_count = static_cast<int>(std::size(place_rows));

void place_tab(const Model& model, const PlaceRow& row, Box box, bool with_words, bool stacked,
               Canvas& canvas) {
    const bool chosen = model.state->place == row.place;
    const TypeStyle style{stacked ? TypeSize::small : TypeSize::body, chosen};
    const Role on = chosen ? Role::quiet : Role::panel;
    const Role ink = chosen ? Role::ink : Role::soft_ink;
    DrawingList& list = canvas.list();
    if (chosen) list.round(box.inset(5.0f), 12.0f, paint(Role::quiet));
    const std::string_view words = canvas.word(row.words);
    if (!with_words) {
        canvas.icon(row.icon, box.centre(), 24.0f, ink);
    } else if (stacked) {
        const float height = canvas.type().height(style);
        const float top = box.centre().y - 0.5f * (24.0f + 2.0f + height);
        canvas.icon(row.icon, {box.centre().x, top + 12.0f}, 22.0f, ink);
        list.text_centred({box.centre().x, top + 26.0f + 0.5f * height}, words, style, ink, on);
    } else {
        list.text_centred(box.centre(), words, style, ink, on);
    }
    Thing& thing = list.thing(row.name, ThingRole::tab, box);
    thing.label.assign(words);
    thing.hint.assign(words);
    thing.chosen = chosen;
    thing.action = canvas.action(GoTo{row.place});
}

} // namespace

void places_bar(const Model& model, const Layout& layout, Canvas& canvas) {
    DrawingList& list = canvas.list();
    const Box bar = layout.places;
    list.round(bar, 0.0f, paint(Role::panel));
    list.thing("places", ThingRole::region, bar).label.assign(canvas.word(Word::places));
    if (layout.compact) {
        const Vec edge[] = {{bar.x0, bar.y0}, {bar.x1, bar.y0}};
        list.line(edge, 2, paint(Role::edge), 1.0f);
        const float each = bar.width() / static_cast<float>(place_count);
        const bool icons_only = canvas.scale() > 1.3f;
        for (int i = 0; i < place_count; ++i) {
            const Box box{bar.x0 + each * static_cast<float>(i), bar.y0,
                          bar.x0 + each * static_cast<float>(i + 1), bar.y1};
            const float needed = canvas.type().width({TypeSize::small, true}, canvas.word(place_rows[i].words));
            const bool words = (!icons_only || model.state->place == place_rows[i].place) && needed <= each - 8.0f;
            place_tab(model, place_rows[i], box, words, true, canvas);
        }
        return;
    }
    const Vec edge[] = {{bar.x1, bar.y0}, {bar.x1, bar.y1}};
    list.line(edge, 2, paint(Role::edge), 1.0f);
    const float each = std::max(60.0f, canvas.type().height({TypeSize::small, false}) + 40.0f);
    float y = bar.y0 + 64.0f;
    for (const PlaceRow& row : place_rows) {
        place_tab(model, row, {bar.x0, y, bar.x1 - 1.0f, y + each}, true, true, canvas);
        y += each + 4.0f;
    }
}

namespace {

/// What a notice says and offers; nothing to say: no text.
struct Shown {
    std::string text;
    std::string_view name;  ///< of the button
    std::string_view words; ///< on it; empty: no button
    Action action = CloseNotice{};
    bool closes = true;
};

/// The notice of the moment, otherwise what goes on standing there until it is dealt with.
Shown shown_notice(const Model& model, const Canvas& canvas) {
    Shown shown;
    if (const std::optional<Notice>& notice = model.state->notice) {
        shown.text = notice->text;
        if (notice->restore != 0) {
            shown.name = "notice/restore";
            shown.words = canvas.word(Word::undo);
            shown.action = RestoreJob{notice->restore};
        } else if (notice->run_removed) {
            shown.name = "notice/restore-run";
            shown.words = canvas.word(Word::undo);
            shown.action = RestoreRun{};
        } else if (notice->visit_left) {
            shown.name = "notice/visit-back";
            shown.words = canvas.word(Word::undo);
            shown.action = BringVisitBack{};
        }
    } else if (model.save == SaveState::elsewhere) {
        shown = {std::string(canvas.word(Word::elsewhere_explained)), "notice/take-over",
                 canvas.word(Word::work_here), TakeOver{}, false};
    } else if (model.state->newer_ready) {
        shown = {std::string(canvas.word(Word::newer_ready)), "notice/update",
                 canvas.word(Word::update_now), StartNewer{}, true};
    }
    return shown;
}

} // namespace

void notice_line(const Model& model, const Layout& layout, Canvas& canvas) {
    const Shown notice = shown_notice(model, canvas);
    if (notice.text.empty()) return;
    DrawingList& list = canvas.list();
    const int before = list.layer();
    list.set_layer(3);
    const TypeStyle style{TypeSize::body, false};
    const float most = std::min(560.0f, layout.diagram.width() - 16.0f);
    // The button that takes it back stands beside the words, or below them where they need the width.
    const bool offers = !notice.words.empty();
    const float beside =
        std::max(110.0f * std::max(1.0f, canvas.scale()),
                 canvas.type().width({TypeSize::body, true}, notice.words) + 28.0f);
    const bool stacked = offers && most - 72.0f - beside < 200.0f * canvas.scale();
    const float text = most - 72.0f - (offers && !stacked ? beside : 0.0f);
    const float line = canvas.paragraph_height(text, notice.text, style);
    const float button = canvas.button_height(notice.words, {}, beside, 48.0f);
    const float height = std::max(60.0f, line + 24.0f) + (stacked ? button + 8.0f : 0.0f);
    const float middle = layout.diagram.centre().x;
    const float bottom = layout.compact ? layout.places.y0 - 8.0f : model.window.y1 - 16.0f;
    const Box box{middle - 0.5f * most, bottom - height, middle + 0.5f * most, bottom};
    Thing& said = list.thing("notice", ThingRole::text, box);
    said.label = notice.text;
    said.live = true;
    list.round(box, 12.0f, paint(Role::strong));
    const float top = stacked ? box.y0 + 12.0f : box.centre().y - 0.5f * line;
    canvas.paragraph({box.x0 + 14.0f, top}, text, notice.text, style, Role::on_strong, Role::strong);
    if (offers) {
        const Box at = stacked ? Box{box.x0 + 14.0f, box.y1 - button - 8.0f, box.x1 - 60.0f, box.y1 - 8.0f}
                               : Box{box.x1 - 48.0f - beside, box.centre().y - 0.5f * button, box.x1 - 48.0f,
                                     box.centre().y + 0.5f * button};
        canvas.button(notice.name, at, notice.words, ButtonLook::quiet, canvas.action(notice.action));
    }
    if (!notice.closes) return list.set_layer(before);
    canvas.icon(Icon::close, {box.x1 - 24.0f, box.centre().y}, 16.0f, Role::on_strong);
    Thing& close = list.thing("notice/close", ThingRole::button,
                              {box.x1 - 46.0f, box.y0 + 2.0f, box.x1 - 2.0f, box.y1 - 2.0f});
    close.label.assign(canvas.word(Word::close));
    close.action = canvas.action(CloseNotice{});
    list.set_layer(before);
}

} // namespace carriageway
