#include "app/picture_of.h"

#include <algorithm>
#include <iterator>

#include <imgui.h>

#include "app/drawing/fonts.h"
#include "app/drawing/picture.h"
#include "app/drawing/png_file.h"
#include "app/program.h"
#include "app/records/fault_book.h"
#include "core/cycle.h"

namespace carriageway {

namespace {

/// Opens one part of a panel and nothing else of it, with room for it.
void open_section(Program& program, Section section) {
    program.state().open.fill(false);
    program.state().tall_sheet = true;
    program.act(ToggleSection{section});
}

void show_mode(Program& program, RegisterMode mode) {
    program.act(GoTo{Place::registration});
    program.act(ChooseRegisterMode{mode});
}

/// The walk at the head that was chosen.
void show_walk(Program& program) {
    const HeadId head = program.state().head;
    program.act(OpenDay{DayPart::walk});
    if (head != 0) program.act(WalkTo{head});
}

/// The stations with the best placement found.
void show_stations(Program& program) {
    program.act(OpenDay{DayPart::stations});
    program.act(SearchStations{});
}

/// A symptom that the demonstration explains, at the head that was chosen.
void show_faults(Program& program) {
    program.act(FindFaultAt{program.state().head});
    program.act(ChooseSymptom{find_symptom(fault_lore().book, "no_stroke")});
}

/// A call about it, with what mends it told.
void show_call(Program& program) {
    const HeadId head = program.state().head;
    program.act(BeginCall{0});
    program.act(ChooseCallSymptom{find_symptom(fault_lore().book, "no_stroke")});
    program.act(ChooseCallHead{head});
    if (const auto cause = find_cause(fault_lore().book, "both_sensors"))
        program.act(TellFix{*cause, true});
}

/// A cycle held at a moment of the chosen head, or of the first: so far into a step of this kind.
void show_cycle(Program& program, StepKind kind, double share) {
    program.act(OpenCycle{true});
    program.act(PlayCycle{false});
    const Job& job = program.session().job();
    if (job.heads.empty()) return;
    const HeadId chosen = program.state().head;
    const HeadId head = chosen != 0 ? chosen : job.heads.front().id;
    const HeadCycle cycle = head_cycle(job, program.session().assessment(), head);
    if (kind == StepKind::index) program.state().cycle.time = share * cycle.index;
    for (const RateStep& step : cycle.steps)
        if (step.kind == kind) program.state().cycle.time = step.start + share * step.length;
}

/// What can be drawn: its name, how one gets there once the head is chosen, and the thing that is
/// brought to the top of its panel.
struct Shown {
    const char* name;
    void (*go)(Program&);
    const char* top = nullptr;
};

constexpr Shown everything_shown[] = {
    {"press", [](Program&) {}},
    {"side", [](Program& program) { open_section(program, Section::side); }, "section/side"},
    {"off-contact", [](Program& program) { open_section(program, Section::off_contact); }, "section/off-contact"},
    {"air", [](Program& program) { open_section(program, Section::pressure); }, "section/pressure"},
    {"ink", [](Program& program) { open_section(program, Section::deposit); }, "section/deposit"},
    {"heat",
     [](Program& program) {
         program.act(ChooseHead{0}); // it is the whole press's
         open_section(program, Section::heat);
     },
     "section/heat"},
    {"register", [](Program& program) { show_mode(program, RegisterMode::marks); }},
    {"platens", [](Program& program) { show_mode(program, RegisterMode::platens); }},
    {"heights", [](Program& program) { show_mode(program, RegisterMode::heights); }},
    {"rate", [](Program& program) { program.act(GoTo{Place::rate}); }},
    {"measure", [](Program& program) { program.act(OpenMeasuring{Field::measured_separation}); }},
    {"run", [](Program& program) { program.act(OpenDay{DayPart::contents}); }},
    {"stations", [](Program& program) { show_stations(program); }},
    {"walk", [](Program& program) { show_walk(program); }},
    {"lists", [](Program& program) { program.act(OpenDay{DayPart::lists}); }},
    {"recipe", [](Program& program) { program.act(OpenDay{DayPart::recipe}); }},
    {"sheet", [](Program& program) { program.act(OpenDay{DayPart::paper}); }},
    {"runs", [](Program& program) { program.act(OpenDay{DayPart::runs}); }},
    {"cycle-flood", [](Program& program) { show_cycle(program, StepKind::flood, 0.6); }},
    {"cycle", [](Program& program) { show_cycle(program, StepKind::print, 0.55); }},
    {"cycle-turn", [](Program& program) { show_cycle(program, StepKind::index, 0.42); }},
    {"cycle-done", [](Program& program) { show_cycle(program, StepKind::lift, 0.4); }},
    {"practice", [](Program& program) { program.act(ShowPractice{PracticePart::exercises}); }},
    {"faults", [](Program& program) { show_faults(program); }},
    {"call", [](Program& program) { show_call(program); }},
    {"jobs", [](Program& program) { program.act(GoTo{Place::jobs}); }},
};

/// Scrolls the panel so far that a thing in it stands at its top.
void bring_up(Program& program, const char* name) {
    const DrawingList& list = program.frame().list;
    for (const Thing& thing : list.things())
        if (thing.name == name) program.state().panel_scroll += thing.box.y0 - list.clip_box(thing.clip).y0;
}

} // namespace

std::vector<std::string> picture_places() {
    std::vector<std::string> names;
    for (const Shown& shown : everything_shown)
        names.emplace_back(shown.name);
    return names;
}

DrawnPicture picture_of(const PictureRequest& request) {
    Session session(request.job, request.language);
    Looks looks;
    looks.language = request.language;
    looks.units = request.unit;
    looks.theme = request.dark ? ThemeChoice::dark : ThemeChoice::light;
    session.set_looks(looks);
    Program program(session);
    ImFontAtlas atlas;
    Fonts fonts(atlas);
    const float ratio = static_cast<float>(request.scale);
    fonts.rebuild(looks.text_scale, ratio);
    Surface surface;
    surface.width = static_cast<int>(std::lround(request.width * request.scale));
    surface.height = static_cast<int>(std::lround(request.height * request.scale));
    surface.pixels_per_dp = ratio;
    program.build(surface, 0.0, request.dark, fonts);
    if (const Head* head = head_on(session.job(), request.station)) program.choose_head(head->id);
    const auto* const shown = std::find_if(std::begin(everything_shown), std::end(everything_shown),
                                           [&](const Shown& each) { return each.name == request.place; });
    if (shown != std::end(everything_shown)) shown->go(program);
    // The second frame is past every movement of the camera.
    program.build(surface, 100.0, request.dark, fonts);
    if (shown != std::end(everything_shown) && shown->top) bring_up(program, shown->top);
    program.build(surface, 200.0, request.dark, fonts);
    const Picture picture =
        paint_picture(program.frame().list, program.theme(), fonts, surface.width, surface.height);
    std::vector<std::uint8_t> bytes;
    if (const std::error_code error = encode_png(picture, bytes)) return {{}, error.message()};
    return {std::string(bytes.begin(), bytes.end()), {}};
}

} // namespace carriageway
