// What the parts of the Register place share: the head, its rounds as shown, and what they come to.
#pragma once

#include <initializer_list>

#include "app/text/registration_sentences.h"
#include "app/views/views.h"

namespace carriageway {

/// One head's registration as it is shown.
struct RegisterView {
    const Model* model = nullptr;
    const Head* head = nullptr;
    std::vector<MarkRound> rounds; ///< with what a drag would do
    std::size_t index = 0;         ///< of the round looked at; rounds.size(): one that doesn't exist yet
    MarkRound round;               ///< it
    HeadRegistration result;
    const Job& job() const { return *model->job; }
    const ViewState& state() const { return *model->state; }
    LengthUnit units() const { return model->state->looks.units; }
    double tolerance() const { return model->job->registration.tolerance; }
};

/// Heights as they are shown.
struct LevelView {
    Levelling levelling;
    std::vector<PartOff> heads, platens;
    int out = 0;
};

/// The head whose registration is shown: the chosen one, else the base head; nullptr: there is none.
const Head* registered_head(const Job& job, const ViewState& state);
/// Which round is looked at: as chosen, else the last one. With none: 0.
std::size_t round_index(const Head& head, const RegisterState& state);

/// Puts a moved mark where it is dragged: what was read at it goes along.
void move_mark(MarkRound& round, std::size_t mark, const Point& to);

RegisterView register_view(const Model& model, const Head& head);
LevelView level_view(const Job& job);

/// Where a height point of a press lies, in the head's axes.
Point place_of(const HeightPoints& points, HeightPoint point);

/// Quantity and title of a number that the pad types in this place.
Quantity register_quantity(RegisterNumber number);
std::string register_title(const RegisterTarget& target, Language language);

// -- parts of the place -----------------------------------------------------------------------------
void register_marks_drawing(const RegisterView& view, Box box, Canvas& canvas);
void register_marks_panel(const RegisterView& view, Rows& rows);
void register_platens_drawing(const RegisterView& view, Box box, Canvas& canvas);
void register_platens_panel(const RegisterView& view, Rows& rows);
void register_heights_drawing(const RegisterView& view, Box box, Canvas& canvas);
void register_heights_panel(const RegisterView& view, Rows& rows);

/// A verdict with its mark, as a thing that is read aloud when it changes.
void said_verdict(std::string_view name, const SaidVerdict& verdict, Rows& rows);

/// A framed card: a bold title with lines below, as one thing to read.
void said_card(std::string_view name, std::string_view title, const std::vector<std::string>& lines,
               Role role, Rows& rows);

/// A row with a label and a value that does something when touched.
void value_row(std::string_view name, std::string_view label, std::string_view value, Action action,
               bool chosen, Rows& rows);

/// A button as high as its words need.
void wide_button(std::string_view name, std::string_view words, std::string_view detail,
                 ButtonLook look, Action action, Rows& rows);

/// Texts of a drawing, each where it is free of those before it.
class FreeTexts {
public:
    explicit FreeTexts(DrawingList& list) : list_(list) {}
    void take(Box box) { taken_.push_back(box); }
    /// Writes words centred on the first of the places where nothing stands yet; nowhere: not at all.
    void write(std::initializer_list<Vec> places, std::string_view words, TypeStyle style, Role on = Role::paper);

private:
    DrawingList& list_;
    std::vector<Box> taken_;
};

/// A small line of words in an area that only has room for a drawing; returns the height.
float caption(Box box, std::string_view words, Canvas& canvas);

} // namespace carriageway
