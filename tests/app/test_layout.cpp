// What every frame must keep to, at every size, language and text size: targets large enough,
// no text cut or laid over other text, every colour pair with its contrast.
#include <map>
#include <set>

#include <catch2/catch_test_macros.hpp>

#include "app/records/job_link.h"
#include "app/views/measure_words.h"
#include "tests/app/driver.h"
#include "tests/app/visit_call.h"
#include "tests/app/visit_cycle.h"
#include "tests/app/visit_exercises.h"
#include "tests/app/visit_faults.h"
#include "tests/app/visit_first.h"
#include "tests/app/visit_lists.h"
#include "tests/app/visit_paper.h"
#include "tests/app/visit_rate.h"
#include "tests/app/visit_recipe.h"
#include "tests/app/visit_runs.h"
#include "tests/app/visit_stations.h"
#include "tests/app/visit_trainees.h"
#include "tests/app/visit_walk.h"

using namespace carriageway;

namespace {

#ifdef CARRIAGEWAY_FEWER_SAMPLES
// With sanitizers only the ends: what memory does hangs on no size between them.
constexpr Language languages[] = {Language::english, Language::pseudo};
constexpr WindowSize sizes[] = {small_phone, desktop};
constexpr float scales[] = {0.8f, 2.0f}, target_scales[] = {0.8f, 2.0f};
#else
constexpr Language languages[] = {Language::english, Language::spanish, Language::pseudo};
constexpr WindowSize sizes[] = {small_phone, phone, tablet, desktop};
constexpr float scales[] = {0.8f, 1.0f, 1.3f, 1.6f, 2.0f}, target_scales[] = {0.8f, 1.0f, 2.0f};
#endif

const char* name_of(Language language) {
    return language == Language::english ? "English" : language == Language::spanish ? "Spanish" : "pseudo";
}

/// The share sheet, and a job from a link: shown, left and gone back to.
template <class Scrolled, class Look>
void visit_links(Driver& driver, Scrolled scrolled, Look look) {
    driver.as_in_a_browser();
    ViewState& state = driver.program().state();
    state.notice.reset();
    state.open.fill(false);
    Job sent = demo_job();
    sent.name = "Harbour fair tote, second print";
    driver.open_link("#" + job_link_fragment(sent));
    look("visit");
    driver.program().choose_head(head_on(sent, 7)->id);
    driver.settle();
    look("visit, head 7");
    driver.program().act(OpenPad{state.head, Field::machine_stop});
    driver.settle();
    look("visit, number pad");
    driver.program().act(ChooseHead{0});
    driver.program().act(ShareJob{0});
    driver.settle();
    scrolled("share");
    state.share->link.clear();
    state.share->code.reset();
    state.share->too_large = true;
    driver.settle();
    scrolled("share, too large");
    driver.program().act(CloseShare{});
    driver.program().act(LeaveVisit{});
    driver.settle();
    look("visit left");
    driver.program().act(CloseNotice{});
    driver.program().act(GoTo{Place::jobs});
    driver.settle();
    scrolled("jobs, visit left");
    driver.program().act(GoTo{Place::press});
}

/// The sheet for measuring: its list, and numbers with readings, results and refusals.
template <class Scrolled, class Look>
void visit_measuring(Driver& driver, Scrolled scrolled, Look look) {
    Program& program = driver.program();
    program.act(OpenMeasuring{Field::count});
    driver.settle();
    scrolled("measure");
    const auto show = [&](Field field, std::vector<std::vector<double>> values, const std::string& where) {
        program.act(ShowProcedure{*target_for(field)});
        Taking& taking = program.state().measuring.taken.back();
        for (std::size_t i = 0; i < values.size(); ++i) taking.lists[i].values = values[i];
        driver.settle();
        scrolled(where);
    };
    show(Field::measured_separation,
         {{-35.0, -35.0, -36.0, -34.0, -35.0}, {35.0, 36.0, 35.0, 35.0, 53.0}}, "measure, stands off");
    program.act(AddReading{1});
    program.state().pad->trouble = say(driver.session().looks().language, Word::number_not_read, {"12 thumbs"});
    driver.settle();
    look("measure, typing");
    program.state().pad.reset();
    show(Field::squeegee_pivot_offset,
         {{radians(5.0)}, {20.7, 20.6, 20.7}, {radians(25.0)}, {42.4, 42.5, 42.5}}, "measure, two angles");
    show(Field::sensor_latency, {{300.0}, {10.0}, {900.0}, {60.0}}, "measure, latency");
    show(Field::cooling_time, {{22.0}, {40.0, 40.0, 40.0}, {41.0, 41.0, 41.0}, {60.0}}, "measure, refused");
    show(Field::ruler_graduation, {{100.0}, {3.0}}, "measure, once");
    show(Field::sensor_hysteresis, {}, "measure, gaps");
    program.act(ShowProcedure{{Field::count, ScrewPlace{false, 0}}});
    driver.settle();
    scrolled("measure, screw");
    program.act(CloseMeasuring{});
    driver.settle();
}

/// The Register place: empty, with marks to turn by and a second round, prints by platen, heights.
template <class Scrolled, class Look>
void visit_register(Driver& driver, Scrolled scrolled, Look look) {
    Program& program = driver.program();
    const Job before = driver.session().job();
    const HeadId id = head_on(before, 7)->id;
    program.choose_head(id);
    program.act(GoTo{Place::registration});
    driver.settle();
    look("register, empty");
    std::vector<MarkRound> rounds(2);
    for (MarkRound& round : rounds)
        for (const Point corner : {Point{-150.0, 200.0}, Point{150.0, 200.0}, Point{-150.0, -200.0}, Point{150.0, -200.0}})
            round.marks.push_back({corner, {corner.x + 0.8 - 0.003 * corner.y, corner.y + 0.5 + 0.003 * corner.x}});
    rounds.front().turned = {0.5, -0.25, 1.0};
    program.act(DoEdit{Edit{SetRounds{id, rounds}}});
    program.act(ChooseMark{0});
    driver.settle();
    scrolled("register, marks");
    for (std::size_t i = 0; i < 12; ++i) {
        const double off = 0.01 * static_cast<double>(i * 7 % 5) + (i % 4 == 2 ? 0.9 : 0.0);
        rounds.push_back({static_cast<int>(i % 4) + 1, static_cast<int>(i / 4) + 1,
                          {{{-100.0, 0.0}, {-100.0, off}}, {{100.0, 0.0}, {100.0, off}}}, {}});
    }
    program.act(DoEdit{Edit{SetRounds{id, rounds}}});
    program.act(ChooseRegisterMode{RegisterMode::platens});
    driver.settle();
    scrolled("register, prints");
    std::vector<HeightReading> readings;
    for (const int station : {5, 7})
        for (std::uint32_t platen = 1; platen <= 4; ++platen)
            for (const Point at : {Point{-250.0, -350.0}, Point{250.0, -350.0}, Point{0.0, 350.0}})
                readings.push_back({platen, head_on(before, station)->id, at.x, at.y, 3.0 + (platen == 2 ? 0.7 : 0.01 * platen)});
    program.act(DoEdit{Edit{SetHeightReadings{readings}}});
    program.act(ChooseRegisterMode{RegisterMode::heights});
    driver.settle();
    scrolled("register, heights");
    program.act(OpenRegisterPad{id, {RegisterNumber::height, 0}});
    driver.settle();
    look("register, pad");
    program.state().pad.reset();
    for (int edits = 0; edits < 3; ++edits) program.act(Undo{});
    program.act(ChooseRegisterMode{RegisterMode::marks});
    program.act(GoTo{Place::press});
    program.act(ChooseHead{0});
    driver.settle();
    CHECK(driver.session().job() == before);
}

/// Every state of the program that a layout test looks at; `look` is called for each frame.
template <class Look>
void visit_frames(Driver& driver, Look look) {
    const auto scrolled = [&](const std::string& where) {
        ViewState& state = driver.program().state();
        for (int page = 0; page < 90; ++page) {
            look(where + ", page " + std::to_string(page));
            const auto sum = [&] {
                return state.panel_scroll + state.jobs_scroll + state.share_scroll + state.measure_scroll +
                       state.day_scroll + state.practice_scroll;
            };
            const float before = sum();
            const bool measuring = state.measuring.open && !state.share;
            const bool day = state.day.open && !state.share && !measuring;
            // Two thirds of what is seen at a time: everything comes into sight whole.
            float step = 150.0f;
            for (const ScrollArea& area : driver.program().frame().scrolls)
                if (!area.covered) step = std::max(step, 0.66f * area.box.height());
            const bool practice = state.place == Place::practice && !state.share && !measuring && !day;
            state.panel_scroll += state.share || measuring || day || practice ? 0.0f : step;
            state.practice_scroll += practice ? step : 0.0f;
            state.day_scroll += day ? step : 0.0f;
            state.measure_scroll += measuring ? step : 0.0f;
            state.share_scroll += state.share ? step : 0.0f;
            state.jobs_scroll += state.place == Place::jobs && !day ? step : 0.0f;
            driver.settle();
            if (sum() <= before + 1.0f) break;
        }
        state.panel_scroll = state.jobs_scroll = state.share_scroll = state.measure_scroll = 0.0f;
        state.day_scroll = state.practice_scroll = 0.0f;
        driver.settle();
    };
    scrolled("press");
    for (const int station : {2, 5, 6, 7, 8, 9}) {
        driver.program().choose_head(head_on(driver.session().job(), station)->id);
        driver.settle();
        // Both stops are within reach at every size.
        for (const char* stop : {"/operator-stop", "/machine-stop"})
            CHECK(driver.has("head/" + std::to_string(station) + stop));
        look("head " + std::to_string(station));
    }
    driver.program().state().open.fill(true);
    driver.program().choose_head(head_on(driver.session().job(), 7)->id);
    driver.settle();
    scrolled("head 7, all open");
    const HeadId head = driver.program().state().head;
    for (const Field field : {Field::machine_stop, Field::squeegee_angle, Field::flood_pivot_height}) {
        driver.program().act(OpenPad{head, field});
        driver.program().state().pad->trouble =
            say(driver.session().looks().language, Word::number_not_read, {"12 thumbs"});
        driver.settle();
        look("number pad");
        driver.program().state().pad.reset();
    }
    driver.program().act(ChooseHead{0});
    driver.settle();
    scrolled("press, all open");
    visit_cycle(driver, look);
    visit_measuring(driver, scrolled, look);
    visit_register(driver, scrolled, look);
    visit_rate(driver, scrolled, look);
    visit_stations(driver, scrolled, look);
    visit_walk(driver, scrolled, look);
    visit_lists(driver, scrolled, look);
    visit_recipe(driver, scrolled, look);
    visit_paper(driver, scrolled, look);
    visit_runs(driver, scrolled, look);
    visit_exercises(driver, scrolled, look);
    visit_trainees(driver, scrolled, look);
    visit_call(driver, scrolled, look);
    visit_faults(driver, scrolled, look);
    visit_first(driver, scrolled, look);
    driver.program().act(GoTo{Place::jobs});
    driver.program().act(ChooseJob{driver.session().rows().front().id});
    driver.settle();
    scrolled("jobs");
    driver.program().notice("The library can't be used: the disk is full.", true, 1);
    driver.settle();
    look("notice");
    visit_links(driver, scrolled, look);
}

/// The part of a page that words may go beyond because the page scrolls there. A drawing in a page
/// keeps to its own frame as well, so only that side is the page's which lies on the page's edge.
struct Scrolled {
    bool above = false;
    bool below = false;
};

Scrolled scrolled_at(const Frame& frame, const Box& clip) {
    Scrolled at;
    for (const ScrollArea& area : frame.scrolls) {
        if (clip.x0 < area.box.x0 - 1.0f || clip.x1 > area.box.x1 + 1.0f) continue;
        at.above = at.above || std::abs(area.box.y0 - clip.y0) < 1.0f;
        at.below = at.below || std::abs(area.box.y1 - clip.y1) < 1.0f;
    }
    return at;
}

struct Words {
    std::string text;
    Box box;
    int clip;
    int layer;
};

std::vector<Words> words_of(const DrawingList& list) {
    std::vector<Words> out;
    for (const Mark& mark : list.marks()) {
        if (mark.kind != MarkKind::text) continue;
        const Vec at = list.points(mark)[0];
        out.push_back({std::string(list.words(mark)), {at.x, at.y, at.x + mark.extent.x, at.y + mark.extent.y},
                       mark.clip, mark.layer});
    }
    return out;
}

std::string place_of(const Words& words) {
    return "\"" + words.text + "\" at " + std::to_string(static_cast<int>(words.box.x0)) + "," +
           std::to_string(static_cast<int>(words.box.y0));
}

/// Names that people type may be shortened; nothing else may.
bool may_shorten(const Driver& driver, const std::string& text) {
    const std::string start = text.substr(0, text.size() - 3);
    const auto begins = [&](const std::string& name) {
        return !start.empty() && name.find(start.substr(0, std::min<std::size_t>(6, start.size()))) != std::string::npos;
    };
    Driver& d = const_cast<Driver&>(driver);
    const Job& job = d.session().job();
    if (begins(job.name) || begins(job.press.name)) return true;
    for (const Head& head : job.heads)
        if (text.find(head.colour.substr(0, 4)) != std::string::npos || begins(std::to_string(head.station) + " " + head.colour))
            return true;
    for (const JobRow& row : d.session().rows())
        if (begins(row.colours) || begins(row.press + " · " + row.colours)) return true;
    return false;
}

void check_text(Driver& driver, const std::string& where, std::set<std::string>& faults) {
    const Frame& frame = driver.program().frame();
    const DrawingList& list = frame.list;
    const std::vector<Words> words = words_of(list);
    for (const Words& w : words) {
        const Box clip = list.clip_box(w.clip);
        const Scrolled scrolls = scrolled_at(frame, clip);
        if ((scrolls.above && w.box.y1 < clip.y0) || (scrolls.below && w.box.y0 > clip.y1))
            continue; // scrolled away
        if (w.box.x0 < clip.x0 - 0.5f || w.box.x1 > clip.x1 + 0.5f)
            faults.insert(where + ": cut at the side: " + place_of(w));
        if ((!scrolls.above && w.box.y0 < clip.y0 - 0.5f) ||
            (!scrolls.below && w.box.y1 > clip.y1 + 0.5f))
            faults.insert(where + ": cut above or below: " + place_of(w));
        if (w.text.size() >= 3 && w.text.ends_with("…") && !may_shorten(driver, w.text))
            faults.insert(where + ": shortened: " + place_of(w));
    }
    for (const UnseenLine& line : frame.unseen) {
        const Scrolled scrolls = scrolled_at(frame, line.clip);
        const bool away = (scrolls.above && line.box.y1 <= line.clip.y0) ||
                          (scrolls.below && line.box.y0 >= line.clip.y1);
        if (!away) faults.insert(where + ": not written: " + place_of({"…", line.box, 0, 0}));
    }
    for (std::size_t i = 0; i < words.size(); ++i)
        for (std::size_t j = i + 1; j < words.size(); ++j) {
            const Words &a = words[i], &b = words[j];
            if (a.layer != b.layer) continue;
            const Box seen_a = common(a.box, list.clip_box(a.clip)), seen_b = common(b.box, list.clip_box(b.clip));
            const Box both = common(seen_a, seen_b);
            if (both.width() > 1.0f && both.height() > 1.0f)
                faults.insert(where + ": overlap: " + place_of(a) + " and " + place_of(b));
        }
}

/// Words that begin on a button must end on it.
void check_buttons(Driver& driver, const std::string& where, std::set<std::string>& faults) {
    const DrawingList& list = driver.list();
    for (const Thing& thing : list.things()) {
        if (thing.role != ThingRole::button && thing.role != ThingRole::tab) continue;
        if (thing.layer == 0) continue; // heads of the diagram are no buttons with words on them
        for (const Words& w : words_of(list))
            if (w.layer == thing.layer && w.clip == thing.clip && thing.box.contains(w.box.centre()) &&
                (w.box.x0 < thing.box.x0 - 0.5f || w.box.x1 > thing.box.x1 + 0.5f ||
                 w.box.y0 < thing.box.y0 - 0.5f || w.box.y1 > thing.box.y1 + 0.5f))
                faults.insert(where + ": leaves " + thing.name + ": " + place_of(w));
    }
}

/// Panels hide what lies below them: words of a lower layer must not run under one.
void check_hidden(Driver& driver, const std::string& where, std::set<std::string>& faults) {
    const DrawingList& list = driver.list();
    for (const Words& w : words_of(list))
        for (const Thing& thing : list.things()) {
            if (thing.role != ThingRole::region || thing.layer <= w.layer || thing.layer > 1) continue;
            const Box seen = common(thing.box, list.clip_box(thing.clip));
            const Box both = common(common(w.box, list.clip_box(w.clip)), seen);
            if (both.width() > 1.0f && both.height() > 1.0f)
                faults.insert(where + ": under " + thing.name + ": " + place_of(w));
        }
}

void check_targets(Driver& driver, const std::string& where, std::set<std::string>& faults) {
    for (const Thing& thing : driver.list().things()) {
        if (!thing.enabled || (thing.action < 0 && thing.hold < 0)) continue;
        const bool fix = thing.name.ends_with("/fix") || thing.name.ends_with("-stop") ||
                         thing.name == "set-every-stop" || thing.name == "set-this-head";
        const float least = fix ? 60.0f : 44.0f;
        // A head on the whole press is as large as its drawing; the list of heads beside it has a
        // row for each, which this test also measures.
        if (thing.name.starts_with("head/") && thing.name.find('/', 5) == std::string::npos) continue;
        if (thing.target.width() < least - 0.01f || thing.target.height() < least - 0.01f)
            faults.insert(where + ": " + thing.name + " is " + std::to_string(thing.target.width()) + " x " +
                          std::to_string(thing.target.height()));
    }
}

std::string file_name(std::string where) {
    for (char& c : where)
        if (!std::isalnum(static_cast<unsigned char>(c))) c = '-';
    return where;
}

std::string listed(const std::set<std::string>& faults) {
    std::string out = std::to_string(faults.size()) + " faults";
    int shown = 0;
    for (const std::string& fault : faults)
        if (++shown <= 60) out += "\n  " + fault;
    return out;
}

} // namespace

TEST_CASE("Every target is large enough for a finger at every size and text size") {
    std::set<std::string> faults;
    int frames = 0, visits = 0;
    for (const WindowSize& size : sizes)
        for (const float scale : target_scales) {
            ++visits;
            Driver driver(size);
            driver.set_looks(Language::english, scale);
            visit_frames(driver, [&](const std::string& where) {
                ++frames;
                check_targets(driver, std::string(size.name) + " " + std::to_string(scale) + " " + where, faults);
            });
        }
    INFO(listed(faults));
    CHECK(frames > 25 * visits);
    CHECK(faults.empty());
}

TEST_CASE("No text is cut, shortened or laid over other text") {
    for (const WindowSize& size : sizes)
        for (const Language language : languages) {
            std::set<std::string> faults;
            int frames = 0;
            for (const float scale : scales) {
                Driver driver(size);
                driver.set_looks(language, scale);
                visit_frames(driver, [&](const std::string& where) {
                    ++frames;
                    const std::string here = std::string(size.name) + " " + name_of(language) + " " +
                                             std::to_string(static_cast<int>(scale * 100)) + " % " + where;
                    check_text(driver, here, faults);
                    check_hidden(driver, here, faults);
                    check_buttons(driver, here, faults);
                    if (scale == 2.0f || language == Language::pseudo) driver.picture(file_name(here));
                });
            }
            INFO(listed(faults));
            CHECK(frames > 20 * static_cast<int>(std::size(scales)));
            CHECK(faults.empty());
        }
}

TEST_CASE("Every pair of text colour and ground in use passes its contrast") {
    // WCAG 2.2, 1.4.3: 4.5, or 3 for large text (24 px, or 18.66 px bold).
    std::map<std::pair<Role, Role>, float> pairs; // smallest em seen
    for (const WindowSize& size : sizes)
        for (const ThemeChoice theme : {ThemeChoice::light, ThemeChoice::dark}) {
            Driver driver(size);
            driver.set_looks(Language::english, 1.0f, theme);
            visit_frames(driver, [&](const std::string&) {
                for (const Mark& mark : driver.list().marks()) {
                    if (mark.kind != MarkKind::text || mark.colour.own) continue;
                    const float em = em_of(mark.style.size) * (mark.style.bold ? 24.0f / 18.66f : 1.0f);
                    const auto key = std::pair(mark.colour.role, mark.on);
                    const auto found = pairs.find(key);
                    if (found == pairs.end() || found->second > em) pairs[key] = em;
                }
            });
        }
    CHECK(pairs.size() > 12);
    for (const auto& [pair, em] : pairs)
        for (const Theme theme : {Theme::light, Theme::dark}) {
            INFO("role " << static_cast<int>(pair.first) << " on " << static_cast<int>(pair.second)
                         << (theme == Theme::light ? ", light" : ", dark"));
            CHECK(contrast(colour_of(theme, pair.first), colour_of(theme, pair.second)) >=
                  (em >= 24.0f ? 3.0 : 4.5));
        }
}
