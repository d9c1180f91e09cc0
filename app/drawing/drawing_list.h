// The drawing list: everything that a frame shows, as values.
//
// Views write it; painters turn it into pixels or paper; hit testing, the keyboard, tests and
// assistive technology read its things. So what is seen, touched, printed and read aloud is one
// and the same. Coordinates in dp (box.h).
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "app/drawing/box.h"
#include "app/drawing/theme.h"
#include "app/drawing/type.h"

namespace carriageway {

/// A colour: a role of the theme, or an ink of the job (0xRRGGBB) where `own` is set.
struct Paint {
    Role role = Role::ink;
    std::uint8_t alpha = 255;
    bool own = false;
    std::uint32_t rgb = 0;
    bool operator==(const Paint&) const = default;
};
inline Paint paint(Role role, int alpha = 255) {
    return {role, static_cast<std::uint8_t>(alpha), false, 0};
}
inline Paint own_colour(std::uint32_t rgb) { return {Role::ink, 255, true, rgb}; }

enum class MarkKind : std::uint8_t {
    fill,  ///< convex polygon through `points`
    line,  ///< open polyline, `width`
    loop,  ///< closed polyline, `width`
    hatch, ///< parallel lines within the convex polygon: `angle`, `spacing`, `width`, `phase`
    round, ///< box from points[0] to points[1] with corner `radius`, filled
    ring,  ///< its outline, `width`
    disc,  ///< circle at points[0] with `radius`, filled
    circle,///< its outline, `width`
    text,  ///< one line; points[0] is the top left of its box, `extent` its width and height
};

/// One thing to paint.
struct Mark {
    MarkKind kind = MarkKind::fill;
    Paint colour;
    std::uint32_t first = 0; ///< of its points
    std::uint32_t count = 0;
    float width = 1.0f;
    float radius = 0.0f;
    float angle = 0.0f;   ///< rad, of hatch lines
    float spacing = 8.0f; ///< between hatch lines
    float phase = 0.0f;   ///< shift of hatch lines across themselves
    std::uint32_t text = 0; ///< offset of its text
    std::uint32_t text_length = 0;
    Vec extent;
    TypeStyle style;
    Role on = Role::paper; ///< for text: what it stands on (its contrast is tested)
    std::int16_t clip = 0; ///< index into clips
    std::uint8_t layer = 0; ///< 0 diagram, 1 panels, 2 what lies over them, 3 notices
    std::uint16_t part = 0; ///< of the list's parts
    bool operator==(const Mark&) const = default;
};

/// What a thing is to a person who can't see it. Names follow WAI-ARIA 1.2's roles.
enum class ThingRole : std::uint8_t {
    button,
    slider,   ///< changed by steps; value says where it stands
    tab,
    list_item,
    textbox,
    text,     ///< something to read: verdicts, findings
    image,    ///< a drawing with a name
    region,
};

/// A thing that can be pointed at, acted on or read.
struct Thing {
    std::string name; ///< stable, in English, such as "head/6/machine-stop": for tests and focus
    std::string label; ///< in the user's language
    std::string value; ///< what it says or stands at, in the user's language
    std::string hint;  ///< what a long press explains
    ThingRole role = ThingRole::button;
    Box box;           ///< what is drawn
    Box target;        ///< what a finger may hit: at least as large
    int action = -1;   ///< index of what a tap does; -1: nothing
    int hold = -1;     ///< index of what a drag moves; -1: nothing
    int less = -1;     ///< index of what a step down does (sliders)
    int more = -1;     ///< and a step up
    double now = 0.0, least = 0.0, most = 0.0; ///< of sliders, counted in their steps
    bool enabled = true;
    bool chosen = false;
    bool live = false; ///< read aloud when it changes
    std::int16_t clip = 0;
    std::uint8_t layer = 0;
};

/// A frame's drawing.
class DrawingList {
public:
    /// Empties the list, keeping its storage. `window` becomes clip 0.
    void begin(Box window, const TypeMeasure& type);

    // -- painting; all go to the current layer and clip --------------------------------------
    void fill(const Vec* corners, int count, Paint colour);
    void line(const Vec* points, int count, Paint colour, float width);
    void loop(const Vec* points, int count, Paint colour, float width);
    void hatch(const Vec* corners, int count, Paint colour, float angle, float spacing,
               float width, float phase = 0.0f);
    void round(Box box, float radius, Paint colour);
    void ring(Box box, float radius, Paint colour, float width);
    void disc(Vec centre, float radius, Paint colour);
    void circle(Vec centre, float radius, Paint colour, float width);
    /// Writes one line with its top left at `at`; returns its box. `on` names what is behind it.
    Box text(Vec at, std::string_view words, TypeStyle style, Role colour, Role on);
    /// The same, of words that have been measured.
    Box text(Vec at, std::string_view words, Vec extent, TypeStyle style, Role colour, Role on);
    /// The same centred on `centre`.
    Box text_centred(Vec centre, std::string_view words, TypeStyle style, Role colour, Role on);

    // -- things -------------------------------------------------------------------------------
    /// Adds a thing; its clip and layer are filled in. Returns it to be completed; the reference
    /// holds until the next call.
    Thing& thing(std::string_view name, ThingRole role, Box box);
    /// Takes all things away; what is painted stays.
    void forget_things() { thing_count_ = 0; }

    // -- state --------------------------------------------------------------------------------
    /// What follows changes apart from what was before: a painter that still has what it made of a
    /// part need not make it again (kept_paint.h).
    void begin_part() { ++part_; }
    void push_clip(Box box); ///< within the present one
    void pop_clip();
    void set_layer(int layer) { layer_ = static_cast<std::uint8_t>(layer); }
    int layer() const { return layer_; }
    const TypeMeasure& type() const { return *type_; }
    Box window() const { return clips_.front(); }
    Box clip() const { return clips_[static_cast<std::size_t>(clip_stack_.back())]; }

    // -- reading ------------------------------------------------------------------------------
    const std::vector<Mark>& marks() const { return marks_; }
    std::span<const Thing> things() const { return {things_.data(), thing_count_}; }
    std::span<Thing> things() { return {things_.data(), thing_count_}; }
    /// Whether any mark is in a layer.
    bool has_layer(int layer) const { return (layers_ >> layer & 1u) != 0; }
    const Vec* points(const Mark& mark) const { return points_.data() + mark.first; }
    std::string_view words(const Mark& mark) const {
        return std::string_view(text_).substr(mark.text, mark.text_length);
    }
    Box clip_box(int index) const { return clips_[static_cast<std::size_t>(index)]; }
    /// The thing of this name, or nullptr.
    const Thing* find(std::string_view name) const;

private:
    Mark& add(MarkKind kind, Paint colour, const Vec* points, int count);

    std::vector<Mark> marks_;
    std::vector<Vec> points_;
    std::string text_;
    std::vector<Thing> things_; ///< those beyond thing_count_ lend their storage to later ones
    std::size_t thing_count_ = 0;
    std::vector<Box> clips_;
    std::vector<std::int16_t> clip_stack_;
    const TypeMeasure* type_ = nullptr;
    std::uint8_t layer_ = 0;
    std::uint16_t part_ = 0;
    unsigned layers_ = 0; ///< a bit for each that has a mark
};

/// The thing under a point: of the uppermost layer that has one there, the one whose drawn box is
/// nearest, then the smaller. Things that do nothing are passed over. -1: none.
int thing_at(const DrawingList& list, Vec point);

} // namespace carriageway
