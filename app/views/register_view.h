// What the parts of the Register place share: the head, its rounds as shown, and what they come to.
#pragma once

#include <optional>
#include <span>

#include "app/drawing/label_placer.h"
#include "app/text/registration_sentences.h"
#include "app/views/views.h"

namespace carriageway {

/// Side of a button that only has a picture, dp: WCAG 2.2, 2.5.5 asks for 44.
inline constexpr float touch_side = 48.0f;

/// One head's registration as it is shown.
struct RegisterView {
    const Model* model = nullptr;
    const Head* head = nullptr;
    std::vector<MarkRound> rounds; ///< with what a drag would do
    std::size_t index = 0; ///< of the round looked at; rounds.size(): one that doesn't exist yet
    MarkRound round;               ///< it
    HeadRegistration result;
    PlatenPrints prints;    ///< only in the mode that shows them
    JobLevelling levelling; ///< likewise
    const Job& job() const { return *model->job; }
    const ViewState& state() const { return *model->state; }
    LengthUnit units() const { return model->state->looks.units; }
    double tolerance() const { return model->job->registration.tolerance; }
};

/// The head whose registration is shown: the chosen one, else the base head; nullptr: there is
/// none.
const Head* registered_head(const Job& job, const ViewState& state);
/// Which round is looked at: as chosen, else the last one. With none: 0.
std::size_t round_index(const Head& head, const RegisterState& state);

/// Puts a moved mark where it is dragged: what was read at it goes along.
void move_mark(MarkRound& round, std::size_t mark, const Point& to);

RegisterView register_view(const Model& model, const Head& head);

/// The head's rounds with this one in the place of the one looked at, as an edit.
Edit with_round(const RegisterView& view, const MarkRound& round);

/// Where a height point of a press lies, in the head's axes.
Point place_of(const HeightPoints& points, HeightPoint point);

/// Quantity and title of a number that the pad types in this place.
Quantity register_quantity(RegisterNumber number);
std::string register_title(const RegisterTarget& target, Language language);

// -- parts of the place --
void register_marks_drawing(const RegisterView& view, Box box, Canvas& canvas);
void register_marks_panel(const RegisterView& view, Rows& rows);
void register_rounds_part(const RegisterView& view, Rows& rows);
void register_platens_drawing(const RegisterView& view, Box box, Canvas& canvas);
void register_platens_panel(const RegisterView& view, Rows& rows);
void register_heights_drawing(const RegisterView& view, Box box, Canvas& canvas);
void register_heights_panel(const RegisterView& view, Rows& rows);

/// A verdict with its mark, as a thing that is read aloud when it changes.
void said_verdict(std::string_view name, const SaidVerdict& verdict, Rows& rows);

/// Sentences one below the other, as one thing to read that begins at `top`.
void said_lines(std::string_view name, std::string_view label,
                const std::vector<std::string>& lines, TypeStyle style, float gap, float top,
                Rows& rows);

/// A framed card: a bold title with lines below, as one thing to read.
void said_card(std::string_view name, std::string_view title, const std::vector<std::string>& lines,
               Role role, Rows& rows);

/// A row with a label and a value that does something when touched.
void value_row(std::string_view name, std::string_view label, std::string_view value, Action action,
               bool chosen, Rows& rows);

/// A button as high as its words need.
void wide_button(std::string_view name, std::string_view words, std::string_view detail,
                 ButtonLook look, Action action, Rows& rows);

/// One end of a stepper; nothing where it can't go farther.
struct StepperEnd {
    std::string_view name;
    Word label;
    std::optional<Action> action;
};

/// A text between a button with a minus and one with a plus; a tap on the text does `action`, where
/// there is one.
void stepper_row(std::string_view name, const std::string& text, StepperEnd less, StepperEnd more,
                 std::optional<Action> action, Rows& rows);

/// Platen and turn of the round looked at, each between minus and plus and to be typed. `least` is
/// the smallest: 0 stands for not noted.
void print_steppers(const RegisterView& view, int least, Rows& rows);

/// Writes words centred on the first of some places where nothing stands yet; nowhere: not at all.
bool write_free(DrawingList& list, LabelPlacer& labels, std::span<const Vec> places,
                std::string_view words, TypeStyle style, Role on = Role::paper);

/// A small line of words below a drawing; returns the height. Large words that would take the area
/// from the drawing are left out (0): its thing has them as a hint.
float caption(Box box, std::string_view words, Canvas& canvas);

} // namespace carriageway
