#include "app/drawing/drawing_list.h"

#include <limits>

namespace carriageway {

void DrawingList::begin(Box window, const TypeMeasure& type) {
    marks_.clear();
    points_.clear();
    text_.clear();
    thing_count_ = 0;
    clips_.assign(1, window);
    clip_stack_.assign(1, 0);
    type_ = &type;
    layer_ = 0;
    part_ = 0;
    layers_ = 0;
}

Mark& DrawingList::add(MarkKind kind, Paint colour, const Vec* points, int count) {
    Mark mark;
    mark.kind = kind;
    mark.colour = colour;
    mark.first = static_cast<std::uint32_t>(points_.size());
    mark.count = static_cast<std::uint32_t>(count);
    mark.clip = clip_stack_.back();
    mark.layer = layer_;
    mark.part = part_;
    layers_ |= 1u << layer_;
    points_.insert(points_.end(), points, points + count);
    marks_.push_back(mark);
    return marks_.back();
}

void DrawingList::fill(const Vec* corners, int count, Paint colour) {
    if (count >= 3) add(MarkKind::fill, colour, corners, count);
}

void DrawingList::line(const Vec* points, int count, Paint colour, float width) {
    if (count >= 2) add(MarkKind::line, colour, points, count).width = width;
}

void DrawingList::loop(const Vec* points, int count, Paint colour, float width) {
    if (count >= 3) add(MarkKind::loop, colour, points, count).width = width;
}

void DrawingList::hatch(const Vec* corners, int count, Paint colour, float angle, float spacing,
                        float width, float phase) {
    if (count < 3) return;
    Mark& mark = add(MarkKind::hatch, colour, corners, count);
    mark.angle = angle;
    mark.spacing = spacing;
    mark.width = width;
    mark.phase = phase;
}

void DrawingList::round(Box box, float radius, Paint colour) {
    const Vec ends[] = {{box.x0, box.y0}, {box.x1, box.y1}};
    add(MarkKind::round, colour, ends, 2).radius = radius;
}

void DrawingList::ring(Box box, float radius, Paint colour, float width) {
    const Vec ends[] = {{box.x0, box.y0}, {box.x1, box.y1}};
    Mark& mark = add(MarkKind::ring, colour, ends, 2);
    mark.radius = radius;
    mark.width = width;
}

void DrawingList::disc(Vec centre, float radius, Paint colour) {
    add(MarkKind::disc, colour, &centre, 1).radius = radius;
}

void DrawingList::circle(Vec centre, float radius, Paint colour, float width) {
    Mark& mark = add(MarkKind::circle, colour, &centre, 1);
    mark.radius = radius;
    mark.width = width;
}

Box DrawingList::text(Vec at, std::string_view words, TypeStyle style, Role colour, Role on) {
    return text(at, words, {type_->width(style, words), type_->height(style)}, style, colour, on);
}

Box DrawingList::text(Vec at, std::string_view words, Vec extent, TypeStyle style, Role colour, Role on) {
    if (!words.empty()) {
        Mark& mark = add(MarkKind::text, paint(colour), &at, 1);
        mark.text = static_cast<std::uint32_t>(text_.size());
        mark.text_length = static_cast<std::uint32_t>(words.size());
        mark.extent = extent;
        mark.style = style;
        mark.on = on;
        text_.append(words);
    }
    return {at.x, at.y, at.x + extent.x, at.y + extent.y};
}

Box DrawingList::text_centred(Vec centre, std::string_view words, TypeStyle style, Role colour,
                              Role on) {
    const Vec extent{type_->width(style, words), type_->height(style)};
    return text({centre.x - 0.5f * extent.x, centre.y - 0.5f * extent.y}, words, extent, style, colour, on);
}

namespace {

/// A thing without anything said about it, whose texts keep their storage.
void clear(Thing& thing) {
    Thing fresh;
    for (std::string Thing::* const text : {&Thing::name, &Thing::label, &Thing::value, &Thing::hint}) {
        fresh.*text = std::move(thing.*text);
        (fresh.*text).clear();
    }
    thing = std::move(fresh);
}

} // namespace

Thing& DrawingList::thing(std::string_view name, ThingRole role, Box box) {
    if (thing_count_ == things_.size()) things_.emplace_back();
    Thing& added = things_[thing_count_++];
    clear(added);
    added.name.assign(name);
    added.role = role;
    added.box = box;
    added.target = box;
    added.clip = clip_stack_.back();
    added.layer = layer_;
    return added;
}

void DrawingList::push_clip(Box box) {
    clips_.push_back(common(box, clip()));
    clip_stack_.push_back(static_cast<std::int16_t>(clips_.size() - 1));
}

void DrawingList::pop_clip() {
    if (clip_stack_.size() > 1) clip_stack_.pop_back();
}

const Thing* DrawingList::find(std::string_view name) const {
    for (const Thing& thing : things())
        if (thing.name == name) return &thing;
    return nullptr;
}

namespace {

/// Distance from a point to a box; 0 inside.
float distance_to(const Box& box, Vec point) {
    const float dx = std::max({box.x0 - point.x, 0.0f, point.x - box.x1});
    const float dy = std::max({box.y0 - point.y, 0.0f, point.y - box.y1});
    return std::hypot(dx, dy);
}

bool acts(const Thing& thing) {
    return thing.enabled && (thing.action >= 0 || thing.hold >= 0);
}

} // namespace

int thing_at(const DrawingList& list, Vec point) {
    int best = -1;
    int best_layer = -1;
    float best_distance = std::numeric_limits<float>::max();
    float best_area = std::numeric_limits<float>::max();
    const std::span<const Thing> things = list.things();
    for (std::size_t i = 0; i < things.size(); ++i) {
        const Thing& thing = things[i];
        if (!thing.target.contains(point) || !list.clip_box(thing.clip).contains(point)) continue;
        // A region of an upper layer, or a notice, hides what lies below it even where nothing acts.
        const bool hides = (thing.role == ThingRole::region || thing.live) && thing.layer > best_layer;
        if (!acts(thing) && !hides) continue;
        const float distance = distance_to(thing.box, point);
        const float area = thing.box.width() * thing.box.height();
        const bool above = thing.layer > best_layer;
        const bool nearer = thing.layer == best_layer &&
                            (distance < best_distance ||
                             (distance == best_distance && area <= best_area));
        if (!above && !(nearer && acts(thing))) continue;
        best = acts(thing) ? static_cast<int>(i) : -1;
        best_layer = thing.layer;
        best_distance = acts(thing) ? distance : std::numeric_limits<float>::max();
        best_area = area;
    }
    return best;
}

} // namespace carriageway
