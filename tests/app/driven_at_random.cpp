#include "tests/app/driven_at_random.h"

#include <array>

#include "app/records/exchange.h"
#include "app/records/job_link.h"
#include "tests/scratch_folder.h"

namespace carriageway {

DrivenAtRandom::DrivenAtRandom(Driver& driver, const std::string& folder, std::uint32_t seed)
    : driver_(driver), job_file_(folder + "/dropped.json"), random_(seed) {
    write_bytes(job_file_, write_job(demo_job()));
}

std::size_t DrivenAtRandom::below(std::size_t count) { return random_() % count; }

float DrivenAtRandom::share() { return static_cast<float>(below(1001)) / 1000.0f; }

const Thing* DrivenAtRandom::any_thing(bool (*wanted)(const Thing&)) {
    std::size_t many = 0;
    for (const Thing& thing : driver_.list().things()) many += wanted(thing);
    if (many == 0) return nullptr;
    std::size_t left = below(many);
    for (const Thing& thing : driver_.list().things())
        if (wanted(thing) && left-- == 0) return &thing;
    return nullptr;
}

Vec DrivenAtRandom::within(const Thing& thing) {
    return {thing.box.x0 + share() * thing.box.width(), thing.box.y0 + share() * thing.box.height()};
}

std::string DrivenAtRandom::touch() {
    const Thing* thing = any_thing([](const Thing& t) { return t.action >= 0 && t.enabled; });
    if (!thing) return "nothing to touch";
    const std::string name = thing->name;
    driver_.window().tap(within(*thing), 1);
    return "touch " + name;
}

std::string DrivenAtRandom::drag() {
    const Thing* thing = any_thing([](const Thing& t) { return t.hold >= 0; });
    const Box window = driver_.list().window();
    const Vec from = thing ? within(*thing) : Vec{share() * window.width(), share() * window.height()};
    const std::string name = thing ? thing->name : "the drawing";
    const Vec by{(share() - 0.5f) * 200.0f, (share() - 0.5f) * 200.0f};
    driver_.window().drag(from, from + by, 1 + static_cast<int>(below(6)), 1);
    return "drag " + name;
}

std::string DrivenAtRandom::press_key() {
    const Key key = static_cast<Key>(1 + below(static_cast<std::size_t>(Key::z)));
    driver_.window().press(key, below(3) == 0, below(4) == 0);
    return "key " + std::to_string(static_cast<int>(key));
}

std::string DrivenAtRandom::type() {
    constexpr std::array<const char*, 8> texts{"412", "3 1/2 in", "blue", "ñandú", "-0", "1e9", "\"%_",
                                               "\u202Eab"};
    const std::string text = texts[below(texts.size())];
    driver_.window().type(text);
    if (below(2) == 0) driver_.window().press(Key::enter);
    return "type " + text;
}

std::string DrivenAtRandom::assist() {
    const Thing* thing =
        any_thing([](const Thing& t) { return t.action >= 0 || t.less >= 0 || t.more >= 0; });
    if (!thing) return "nothing to act on";
    InputEvent event;
    event.kind = thing->more >= 0 || thing->less >= 0 ? InputKind::step : InputKind::act;
    event.text = thing->name;
    event.by = {static_cast<float>(below(5)) - 2.0f, 0.0f};
    driver_.window().happen(event);
    return "assist " + event.text;
}

std::string DrivenAtRandom::turn_wheel() {
    const Box window = driver_.list().window();
    InputEvent event;
    event.kind = below(3) == 0 ? InputKind::pinch : InputKind::wheel;
    event.at = {share() * window.width(), share() * window.height()};
    event.by = event.kind == InputKind::pinch ? Vec{0.5f + share(), 0.0f}
                                              : Vec{0.0f, static_cast<float>(below(7)) - 3.0f};
    driver_.window().happen(event);
    return "wheel";
}

std::string DrivenAtRandom::go_somewhere() {
    constexpr std::array places{Place::press, Place::registration, Place::rate, Place::practice,
                                Place::jobs};
    const std::size_t where = below(places.size() + 2);
    if (where < places.size()) driver_.program().act(GoTo{places[where]});
    else if (where == places.size()) driver_.program().act(Undo{});
    else driver_.program().act(OpenDay{static_cast<DayPart>(below(static_cast<std::size_t>(DayPart::compare)))});
    return "go to " + std::to_string(where);
}

std::string DrivenAtRandom::change_looks() {
    constexpr std::array sizes{phone, small_phone, tablet, desktop};
    constexpr std::array languages{Language::english, Language::spanish};
    switch (below(4)) {
        case 0: driver_.program().act(ChooseLanguage{languages[below(languages.size())]}); break;
        case 1: driver_.program().act(ChooseTextScale{0.8f + 1.2f * share()}); break;
        case 2: driver_.program().act(ChooseUnits{below(2) ? LengthUnit::mm : LengthUnit::inch}); break;
        default: {
            const WindowSize size = sizes[below(sizes.size())];
            Surface surface = driver_.window().surface();
            surface.width = size.width;
            surface.height = size.height;
            driver_.window().resize(surface);
        }
    }
    return "looks";
}

std::string DrivenAtRandom::take_in() {
    if (below(2) == 0) {
        driver_.give_file(job_file_);
        return "a file";
    }
    InputEvent event;
    event.kind = InputKind::link;
    event.text = "#" + job_link_fragment(driver_.session().job());
    driver_.window().happen(event);
    return "a link";
}

std::string DrivenAtRandom::once() {
    const std::size_t what = below(100);
    std::string done;
    if (what < 45) done = touch();
    else if (what < 60) done = drag();
    else if (what < 70) done = press_key();
    else if (what < 76) done = type();
    else if (what < 84) done = assist();
    else if (what < 90) done = turn_wheel();
    else if (what < 95) done = go_somewhere();
    else if (what < 98) done = change_looks();
    else done = take_in();
    driver_.settle();
    driver_.window().forget();
    return done;
}

} // namespace carriageway
