// What stands round the table where no head is: platens, flash units, the middle of the press.
#include "app/drawing/cycle_layer.h"
#include "app/text/sentences.h"

namespace carriageway {

namespace {

void draw_platen(const DiagramInput& input, const HeadPlace& place, DrawingList& list) {
    HeadView view;
    view.aim(input.projection, place);
    fill_rect(list, view, rect_of(input.job->platen), paint(Role::station));
}

void draw_flash_bars(const DiagramInput& input, const HeadPlace& place, DrawingList& list) {
    HeadView view;
    view.aim(input.projection, place);
    const Rect platen = rect_of(input.job->platen);
    for (int i = 0; i < 5; ++i) {
        const double y = platen.lo + platen.length() * (0.14 + 0.18 * i);
        const Vec ends[] = {view.to(platen.left + 0.1 * platen.width(), y),
                            view.to(platen.right - 0.1 * platen.width(), y)};
        list.line(ends, 2, paint(Role::mind), std::max(1.5f, view.size(16.0)));
    }
}

/// Words outside the table beyond a station.
void label_station(const DiagramInput& input, const HeadPlace& place, int station, StationUse use,
                   DrawingList& list, LabelPlacer& labels) {
    const TypeStyle style{TypeSize::small, false};
    const std::string number = std::to_string(station);
    const Vec centre = input.projection.to_screen(place.to_press({0.0, input.job->platen.offset_y}));
    Vec outward = input.projection.to_screen(place.to_press({0.0, -1000.0})) -
                  input.projection.to_screen(place.to_press({0.0, 0.0}));
    outward = outward * (1.0f / std::max(length(outward), 1e-6f));
    const float half = 0.5f * input.projection.size(input.job->platen.length) + 10.0f;
    const float height = list.type().height(style);
    for (const std::string& words : {number + " " + std::string(word(input.language, use_word(use))), number}) {
        const float width = list.type().width(style, words);
        for (const float further : {0.0f, 10.0f, 22.0f}) {
            const float out = half + further +
                              0.5f * (std::abs(outward.x) * width + std::abs(outward.y) * height);
            const Box box = around(centre + outward * out, width, height);
            if (!labels.place(box)) continue;
            list.text({box.x0, box.y0}, words, style, Role::soft_ink, Role::paper);
            return;
        }
    }
}

void draw_middle(const DiagramInput& input, DrawingList& list, LabelPlacer& labels) {
    const Projection& projection = input.projection;
    const Vec centre = projection.to_screen({0.0, 0.0});
    const float radius = projection.size(0.25 * input.job->press.arm_radius);
    list.disc(centre, radius, paint(Role::station));
    if (input.projection.camera.scale >= full_detail_scale) return;
    const bool clockwise = input.job->press.turning == Turning::clockwise;
    // An arc with an arrow head says which way the table turns, beside the words.
    constexpr int steps = 20;
    Vec arc[steps + 1];
    const float ring = radius * 0.8f;
    const float sense = clockwise ? 1.0f : -1.0f;
    for (int i = 0; i <= steps; ++i) {
        const float from_top = sense * (-0.8f + 1.6f * static_cast<float>(i) / steps);
        arc[i] = centre + Vec{ring * std::sin(from_top), -ring * std::cos(from_top)};
    }
    list.line(arc, steps + 1, paint(Role::soft_ink), 2.0f);
    const Vec tip = arc[steps];
    Vec back = arc[steps - 2] - tip;
    back = back * (1.0f / std::max(length(back), 1e-6f));
    const Vec side{-back.y, back.x};
    const Vec head[] = {tip - back * 3.0f, tip + back * 6.0f + side * 5.0f,
                        tip + back * 6.0f - side * 5.0f};
    list.fill(head, 3, paint(Role::soft_ink));
    const TypeStyle style{TypeSize::small, false};
    const std::string_view words =
        word(input.language, clockwise ? Word::turns_clockwise : Word::turns_counter_clockwise);
    // On one line where it fits, else broken at its first space.
    const std::size_t space = words.find(' ');
    const bool one = list.type().width(style, words) < 1.4f * ring || space == std::string_view::npos;
    const std::string_view parts[] = {one ? words : words.substr(0, space),
                                      one ? std::string_view() : words.substr(space + 1)};
    const float line = list.type().height(style);
    float widest = 0.0f;
    for (const std::string_view part : parts) widest = std::max(widest, list.type().width(style, part));
    if (widest > 1.5f * ring || line > 0.6f * ring) return;
    if (!labels.place(around(centre, widest, (one ? 1.0f : 2.0f) * line))) return;
    float y = centre.y + (one ? 0.0f : -0.5f * line);
    for (const std::string_view part : parts) {
        if (part.empty()) continue;
        list.text_centred({centre.x, y}, part, style, Role::soft_ink, Role::station);
        y += line;
    }
}

} // namespace

void draw_stations(const DiagramInput& input, DrawingList& list, LabelPlacer& labels) {
    draw_middle(input, list, labels);
    const Job& job = *input.job;
    const bool runs = input.running && !input.running->empty();
    for (int station = 1; station <= job.press.stations; ++station) {
        if (head_on(job, station)) continue;
        const StationUse use = job.uses[static_cast<std::size_t>(station - 1)];
        const HeadPlace place = place_of_station(job.press, station);
        if (runs) draw_shirt(input, station, list);
        else draw_platen(input, place, list);
        if (use == StationUse::flash) draw_flash_bars(input, place, list);
        label_station(input, place, station, use, list, labels);
    }
    if (!runs) return;
    for (const RunningHead& running : *input.running)
        if (const Head* head = find_head(job, running.cycle.head))
            draw_shirt(input, head->station, list);
}

} // namespace carriageway
