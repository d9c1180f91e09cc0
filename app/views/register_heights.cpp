// Heights of several platens under several heads: which of them is out, and what to turn.
#include <algorithm>
#include <cmath>

#include "app/drawing/diagram.h"
#include "app/text/sentences.h"
#include "app/views/register_view.h"

namespace carriageway {

namespace {

constexpr TypeStyle small{TypeSize::small, false};

/// Parts may be off by so much, mm: that of levelling_advice.h.
double tolerance() { return LevelTargets{}.tolerance; }

/// One head or platen in the plan.
struct PlanPart {
    Vec at, value_at;
    std::string number;
    const PartOff* off = nullptr;
    double sign = 1.0; ///< of high: a lower platen widens the gap, a higher head does
    bool out() const { return off && off->out; }
    bool known() const { return off && off->known != LevelTerms::none; }
    double high() const { return known() ? sign * off->worst : 0.0; }
};

/// A disc shaded by how far the part is off; one that is out has a heavier ring, so that it isn't told
/// by colour alone.
void draw_disc(DrawingList& list, const PlanPart& part, float radius) {
    list.disc(part.at, radius, paint(Role::card));
    if (part.known()) {
        const double share = std::clamp(std::abs(part.high()) / (3.0 * tolerance()), 0.0, 1.0);
        list.disc(part.at, radius, paint(part.high() > 0.0 ? Role::squeegee : Role::flood, static_cast<int>(share * 150.0)));
    }
    list.circle(part.at, radius, paint(part.out() ? Role::stop : Role::edge), part.out() ? 3.0f : 1.4f);
}

/// Numbers of those that are out first, then the others, then by how much: each where there is room.
/// The table says all of it.
void draw_plan(DrawingList& list, const std::vector<PlanPart>& parts, float radius, LengthUnit units) {
    const TypeStyle bold{TypeSize::small, true};
    for (const PlanPart& part : parts) draw_disc(list, part, radius);
    FreeTexts texts(list);
    for (const bool out : {true, false})
        for (const PlanPart& part : parts)
            if (part.out() == out) texts.write({part.at}, part.number, bold, Role::card);
    for (const PlanPart& part : parts) texts.take(around(part.at, 2.0f * radius, 2.0f * radius));
    for (const PlanPart& part : parts)
        if (part.out()) texts.write({part.value_at}, signed_length(part.high(), units, false), bold);
}

const PartOff* find_part(const std::vector<PartOff>& parts, std::uint32_t number) {
    const auto found = std::find_if(parts.begin(), parts.end(), [&](const PartOff& p) { return p.number == number; });
    return found == parts.end() ? nullptr : &*found;
}

void parts_list(const RegisterView& view, const LevelView& level, bool heads, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    const std::vector<PartOff>& parts = heads ? level.heads : level.platens;
    if (parts.empty()) return;
    rows.text(canvas.word(heads ? Word::level_heads : Word::level_platens), {TypeSize::title, true}, Role::ink, 6.0f);
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const PartOff& part = parts[i];
        std::string title = say(language, Word::level_platen, {std::to_string(part.number)});
        if (heads) {
            const Head* head = find_head(view.job(), part.number);
            title = head ? head_title(language, *head) : std::to_string(part.number);
        }
        std::vector<std::string> lines{off_text(language, view.units(), part, heads, tolerance())};
        if (part.known == LevelTerms::plane)
            lines.push_back(std::string(canvas.word(Word::level_point_left)) + " " + signed_length(part.operator_left, view.units()) +
                            ", " + std::string(canvas.word(Word::level_point_right)) + " " + signed_length(part.operator_right, view.units()) +
                            ", " + std::string(canvas.word(Word::level_point_machine)) + " " + signed_length(part.machine_side, view.units()));
        if (!heads && part.out)
            for (std::string& turn : level_turns_text(language, turns_of(level.levelling.platens[i], view.job().press.level_screws),
                                                      view.job().press.level_screws))
                lines.push_back(std::move(turn));
        said_card(std::string(heads ? "register/level/head/" : "register/level/platen/") + std::to_string(part.number),
                  title, lines, part.out ? Role::mind : Role::edge, rows);
    }
}

std::string reading_text(const RegisterView& view, const HeightReading& reading) {
    const Language language = view.state().looks.language;
    return say(language, Word::level_reading,
               {std::to_string(reading.platen),
                word(language, point_word(view.job().press.height_points, {reading.x, reading.y})),
                fine_length(reading.height, view.units())});
}

void strays_list(const RegisterView& view, const LevelView& level, Rows& rows) {
    if (level.levelling.strays.empty()) return;
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::level_strays), {TypeSize::title, true}, Role::mind, 6.0f);
    for (const StrayReading& stray : level.levelling.strays) {
        const HeightReading& reading = view.job().height_readings[stray.reading];
        const Head* head = find_head(view.job(), reading.head);
        rows.text(say(canvas.language(), Word::level_stray,
                      {head ? head_title(canvas.language(), *head) : std::to_string(reading.head),
                       say(canvas.language(), Word::level_platen, {std::to_string(reading.platen)}),
                       fine_length(reading.height, view.units()), signed_length(stray.residual, view.units())}),
                  {TypeSize::body, false}, Role::ink, 6.0f);
    }
}

/// Platen by a stepper, point by a choice, the gap on the pad.
void add_part(const RegisterView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const RegisterState& state = view.state().registering;
    rows.text(canvas.word(Word::level_add), {TypeSize::title, true}, Role::ink, 6.0f);
    const float side = 48.0f;
    const Box row = rows.next(side, 8.0f);
    const auto most = static_cast<std::uint32_t>(view.job().press.stations);
    const std::uint32_t before = state.platen > 1 ? state.platen - 1 : most, after = state.platen < most ? state.platen + 1 : 1;
    canvas.icon_button("register/previous-platen", {row.x0, row.y0, row.x0 + side, row.y1}, Icon::minus,
                       canvas.word(Word::level_previous_platen), canvas.action(ChooseHeightPlace{before, state.point}), true,
                       ButtonLook::quiet);
    canvas.icon_button("register/next-platen", {row.x1 - side, row.y0, row.x1, row.y1}, Icon::plus,
                       canvas.word(Word::level_next_platen), canvas.action(ChooseHeightPlace{after, state.point}), true,
                       ButtonLook::quiet);
    const std::string platen = say(canvas.language(), Word::level_platen, {std::to_string(state.platen)});
    canvas.list().text_centred(row.centre(), platen, {TypeSize::body, true}, Role::ink, rows.on);
    canvas.reading("register/platen-chosen", {row.x0 + side, row.y0, row.x1 - side, row.y1}, platen, {});
    const auto point = [&](const char* name, Word words, HeightPoint at) {
        return Choice{name, std::string(canvas.word(words)), canvas.action(ChooseHeightPlace{state.platen, at}),
                      state.point == at};
    };
    choices("register/point", canvas.word(Word::level_point),
            {point("register/point/left", Word::level_point_left, HeightPoint::operator_left),
             point("register/point/right", Word::level_point_right, HeightPoint::operator_right),
             point("register/point/machine", Word::level_point_machine, HeightPoint::machine),
             point("register/point/centre", Word::level_point_centre, HeightPoint::centre)},
            rows);
    wide_button("register/type-gap", canvas.word(Word::level_type_gap), {}, ButtonLook::strong,
                OpenRegisterPad{view.head->id, {RegisterNumber::height, 0}}, rows);
}

void readings_list(const RegisterView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const std::vector<HeightReading>& readings = view.job().height_readings;
    bool first = true;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        if (readings[i].head != view.head->id) continue;
        if (first) rows.text(canvas.word(Word::level_readings), {TypeSize::title, true}, Role::ink, 6.0f);
        first = false;
        std::vector<HeightReading> without = readings;
        without.erase(without.begin() + static_cast<std::ptrdiff_t>(i));
        wide_button("register/reading/" + std::to_string(i + 1), reading_text(view, readings[i]),
                    canvas.word(Word::level_remove), ButtonLook::plain,
                    RegisterEdit{Edit{SetHeightReadings{std::move(without)}}, {}, {}}, rows);
    }
}

} // namespace

void register_heights_drawing(const RegisterView& view, Box box, Canvas& canvas) {
    DrawingList& list = canvas.list();
    list.thing("register/plan", ThingRole::image, box).label.assign(canvas.word(Word::level_drawing));
    Box plan = box.inset(8.0f);
    plan.y1 -= caption(box, say(canvas.language(), Word::level_legend, {length_unit_name(view.units())}), canvas);
    const LevelView level = level_view(view.job());
    const float radius = 0.5f * std::min(plan.width(), plan.height());
    const float disc = std::min(22.0f * canvas.scale(), 0.13f * radius);
    const Vec centre = plan.centre();
    const PressProfile& press = view.job().press;
    const auto at = [&](int station, float share) {
        const Point place = place_of_station(press, station).to_press({0.0, 0.0});
        const double far = std::max(1.0, std::hypot(place.x, place.y));
        return Vec{centre.x + static_cast<float>(place.x / far) * share * radius,
                   centre.y - static_cast<float>(place.y / far) * share * radius};
    };
    list.circle(centre, 0.56f * radius, paint(Role::edge), 1.2f);
    std::vector<PlanPart> parts;
    for (int station = 1; station <= press.stations; ++station)
        parts.push_back({at(station, 0.56f), at(station, 0.27f), std::to_string(station),
                         find_part(level.platens, static_cast<std::uint32_t>(station)), -1.0});
    for (const Head& head : view.job().heads)
        parts.push_back({at(head.station, 0.86f), at(head.station, 0.71f), std::to_string(head.station),
                         find_part(level.heads, head.id), 1.0});
    draw_plan(list, parts, disc, view.units());
}

void register_heights_panel(const RegisterView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const LevelView level = level_view(view.job());
    said_verdict("register/level", levelling_verdict(canvas.language(), view.units(), level.levelling, level.out, tolerance()),
                 rows);
    rows.text(canvas.word(Word::level_caution), small, Role::mind, 10.0f);
    for (const LevelGroup& group : level.levelling.groups) {
        if (group.reason == LevelReason::few_points) rows.text(canvas.word(Word::level_few_points), small, Role::ink, 6.0f);
        if (group.reason == LevelReason::few_points_of_some)
            rows.text(canvas.word(Word::level_few_of_some), small, Role::ink, 6.0f);
    }
    if (level.levelling.groups.size() > 1)
        rows.text(say(canvas.language(), Word::level_groups, {std::to_string(level.levelling.groups.size())}), small,
                  Role::mind, 6.0f);
    add_part(view, rows);
    strays_list(view, level, rows);
    parts_list(view, level, true, rows);
    parts_list(view, level, false, rows);
    readings_list(view, rows);
}

} // namespace carriageway
