// Heights of several platens under several heads: which of them is out, and what to turn.
#include <algorithm>
#include <cmath>

#include "app/drawing/diagram.h"
#include "app/text/sentences.h"
#include "app/views/register_view.h"

namespace carriageway {

namespace {

// The plan, in shares of its radius.
constexpr float platen_ring = 0.56f, head_ring = 0.86f, largest_disc_share = 0.13f;
constexpr float largest_disc = 22.0f; ///< dp at a text size of 100 %

// A disc is shaded up to so much where its part is off by so many tolerances.
constexpr double full_shade_at = 3.0, full_shade = 110.0;

// The tip on the rim of a disc: up for a high part, down for a low one.
constexpr float tip_height = 6.0f, tip_half_width = 5.0f, tip_inside = 1.0f;

/// One head or platen in the plan.
struct PlanPart {
    Vec at;
    bool head = false;
    std::string number;
    const PartOff* off = nullptr;
    bool out() const { return off && off->out; }
    bool known() const { return off && off->known != LevelTerms::none; }
    double high() const { return known() ? height_of(off->worst, head) : 0.0; }
    /// 1 high, -1 low, 0 neither as far as numbers are written.
    int way(LengthUnit units) const {
        if (plain_fine_length(high(), units) == plain_fine_length(0.0, units)) return 0;
        return high() > 0.0 ? 1 : -1;
    }
};

/// A disc shaded by how far the part is off. That it is out is told by a heavier ring, high or low
/// by the tip: neither by colour alone.
void draw_disc(DrawingList& list, const PlanPart& part, float radius, int way, double tolerance) {
    constexpr float out_ring = 3.0f, plain_ring = 1.4f;
    list.disc(part.at, radius, paint(Role::card));
    if (way != 0) {
        const double share = std::min(std::abs(part.high()) / (full_shade_at * tolerance), 1.0);
        list.disc(
            part.at, radius,
            paint(way > 0 ? Role::squeegee : Role::flood, static_cast<int>(share * full_shade)));
    }
    const bool out = part.out();
    list.circle(part.at, radius, paint(out ? Role::stop : Role::edge), out ? out_ring : plain_ring);
    if (way == 0) return;
    const float up = way > 0 ? -1.0f : 1.0f, foot = up * (radius - tip_inside);
    const Vec tip[] = {part.at + Vec{0.0f, up * (radius + tip_height)},
                       part.at + Vec{tip_half_width, foot}, part.at + Vec{-tip_half_width, foot}};
    list.fill(tip, 3, paint(Role::ink));
}

/// Where the number of a part that is out may stand: a platen's toward the centre, which is empty;
/// a head's beside it, away from the centre first.
std::vector<Vec> places_of_value(const PlanPart& part, Vec centre, float radius, float half_width) {
    constexpr float air = 4.0f, step = 8.0f;
    constexpr int steps = 8;
    const Vec out = part.at - centre;
    const float far = std::max(1.0f, length(out));
    std::vector<Vec> places;
    if (!part.head) {
        for (int i = 0; i < steps; ++i) {
            const float in = radius + tip_height + air + step * static_cast<float>(i + 1);
            if (in < far) places.push_back(part.at - out * (in / far));
        }
        return places;
    }
    const float beside = radius + air + half_width, side = out.x < 0.0f ? -1.0f : 1.0f;
    for (const float x : {side * beside, -side * beside}) places.push_back(part.at + Vec{x, 0.0f});
    for (const float y : {-1.0f, 1.0f})
        places.push_back(part.at + Vec{0.0f, y * (radius + tip_height + step + air)});
    return places;
}

/// All discs, then the numbers of those that are out, then the others', then by how much they are
/// out: each where there is room. The list says all of it.
void draw_plan(DrawingList& list, const std::vector<PlanPart>& parts, Box within, Vec centre,
               float radius, LengthUnit units, double tolerance) {
    LabelPlacer labels(within);
    for (const PlanPart& part : parts) draw_disc(list, part, radius, part.way(units), tolerance);
    for (const bool out : {true, false})
        for (const PlanPart& part : parts)
            if (part.out() == out)
                write_free(list, labels, {&part.at, 1}, part.number, small_bold_text, Role::card);
    for (const PlanPart& part : parts) {
        const int way = part.way(units);
        labels.take(around(part.at, 2.0f * radius, 2.0f * radius));
        labels.take(around(part.at + Vec{0.0f, (way > 0 ? -1.0f : 1.0f) * radius},
                           2.0f * tip_half_width, way == 0 ? 0.0f : 2.0f * tip_height));
    }
    for (const PlanPart& part : parts) {
        if (!part.out()) continue;
        const std::string words = signed_length(part.high(), units, false);
        const float half_width = 0.5f * list.type().width(small_bold_text, words);
        write_free(list, labels, places_of_value(part, centre, radius, half_width), words,
                   small_bold_text);
    }
}

const PartOff* find_part(const std::vector<PartOff>& parts, std::uint32_t number) {
    const auto found = std::find_if(parts.begin(), parts.end(),
                                    [&](const PartOff& p) { return p.number == number; });
    return found == parts.end() ? nullptr : &*found;
}

/// What is said of one head or platen; `index` is its place among them.
void part_card(const RegisterView& view, bool head, std::size_t index, Rows& rows) {
    const Language language = rows.canvas.language();
    const JobLevelling& found = view.levelling;
    const PartOff& part = (head ? found.heads : found.platens)[index];
    std::vector<std::string> lines =
        off_text(language, view.units(), part, head, found.targets.tolerance);
    if (std::string points = points_text(language, view.units(), part, head); !points.empty())
        lines.push_back(std::move(points));
    if (!head && part.out)
        for (std::string& turn : level_turns_text(language, platen_turns(view.job(), found, index),
                                                  view.job().press.level_screws))
            lines.push_back(std::move(turn));
    said_card(
        (head ? "register/level/head/" : "register/level/platen/") + std::to_string(part.number),
        part_name(view.job(), language, part, head), lines, part.out ? Role::mind : Role::edge,
        rows);
}

void parts_list(const RegisterView& view, bool heads, Rows& rows) {
    const std::size_t count = (heads ? view.levelling.heads : view.levelling.platens).size();
    if (count == 0) return;
    rows.text(rows.canvas.word(heads ? Word::level_heads : Word::level_platens), title_text);
    for (std::size_t i = 0; i < count; ++i) part_card(view, heads, i, rows);
}

std::string reading_text(const RegisterView& view, const HeightReading& reading) {
    const Language language = view.state().looks.language;
    return say(language, Word::level_reading,
               {std::to_string(reading.platen),
                word(language, point_word(view.job().press.height_points, {reading.x, reading.y})),
                format_fine_length(reading.height, view.units())});
}

void strays_list(const RegisterView& view, Rows& rows) {
    const std::vector<StrayReading>& strays = view.levelling.levelling.strays;
    if (strays.empty()) return;
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::level_strays), title_text, Role::mind);
    for (const StrayReading& stray : strays)
        rows.text(stray_text(view.job(), canvas.language(), view.units(), stray),
                  {TypeSize::body, false}, Role::ink, 6.0f);
}

/// Platen by a stepper, point by a choice, the gap on the pad.
void add_part(const RegisterView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const RegisterState& state = view.state().registering;
    rows.text(canvas.word(Word::level_add), title_text);
    const auto most = static_cast<std::uint32_t>(view.job().press.stations);
    const std::uint32_t before = state.platen > 1 ? state.platen - 1 : most;
    const std::uint32_t after = state.platen < most ? state.platen + 1 : 1;
    stepper_row(
        "register/platen-chosen",
        say(canvas.language(), Word::level_platen, {std::to_string(state.platen)}),
        {"register/previous-platen", Word::level_previous_platen,
         ChooseHeightPlace{before, state.point}},
        {"register/next-platen", Word::level_next_platen, ChooseHeightPlace{after, state.point}},
        {}, rows);
    rows.space(4.0f);
    const auto point = [&](const char* name, Word words, HeightPoint at) {
        return Choice{name, std::string(canvas.word(words)),
                      canvas.action(ChooseHeightPlace{state.platen, at}), state.point == at};
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
        if (first) rows.text(canvas.word(Word::level_readings), title_text);
        first = false;
        wide_button("register/reading/" + std::to_string(i + 1), reading_text(view, readings[i]),
                    canvas.word(Word::level_remove), ButtonLook::plain, RemoveHeightReading{i}, rows);
    }
}

/// Which parts' tilts aren't known, and which can't be compared.
void known_notes(const Levelling& levelling, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const auto any = [&](LevelReason reason) {
        return std::any_of(levelling.groups.begin(), levelling.groups.end(),
                           [&](const LevelGroup& group) { return group.reason == reason; });
    };
    if (any(LevelReason::few_points)) rows.text(canvas.word(Word::level_few_points), small_text);
    if (any(LevelReason::few_points_of_some))
        rows.text(canvas.word(Word::level_few_of_some), small_text);
    if (levelling.groups.size() > 1)
        rows.text(
            say(canvas.language(), Word::level_groups, {std::to_string(levelling.groups.size())}),
            small_text, Role::mind);
}

} // namespace

void register_heights_drawing(const RegisterView& view, Box box, Canvas& canvas) {
    DrawingList& list = canvas.list();
    Thing& whole = list.thing("register/plan", ThingRole::image, box);
    whole.label.assign(canvas.word(Word::level_drawing));
    const LengthUnit units = view.units();
    Box plan = box.inset(8.0f);
    const std::string legend = say(canvas.language(), Word::level_legend, {length_unit_name(units)});
    whole.hint = legend;
    plan.y1 -= caption(box, legend, canvas);
    const JobLevelling& found = view.levelling;
    // Large text may leave next to nothing.
    const float radius = 0.5f * std::max(1.0f, std::min(plan.width(), plan.height()));
    const float disc = std::min(largest_disc * canvas.scale(), largest_disc_share * radius);
    const Vec centre = plan.centre();
    const PressProfile& press = view.job().press;
    const auto at = [&](int station, float share) {
        const Point place = place_of_station(press, station).to_press({0.0, 0.0});
        const double far = std::max(1.0, std::hypot(place.x, place.y));
        return Vec{centre.x + static_cast<float>(place.x / far) * share * radius,
                   centre.y - static_cast<float>(place.y / far) * share * radius};
    };
    list.circle(centre, platen_ring * radius, paint(Role::edge), 1.2f);
    std::vector<PlanPart> parts;
    for (int station = 1; station <= press.stations; ++station)
        parts.push_back({at(station, platen_ring), false, std::to_string(station),
                         find_part(found.platens, static_cast<std::uint32_t>(station))});
    for (const Head& head : view.job().heads)
        parts.push_back({at(head.station, head_ring), true, std::to_string(head.station),
                         find_part(found.heads, head.id)});
    draw_plan(list, parts, plan, centre, disc, units, found.targets.tolerance);
}

void register_heights_panel(const RegisterView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    said_verdict("register/level",
                 levelling_verdict(canvas.language(), view.units(), view.job(), view.levelling),
                 rows);
    rows.text(canvas.word(Word::level_caution), small_text, Role::mind, 10.0f);
    known_notes(view.levelling.levelling, rows);
    add_part(view, rows);
    strays_list(view, rows);
    parts_list(view, true, rows);
    parts_list(view, false, rows);
    readings_list(view, rows);
}

} // namespace carriageway
