// Stations: what each colour wants, the best placement with its reasons, and what the press can
// hold.
#include "app/text/measure.h"
#include "app/text/sentences.h"
#include "app/text/station_sentences.h"
#include "app/views/day_view.h"
#include "app/views/station_search.h"

namespace carriageway {

namespace {

std::string colour_title(const Canvas& canvas, const Head& head) {
    return head_title(canvas.language(), head);
}

/// Something that is so or isn't, as a row with a box to tick.
void switch_row(const std::string& name, std::string_view words, bool on, Action action,
                Rows& rows) {
    constexpr float box_side = 24.0f;
    Canvas& canvas = rows.canvas;
    const float width = rows.width - box_side - 36.0f;
    const float text = canvas.paragraph_height(width, words, body_text);
    const Box row = rows.next(std::max(48.0f, text + 18.0f), 2.0f);
    const Box box = around({row.x0 + 4.0f + 0.5f * box_side, row.centre().y}, box_side, box_side);
    canvas.list().round(box, 6.0f, paint(on ? Role::strong : Role::paper));
    canvas.list().ring(box, 6.0f, paint(on ? Role::strong : Role::edge), 1.6f);
    if (on) canvas.icon(Icon::check, box.centre(), 18.0f, Role::on_strong);
    canvas.paragraph({box.x1 + 14.0f, row.centre().y - 0.5f * text}, width, words, body_text,
                     Role::ink, rows.on);
    Thing& thing = canvas.list().thing(name, ThingRole::button, row);
    thing.label.assign(words);
    thing.value.assign(canvas.word(on ? Word::yes : Word::no));
    thing.chosen = on;
    thing.action = canvas.action(std::move(action));
}

/// A placement as a strip of stations: their number, and what stands there, over a line of its ink.
void placement_strip(const Model& model, const StationSearch& search, const Placement& placement,
                     Rows& rows) {
    constexpr float least_cell = 74.0f, gap = 6.0f, line = 5.0f, pad = 6.0f;
    Canvas& canvas = rows.canvas;
    const std::vector<StationRole> roles = roles_of(search.asked.question, placement);
    const int columns =
        std::max(1, static_cast<int>((rows.width + gap) / (least_cell * canvas.scale() + gap)));
    const float width =
        (rows.width - gap * static_cast<float>(columns - 1)) / static_cast<float>(columns);
    float tallest = 0.0f;
    for (std::size_t i = 0; i < roles.size(); ++i)
        tallest = std::max(tallest, canvas.paragraph_height(width - 2.0f * pad,
                                                            role_text(canvas.language(), *model.job,
                                                                      search.asked, placement, i),
                                                            small_text));
    const float number = canvas.type().height(small_text);
    const float height = number + tallest + 3.0f * pad + line;
    Box row;
    for (std::size_t i = 0; i < roles.size(); ++i) {
        const std::size_t column = i % static_cast<std::size_t>(columns);
        if (column == 0) row = rows.next(height, gap);
        const float x = row.x0 + (width + gap) * static_cast<float>(column);
        const Box cell{x, row.y0, x + width, row.y1};
        const bool blank = roles[i] == StationRole::idle || roles[i] == StationRole::outside;
        if (!blank) canvas.list().round(cell, 8.0f, paint(Role::quiet));
        canvas.list().ring(cell, 8.0f, paint(roles[i] == StationRole::idle ? Role::mind : Role::edge),
                           roles[i] == StationRole::idle ? 2.0f : 1.0f);
        const Role on = blank ? rows.on : Role::quiet;
        canvas.list().text({cell.x0 + pad, cell.y0 + pad},
                           std::to_string(station_of(search.asked, static_cast<int>(i) + 1)),
                           small_text, Role::soft_ink, on);
        canvas.paragraph({cell.x0 + pad, cell.y0 + pad + number}, width - 2.0f * pad,
                         role_text(canvas.language(), *model.job, search.asked, placement, i),
                         small_text, blank ? Role::soft_ink : Role::ink, on);
        for (std::size_t c = 0; c < placement.stations.size(); ++c) {
            if (placement.stations[c] != static_cast<int>(i) + 1) continue;
            const Head* head = find_head(*model.job, search.asked.question.colours[c].id);
            const Vec ends[] = {{cell.x0 + pad, cell.y1 - pad}, {cell.x1 - pad, cell.y1 - pad}};
            // An edge of its own, so that black shows on dark and white on light.
            if (head) canvas.list().line(ends, 2, paint(Role::soft_ink), line + 2.0f);
            if (head) canvas.list().line(ends, 2, own_colour(head->ink), line);
        }
    }
}

void placement_card(const Model& model, const StationSearch& search, std::size_t rank, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Placement& placement = search.study.placements()[rank];
    rows.space(6.0f);
    const std::string name = "stations/found/" + std::to_string(rank);
    const std::string words =
        rank == 0 ? std::string(canvas.word(Word::stations_best))
                  : say(canvas.language(), Word::stations_other, {std::to_string(rank)});
    const float top = rows.y;
    rows.text(words, bold_text, Role::ink, 2.0f);
    const std::string cost = capitalised(cost_text(canvas.language(), placement.cost));
    rows.text(cost, small_text, Role::soft_ink, 8.0f);
    canvas.reading(name, {rows.x, top, rows.x + rows.width, rows.y}, words,
                   cost + ". " + placement_text(canvas.language(), *model.job, search.asked, placement));
    placement_strip(model, search, placement, rows);
    if (placement_edit(*model.job, search.asked, placement))
        wide_button(name + "/use", canvas.word(Word::stations_use),
                    rank == 0 ? ButtonLook::strong : ButtonLook::plain, UsePlacement{rank}, rows,
                    rank == 0);
    else
        rows.text(canvas.word(Word::stations_is_so), small_text, Role::soft_ink, 8.0f);
}

void bullet(std::string_view words, const std::string& name, Rows& rows) {
    constexpr float indent = 18.0f;
    Canvas& canvas = rows.canvas;
    const float height = canvas.paragraph_height(rows.width - indent, words, body_text);
    const Box row = rows.next(height, 6.0f);
    canvas.list().disc({row.x0 + 6.0f, row.y0 + 0.5f * canvas.type().height(body_text)}, 3.0f,
                       paint(Role::ink));
    canvas.paragraph({row.x0 + indent, row.y0}, rows.width - indent, words, body_text, Role::ink,
                     rows.on);
    canvas.reading(name, row, words, {});
}

void conflict_rows(const Model& model, const StationSearch& search, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const PlacementConflict& conflict = search.study.conflict();
    rows.text(canvas.word(Word::stations_none), bold_text, Role::stop, 4.0f);
    rows.text(
        canvas.word(conflict.wishes.empty() ? Word::stations_no_wish : Word::stations_conflict),
        body_text, Role::ink, 6.0f);
    for (std::size_t i = 0; i < conflict.wishes.size(); ++i)
        bullet(capitalised(wish_text(canvas.language(), *model.job, search.asked, conflict.wishes[i])),
               "stations/conflict/" + std::to_string(i), rows);
    if (conflict.needs.empty()) return;
    rows.text(canvas.word(Word::stations_need), body_text, Role::ink, 6.0f);
    for (std::size_t i = 0; i < conflict.needs.size(); ++i)
        bullet(capitalised(need_text(canvas.language(), conflict.needs[i])),
               "stations/need/" + std::to_string(i), rows);
}

void reason_rows(const Model& model, const StationSearch& search, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const std::vector<PlacementReason>& reasons = search.study.reasons();
    rows.text(canvas.word(Word::stations_reasons), bold_text, Role::ink, 4.0f);
    if (reasons.empty() && !search.running())
        rows.text(canvas.word(Word::stations_reasons_none), body_text, Role::soft_ink, 6.0f);
    for (std::size_t i = 0; i < reasons.size(); ++i)
        bullet(reason_text(canvas.language(), *model.job, search.asked, reasons[i]),
               "stations/reason/" + std::to_string(i), rows);
    if (!search.study.complete())
        rows.text(canvas.word(Word::stations_incomplete), small_text, Role::soft_ink, 6.0f);
}

/// How far a search is, as a bar, with the button that stops it.
void progress_row(const StationSearch& search, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const double share = search.study.progress();
    const std::string words = say(canvas.language(), Word::stations_searching,
                                  {format_share(share), std::to_string(search.study.nodes())});
    rows.text(words, small_text, Role::soft_ink, 4.0f);
    const Box bar = rows.next(10.0f, 10.0f);
    canvas.list().round(bar, 5.0f, paint(Role::quiet));
    canvas.list().round({bar.x0, bar.y0, bar.x0 + static_cast<float>(share) * bar.width(), bar.y1},
                        5.0f, paint(Role::strong));
    canvas.reading("stations/progress", bar, words, {});
    wide_button("stations/stop", canvas.word(Word::stations_stop), ButtonLook::plain, StopSearch{},
                rows);
}

void search_rows(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const std::shared_ptr<StationSearch>& search = model.state->day.search;
    if (!search) {
        if (!model.job->heads.empty())
            wide_button("stations/search", canvas.word(Word::stations_search), ButtonLook::strong,
                        SearchStations{}, rows, true);
        return;
    }
    if (search->running()) progress_row(*search, rows);
    switch (search->study.state()) {
    case PlacementState::refused:
        rows.text(canvas.word(Word::stations_refused), body_text, Role::stop, 8.0f);
        return;
    case PlacementState::impossible: return conflict_rows(model, *search, rows);
    case PlacementState::too_large:
        rows.text(canvas.word(Word::stations_too_large), body_text, Role::mind, 8.0f);
        break;
    default: break;
    }
    const std::size_t found = search->study.placements().size();
    if (found > 0) placement_card(model, *search, 0, rows);
    if (found > 0) reason_rows(model, *search, rows);
    for (std::size_t rank = 1; rank < found; ++rank) placement_card(model, *search, rank, rows);
}

/// What one colour wants.
void colour_rows(const Model& model, const Head& head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const std::string base = "stations/" + std::to_string(head.id) + "/";
    rows.space(10.0f);
    const Box row = rows.next(
        canvas.paragraph_height(rows.width - 30.0f, colour_title(canvas, head), bold_text), 6.0f);
    canvas.list().disc({row.x0 + 9.0f, row.centre().y}, 8.0f, own_colour(head.ink));
    canvas.list().circle({row.x0 + 9.0f, row.centre().y}, 8.0f, paint(Role::edge), 1.2f);
    canvas.paragraph({row.x0 + 28.0f, row.y0}, rows.width - 30.0f, colour_title(canvas, head),
                     bold_text, Role::ink, rows.on);
    number_row(model, head.id, Field::print_order, rows);
    const auto wish = [&](const char* name, Word words, bool ColourWish::* part) {
        ColourWish changed = head.wish;
        changed.*part = !(changed.*part);
        switch_row(base + name, canvas.word(words), head.wish.*part,
                   DoEdit{Edit{SetColourWish{head.id, changed}}}, rows);
    };
    wish("wet-on-wet", Word::stations_wet_on_wet, &ColourWish::wet_on_wet);
    wish("flash-after", Word::stations_flash_after, &ColourWish::flash_after);
    if (head.wish.flash_after) {
        wish("together", Word::stations_together, &ColourWish::flash_together);
        number_row(model, head.id, Field::cool_after, rows);
    }
    ColourWish pinned = head.wish;
    pinned.pinned = !pinned.pinned;
    switch_row(base + "pinned",
               say(canvas.language(), Word::stations_pinned, {std::to_string(head.station)}),
               head.wish.pinned, DoEdit{Edit{SetColourWish{head.id, pinned}}}, rows);
    number_row(model, head.id, Field::screen_on, rows);
}

/// What one station of the press can hold, and what it is for.
void station_rows(const Model& model, int station, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Job& job = *model.job;
    const std::string base = "stations/room/" + std::to_string(station);
    rows.space(6.0f);
    rows.text(say(canvas.language(), Word::stations_room, {std::to_string(station)}), bold_text,
              Role::ink, 4.0f);
    const StationRoom room = station_room(job.press, station);
    const auto with = [&](StationRoom changed) {
        SetPress edit{job.press, {}};
        if (edit.press.rooms.size() < static_cast<std::size_t>(station))
            edit.press.rooms.resize(static_cast<std::size_t>(station));
        edit.press.rooms[static_cast<std::size_t>(station - 1)] = changed;
        return DoEdit{Edit{edit}};
    };
    switch_row(base + "/head", canvas.word(Word::stations_can_head), room.print_head,
               with({!room.print_head, room.flash}), rows);
    switch_row(base + "/flash", canvas.word(Word::stations_can_flash), room.flash,
               with({room.print_head, !room.flash}), rows);
    if (head_on(job, station)) return;
    std::vector<Choice> uses;
    for (const StationUse use : {StationUse::open, StationUse::load, StationUse::unload,
                                 StationUse::flash, StationUse::cool}) {
        static constexpr const char* names[] = {"open", "load", "unload", "flash", "cool"};
        const bool now = job.uses[static_cast<std::size_t>(station - 1)] == use;
        uses.push_back({names[static_cast<int>(use)], capitalised(canvas.word(use_word(use))),
                        canvas.action(DoEdit{Edit{SetUse{station, use}}}), now});
    }
    std::vector<std::string> full;
    full.reserve(uses.size());
    for (Choice& use : uses) {
        full.push_back(base + "/" + std::string(use.name));
        use.name = full.back();
    }
    choices(base + "/use",
            say(canvas.language(), Word::stations_room, {std::to_string(station)}), uses, rows);
}

/// Which wishes today's arrangement breaks, or what it costs.
void now_rows(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    if (model.job->heads.empty()) return;
    const JobPlacement asked = as_placed_now(*model.job);
    const PlacementSearch search = place(asked.question, {1, false, std::nullopt, 20'000});
    if (search.state() == PlacementState::found) {
        const std::string cost = capitalised(cost_text(canvas.language(), search.found()[0].cost));
        const float top = rows.y;
        rows.text(canvas.word(Word::stations_now), bold_text, Role::ink, 2.0f);
        rows.text(cost, body_text, Role::ink, 10.0f);
        canvas.reading("stations/now", {rows.x, top, rows.x + rows.width, rows.y},
                       canvas.word(Word::stations_now), cost);
        return;
    }
    if (search.state() != PlacementState::impossible) return;
    rows.text(canvas.word(Word::stations_now_breaks), bold_text, Role::stop, 4.0f);
    int number = 0;
    const std::vector<PlacementWish> broken = wishes_broken(asked);
    if (broken.empty()) bullet(canvas.word(Word::stations_now_no_place), "stations/now/0", rows);
    for (const PlacementWish& wish : broken)
        bullet(capitalised(wish_text(canvas.language(), *model.job, asked, wish)),
               "stations/now/" + std::to_string(number++), rows);
}

} // namespace

std::string stations_status(const Model& model) {
    return say(model.state->looks.language, Word::stations_status,
               {std::to_string(model.job->heads.size()), std::to_string(model.job->press.stations)});
}

void stations_part(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::stations_hint), small_text, Role::soft_ink, 10.0f);
    now_rows(model, rows);
    search_rows(model, rows);
    rows.space(10.0f);
    rows.text(canvas.word(Word::stations_colours), title_text, Role::ink, 2.0f);
    rows.text(canvas.word(Word::stations_drag), small_text, Role::soft_ink, 4.0f);
    for (const Head& head : model.job->heads) colour_rows(model, head, rows);
    rows.space(14.0f);
    rows.text(canvas.word(Word::stations_press), title_text);
    for (int station = 1; station <= model.job->press.stations; ++station)
        station_rows(model, station, rows);
}

} // namespace carriageway
