// Words on a head: its name and verdict, what is missed, how far the bands run past the image.
#include <span>

#include "app/drawing/diagram.h"
#include "app/text/sentences.h"

namespace carriageway {

namespace {

std::string name_of_head(const Head& head) {
    return head.colour.empty() ? std::to_string(head.station)
                               : std::to_string(head.station) + " " + head.colour;
}

/// The longest beginning of `words` that fits `width`, with an ellipsis where it was cut.
std::string cut_to(const TypeMeasure& type, TypeStyle style, std::string words, float width) {
    if (type.width(style, words) <= width) return words;
    while (!words.empty()) {
        do words.pop_back();
        while (!words.empty() && (static_cast<unsigned char>(words.back()) & 0xC0) == 0x80);
        if (type.width(style, words + "…") <= width) return words + "…";
    }
    return words;
}

/// A place for a label round a frame.
struct LabelPlace {
    float outward; ///< dp beyond the frame's outer end; below 0: beside the frame instead
    float slide;   ///< share of the width to the side, or of the length along the frame
};
constexpr LabelPlace straight_out[] = {{7.0f, 0.0f}, {14.0f, 0.0f}, {22.0f, 0.0f}};
constexpr LabelPlace elsewhere[] = {{7.0f, 0.3f},   {7.0f, -0.3f},  {14.0f, 0.3f},  {14.0f, -0.3f},
                                    {-1.0f, 0.0f},  {-1.0f, 0.5f},  {-1.0f, -0.5f}, {-2.0f, 0.0f},
                                    {-2.0f, 0.5f},  {-2.0f, -0.5f}};

Vec centre_of(const HeadView& view, const LabelPlace& place, float width, float height) {
    const Vec outward = view.along() * -1.0f, across = view.across();
    const Vec origin = view.to(0.0, 0.0);
    const float along = view.size(0.5 * view.head->screen.along);
    const float beside = view.size(0.5 * view.head->screen.across);
    const auto reach = [&](Vec way) {
        return 0.5f * (std::abs(way.x) * width + std::abs(way.y) * height);
    };
    if (place.outward >= 0.0f)
        return origin + outward * (along + place.outward + reach(outward)) +
               across * (place.slide * (width + beside));
    const float sense = place.outward > -1.5f ? 1.0f : -1.0f;
    return origin + across * (sense * (beside + 7.0f + reach(across))) + outward * (place.slide * along);
}

/// Press level: the head's number and colour beside its frame, led by the verdict's mark. Straight
/// out from the frame comes first, the number alone included, so that no label can be taken for
/// its neighbour's.
void label_beside(const HeadView& view, bool verdicts, DrawingList& list, LabelPlacer& labels) {
    const Role role = verdicts ? verdict_role(*view.assessed) : Role::ink;
    const float mark = verdicts ? 11.0f * list.type().scale() : 0.0f;
    const float gap = verdicts ? 4.0f : 0.0f;
    const TypeStyle body{TypeSize::body, true}, small{TypeSize::small, true};
    const std::string full = cut_to(list.type(), body, name_of_head(*view.head), 170.0f * list.type().scale());
    const std::string number = std::to_string(view.head->station);
    const auto put = [&](const std::string& words, TypeStyle style, std::span<const LabelPlace> places) {
        const Vec extent{list.type().width(style, words), list.type().height(style)};
        const float width = mark + gap + extent.x;
        for (const LabelPlace& place : places) {
            const Box box = around(centre_of(view, place, width, extent.y), width, extent.y);
            if (!labels.place(box)) continue;
            if (verdicts)
                draw_verdict(list, {box.x0 + 0.5f * mark, box.y0 + 0.5f * extent.y}, mark, role);
            list.text({box.x0 + mark + gap, box.y0}, words, extent, style, role, Role::paper);
            return true;
        }
        return false;
    };
    if (put(full, body, straight_out) || put(full, small, straight_out) || put(number, body, straight_out))
        return;
    for (const LabelPlace& place : elsewhere)
        if (put(number, body, {&place, 1}) || put(number, small, {&place, 1})) return;
    if (verdicts) draw_verdict(list, view.to(0.0, 0.0), mark * 1.3f, role);
}

/// A label in a pill of its own, so that it reads on any hatching.
bool pill(DrawingList& list, LabelPlacer& labels, Vec centre, std::string_view words, Role role) {
    const TypeStyle style{TypeSize::small, true};
    const float width = list.type().width(style, words) + 18.0f;
    const float height = list.type().height(style) + 8.0f;
    Box box = around(centre, width, height);
    const Box within = labels.within().inset(3.0f);
    if (box.width() > within.width()) return false;
    const float dx = std::max(0.0f, within.x0 - box.x0) - std::max(0.0f, box.x1 - within.x1);
    const float dy = std::max(0.0f, within.y0 - box.y0) - std::max(0.0f, box.y1 - within.y1);
    box = {box.x0 + dx, box.y0 + dy, box.x1 + dx, box.y1 + dy};
    if (!labels.place(box)) return false;
    list.round(box, 0.5f * height, paint(Role::panel));
    list.ring(box, 0.5f * height, paint(role), 1.6f);
    list.text_centred(box.centre(), words, style, role, Role::panel);
    return true;
}

/// Where a finding's pill would point: the missed strip, the end that it is about, or the middle.
Vec anchor_of(const HeadView& view, const Finding& finding) {
    const HeadAssessment& head = *view.assessed;
    const Rect& image = head.image_bounds;
    const double middle = 0.5 * (image.left + image.right);
    switch (finding.side) {
    case Side::machine_side: return view.to(middle, std::max(head.squeegee.hi, image.hi));
    case Side::operator_side: return view.to(middle, std::min(head.squeegee.lo, image.lo));
    case Side::left: return view.to(image.left, 0.5 * (image.lo + image.hi));
    case Side::right: return view.to(image.right, 0.5 * (image.lo + image.hi));
    case Side::both: break;
    }
    return view.to(middle, std::max(image.hi, head.squeegee.hi));
}

void label_findings(const DiagramInput& input, const HeadView& view, DrawingList& list,
                    LabelPlacer& labels) {
    int shown = 0;
    for (const Finding& finding : view.assessed->findings) {
        if (finding.severity == Severity::note || shown == 3) break;
        const Passing words(
            finding_label(input.language, input.units, *input.job, *view.assessed, finding));
        const Role role = finding.severity == Severity::stop ? Role::stop : Role::mind;
        const Vec anchor = anchor_of(view, finding);
        const Vec outward = finding.side == Side::operator_side ? view.along() * -1.0f : view.along();
        for (const float by : {20.0f, 50.0f, 80.0f, -24.0f})
            if (pill(list, labels, anchor + outward * by, words, role)) {
                ++shown;
                break;
            }
    }
}

/// A dimension line along the arm with its number, from the image's edge to where both bands end.
void dimension(const DiagramInput& input, const HeadView& view, double x, double from, double to,
               DrawingList& list, LabelPlacer& labels) {
    const Vec a = view.to(x, from), b = view.to(x, to);
    if (length(b - a) < 9.0f) return;
    const std::string words = format_length(std::abs(to - from), input.units);
    const TypeStyle style{TypeSize::small, false};
    const Vec side = view.across() * (0.5f * list.type().width(style, words) + 9.0f);
    const Box box = around((a + b) * 0.5f + side, list.type().width(style, words) + 6.0f,
                           list.type().height(style));
    if (!labels.place(box)) return;
    const Vec ends[] = {a, b};
    list.line(ends, 2, paint(Role::ink), 1.2f);
    const Vec tick = view.across() * 4.0f;
    for (const Vec end : ends) {
        const Vec bar[] = {end - tick, end + tick};
        list.line(bar, 2, paint(Role::ink), 1.2f);
    }
    list.round(box, 4.0f, paint(Role::panel, 220));
    list.text_centred(box.centre(), words, style, Role::ink, Role::panel);
}

void dimension_run_past(const DiagramInput& input, const HeadView& view, DrawingList& list,
                        LabelPlacer& labels) {
    const HeadAssessment& head = *view.assessed;
    const Rect& image = head.image_bounds;
    const double x = image.left + 0.12 * image.width();
    if (head.machine_run_past > 0.0)
        dimension(input, view, x, image.hi, image.hi + head.machine_run_past, list, labels);
    if (head.operator_run_past > 0.0)
        dimension(input, view, x, image.lo, image.lo - head.operator_run_past, list, labels);
}

/// Which end is which: on the frame where its profile is wide enough for words, else just inside.
void label_frame(const DiagramInput& input, const HeadView& view, DrawingList& list,
                 LabelPlacer& labels) {
    const Screen& screen = view.head->screen;
    if (std::abs(view.across().x) < 0.999f) return;
    const TypeStyle style{TypeSize::small, true};
    const float height = list.type().height(style);
    const bool on_frame = view.size(screen.profile_width) >= height;
    const double y = 0.5 * screen.along - (on_frame ? 0.5 : 1.0) * screen.profile_width;
    const float inward = on_frame ? 0.0f : 0.5f * height + 2.0f;
    const float left = view.to(-0.5 * screen.across + (on_frame ? 0.0 : screen.profile_width), 0.0).x + 8.0f;
    const float room = view.size(screen.across) * 0.5f - 14.0f;
    for (const bool machine : {true, false}) {
        const std::string_view words =
            word(input.language, machine ? Word::machine_side : Word::operator_side);
        if (list.type().width(style, words) > room) continue;
        const float middle = view.to(0.0, machine ? y : -y).y + (machine ? inward : -inward);
        const Box box{left, middle - 0.5f * height, left + list.type().width(style, words),
                      middle + 0.5f * height};
        if (!labels.place(box)) continue;
        list.text({box.x0, box.y0}, words, style, on_frame ? Role::on_frame : Role::soft_ink,
                  on_frame ? Role::frame : Role::mesh);
    }
}

void label_covered(const DiagramInput& input, const HeadView& view, DrawingList& list,
                   LabelPlacer& labels) {
    const HeadAssessment& head = *view.assessed;
    if (head.both_on || head.coverage.share() < 0.25 || std::abs(view.across().x) < 0.999f) return;
    const TypeStyle style{TypeSize::body, true};
    const std::string_view words = word(input.language, Word::flooded_and_printed);
    const Rect& image = head.image_bounds;
    const float room = 0.8f * view.size(image.width());
    if (list.type().width(style, words) > room) return;
    const Vec centre = view.to(0.5 * (image.left + image.right), 0.5 * (image.lo + image.hi));
    const Box box = around(centre, list.type().width(style, words), list.type().height(style));
    if (labels.place(box))
        list.text({box.x0, box.y0}, words, style, Role::covered_ink, Role::covered);
}

} // namespace

void draw_head_labels(const DiagramInput& input, const HeadView& view, DrawingList& list,
                      LabelPlacer& labels) {
    if (view.projection->camera.scale < full_detail_scale && view.head->id != input.chosen) {
        label_beside(view, input.verdicts, list, labels);
        return;
    }
    label_frame(input, view, list, labels);
    if (input.running) return; // what is at rest only would stand in the way
    label_findings(input, view, list, labels);
    dimension_run_past(input, view, list, labels);
    label_covered(input, view, list, labels);
    if (view.head->id != input.chosen) label_beside(view, input.verdicts, list, labels);
}

namespace {

struct LegendRow {
    Word word;
    Role role;
};
constexpr LegendRow legend_rows[] = {{Word::squeegee, Role::squeegee},
                                     {Word::flood, Role::flood},
                                     {Word::flooded_and_printed, Role::covered},
                                     {Word::missed, Role::stop}};

float legend_line(const TypeMeasure& type) {
    return std::max(22.0f, type.height(small_text) + 6.0f);
}

} // namespace

Box legend_box(Box view, const TypeMeasure& type, Language language) {
    float widest = 0.0f;
    for (const LegendRow& row : legend_rows)
        widest = std::max(widest, type.width(small_text, word(language, row.word)));
    return {view.x0 + 12.0f, view.y1 - 8.0f - 4.0f * legend_line(type), view.x0 + 52.0f + widest,
            view.y1 - 8.0f};
}

void draw_legend(const DiagramInput& input, DrawingList& list) {
    const Box all = legend_box(input.projection.view, list.type(), input.language);
    const float line = legend_line(list.type());
    float y = all.y0;
    for (const LegendRow& row : legend_rows) {
        const Box box{all.x0, y + 3.0f, all.x0 + 28.0f, y + line - 3.0f};
        const Vec corners[] = {{box.x0, box.y0}, {box.x1, box.y0}, {box.x1, box.y1}, {box.x0, box.y1}};
        if (row.role == Role::covered) list.fill(corners, 4, paint(Role::covered));
        if (row.role == Role::stop) list.fill(corners, 4, paint(Role::stop_fill));
        if (row.role != Role::covered)
            list.hatch(corners, 4, paint(row.role), row.role == Role::flood ? -0.785f : 0.785f, 7.0f,
                       row.role == Role::stop ? 2.4f : 1.0f);
        list.loop(corners, 4, paint(row.role == Role::covered ? Role::image : row.role), 1.4f);
        list.text({box.x1 + 8.0f, y + 0.5f * (line - list.type().height(small_text))},
                  word(input.language, row.word), small_text, Role::soft_ink, Role::paper);
        y += line;
    }
}

} // namespace carriageway
