// What surrounds every place: the bar of places, the header, the line of notice.
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

std::string save_words(const Model& model, Canvas& canvas) {
    switch (model.save) {
    case SaveState::saved: return std::string(canvas.word(Word::saved));
    case SaveState::waiting: return std::string(canvas.word(Word::not_yet_saved));
    case SaveState::failed: return std::string(canvas.word(Word::save_failed));
    case SaveState::not_kept: return std::string(canvas.word(Word::nothing_is_kept));
    case SaveState::none: break;
    }
    return {};
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
            const bool words = !icons_only || model.state->place == place_rows[i].place;
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

void press_header(const Model& model, const Layout& layout, Canvas& canvas) {
    const ViewState& state = *model.state;
    DrawingList& list = canvas.list();
    const Box box = layout.header;
    const Head* head = find_head(*model.job, state.head);
    const TypeStyle title{TypeSize::title, true}, small{TypeSize::small, false};
    // Undo and redo at the right, always in the same place.
    const float side = 48.0f;
    float right = box.x1 - 8.0f;
    const float top = box.y0 + std::max(4.0f, 0.5f * (box.height() - side));
    const auto tool = [&](std::string_view name, Icon icon, Word words, Action action, bool enabled) {
        canvas.icon_button(name, {right - side, top, right, top + side}, icon, canvas.word(words),
                           canvas.action(std::move(action)), enabled, ButtonLook::bare);
        right -= side;
    };
    tool("redo", Icon::redo, Word::redo, Redo{}, model.can_redo);
    tool("undo", Icon::undo, Word::undo, Undo{}, model.can_undo);
    float left = box.x0 + 16.0f;
    if (head) {
        canvas.icon_button("back", {box.x0 + 2.0f, top, box.x0 + 2.0f + side, top + side}, Icon::back,
                           canvas.word(Word::whole_press), canvas.action(ChooseHead{0}), true,
                           ButtonLook::bare);
        left = box.x0 + side + 4.0f;
    }
    const std::string name = head ? head_name(model, *head) : model.job->name;
    const std::string heads = say(
        canvas.language(), Word::heads_fit,
        {std::to_string(model.assessment->fit_heads), std::to_string(model.assessment->heads.size())});
    const std::string saved = save_words(model, canvas);
    const std::string line = head            ? model.job->name
                             : saved.empty() ? heads
                                             : heads + " · " + saved;
    const float width = right - left - 4.0f;
    // A long name takes two smaller lines rather than losing its end.
    const bool fits = list.type().width(title, name) <= width;
    const TypeStyle style = fits ? title : TypeStyle{TypeSize::body, true};
    const float height = canvas.paragraph_height(width, name, style, 2) +
                         canvas.paragraph_height(width, line, small, 1);
    float y = box.y0 + 0.5f * (box.height() - height);
    y += canvas.paragraph({left, y}, width, name, style, Role::ink, Role::paper, 2);
    canvas.paragraph({left, y}, width, line, small, Role::soft_ink, Role::paper, 1);
    canvas.reading("title", {left, box.y0, right, box.y1}, name, line);
    canvas.reading("saved", {left, y, right, box.y1}, saved, model.save_trouble);
}

void notice_line(const Model& model, const Layout& layout, Canvas& canvas) {
    const std::optional<Notice>& notice = model.state->notice;
    if (!notice) return;
    DrawingList& list = canvas.list();
    const int before = list.layer();
    list.set_layer(2);
    const TypeStyle style{TypeSize::body, false};
    const float most = std::min(560.0f, layout.diagram.width() - 16.0f);
    const float button = notice->restore ? 110.0f * std::max(1.0f, canvas.scale()) : 0.0f;
    const float text = most - 28.0f - button - 44.0f;
    const float height = std::max(60.0f, canvas.paragraph_height(text, notice->text, style) + 24.0f);
    const float middle = layout.diagram.centre().x;
    const float bottom = layout.compact ? layout.places.y0 - 8.0f : model.window.y1 - 16.0f;
    const Box box{middle - 0.5f * most, bottom - height, middle + 0.5f * most, bottom};
    list.thing("notice", ThingRole::region, box).label = notice->text;
    list.round(box, 12.0f, paint(Role::strong));
    const float line = canvas.paragraph_height(text, notice->text, style);
    canvas.paragraph({box.x0 + 14.0f, box.centre().y - 0.5f * line}, text, notice->text, style,
                     Role::on_strong, Role::strong);
    if (notice->restore)
        canvas.button("notice/restore",
                      {box.x1 - 48.0f - button, box.y0 + 6.0f, box.x1 - 48.0f, box.y1 - 6.0f},
                      canvas.word(Word::undo), ButtonLook::quiet,
                      canvas.action(RestoreJob{notice->restore}));
    canvas.icon(Icon::close, {box.x1 - 24.0f, box.centre().y}, 16.0f, Role::on_strong);
    Thing& close = list.thing("notice/close", ThingRole::button,
                              {box.x1 - 46.0f, box.y0 + 2.0f, box.x1 - 2.0f, box.y1 - 2.0f});
    close.label.assign(canvas.word(Word::close));
    close.action = canvas.action(CloseNotice{});
    list.set_layer(before);
}

} // namespace carriageway
