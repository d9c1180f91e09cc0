// What a view draws on: the drawing list, with actions and holds attached to its things, and the
// controls that all views share. Every control takes the stable name of its thing, in English.
#pragma once

#include <vector>

#include "app/drawing/diagram.h"
#include "app/views/action.h"
#include "app/views/word_wrap.h"

namespace carriageway {

/// A part of the window that scrolls.
struct ScrollArea {
    Box box;
    float content = 0.0f;        ///< height of what is in it
    float ViewState::* offset = nullptr;
    bool covered = false;        ///< something lies over it: nobody can scroll it
};

/// A line of text that was out of sight, and so was not written.
struct UnseenLine {
    Box box, clip;
};

/// One frame as the views made it.
struct Frame {
    DrawingList list;
    std::vector<UnseenLine> unseen; ///< tests look whether they can be scrolled to
    WordWrap wrap;
    ActionList actions;
    std::vector<Hold> holds;
    std::vector<ScrollArea> scrolls;
    Box diagram;           ///< where the diagram is; empty in places without one
    Projection projection; ///< of the diagram
    DiagramThings diagram_things;
    Box typing;            ///< where the text field being typed in is; empty: none
    void begin(Box window, const TypeMeasure& type);
};

enum class ButtonLook {
    strong, ///< does the thing
    quiet,  ///< filled softly
    plain,  ///< outlined
    bare,   ///< words only
};

/// Shapes drawn instead of letters.
enum class Icon {
    none, back, undo, redo, plus, minus, whole, press, jobs, gear, close, down, up, backspace,
    search, trash, check, more, space, measure, registration, next, clock, practice, play, pause,
};

class Canvas {
public:
    Canvas(Frame& frame, Language language) : frame_(frame), language_(language) {}

    DrawingList& list() { return frame_.list; }
    Frame& frame() { return frame_; }
    const TypeMeasure& type() const { return frame_.list.type(); }
    float scale() const { return type().scale(); }
    Language language() const { return language_; }
    std::string_view word(Word key) const { return carriageway::word(language_, key); }

    /// Adds what a thing can do; returns its index.
    int action(Action action);
    int action(DoEdit edit);
    int hold(Hold hold);

    /// Heights of buttons at this text size: at least 44 dp, and 60 for what fixes something.
    float button_height(std::string_view words, std::string_view detail, float width,
                        float least) const;
    void button(std::string_view name, Box box, std::string_view words, ButtonLook look, int action,
                std::string_view detail = {});
    void icon_button(std::string_view name, Box box, Icon icon, std::string_view label, int action,
                     bool enabled = true, ButtonLook look = ButtonLook::plain);
    void icon(Icon icon, Vec centre, float size, Role role);

    /// Words in as many lines as they need, from `at` down; returns the height. `most` lines, the
    /// last of which ends in an ellipsis where words are left over.
    float paragraph(Vec at, float width, std::string_view words, TypeStyle style, Role role, Role on,
                    int most = 99);
    /// The same, each line centred on `centre`.
    void centred_paragraph(Vec centre, float width, std::string_view words, TypeStyle style, Role role,
                           Role on);
    float widest_word(std::string_view words, TypeStyle style) const;
    float paragraph_height(float width, std::string_view words, TypeStyle style, int most = 99) const;

    /// Something to read that isn't a control, for tests and assistive technology.
    void reading(std::string_view name, Box box, std::string_view label, std::string_view value);

private:
    const std::vector<WrappedLine>& lines_of(std::string_view words, TypeStyle style, float width) const {
        return frame_.wrap.lines(words, style, width);
    }
    bool in_sight(const Box& box) const { return overlap(box, frame_.list.clip()); }
    void line_of_text(Vec at, std::string_view words, float width, TypeStyle style, Role role, Role on);
    float centred_lines(float centre, float y, std::string_view words,
                        const std::vector<WrappedLine>& lines, TypeStyle style, Role role, Role on);

    Frame& frame_;
    Language language_;
};

/// A column of controls from top to bottom, within a panel.
struct Rows {
    Canvas& canvas;
    float x = 0.0f;
    float width = 0.0f;
    float y = 0.0f;
    Role on = Role::panel;
    Box next(float height, float gap = 8.0f);
    void text(std::string_view words, TypeStyle style = {}, Role role = Role::ink, float gap = 6.0f);
    void space(float height) { y += height; }
};

} // namespace carriageway
