// The views: functions of a model that fill a frame. They keep nothing and change nothing.
#pragma once

#include <initializer_list>
#include <span>

#include "app/drawing/diagram.h"
#include "app/errand.h"
#include "app/views/canvas.h"
#include "core/assess.h"

namespace carriageway {

/// How the last edits stand with the library.
enum class SaveState {
    saved,
    waiting,
    failed,
    elsewhere, ///< another window writes the library: nothing can be changed in this one
    not_kept, ///< the library can't be used: nothing will be there next time
    none,     ///< there is no library, on purpose: a picture
    visiting, ///< the job came from a link: nothing is stored until the person says so
};

struct About; // about.h

/// All that views read.
struct Model {
    const Job* job = nullptr; ///< as shown: with what a drag would do
    const Assessment* assessment = nullptr;
    const ViewState* state = nullptr;
    bool can_undo = false;
    bool can_redo = false;
    SaveState save = SaveState::saved;
    std::string save_trouble;         ///< in the user's language
    const std::vector<JobRow>* rows = nullptr;
    const std::vector<PressRow>* presses = nullptr; ///< kept in the library
    const std::vector<RunRow>* runs = nullptr; ///< of this job, the newest first
    const Job* last_run = nullptr;    ///< the newest run as it was; nullptr: none
    const Job* job_as_set = nullptr;  ///< as really set, where that is shown; nullptr: as planned
    const Assessment* as_set = nullptr; ///< what that comes to
    JobId current = 0;                ///< the job that is open; 0: none of the library's
    bool visiting = false;            ///< the job came from a link and isn't kept
    const TraineeSummary* practised_by = nullptr; ///< who practises; of pictures nobody
    const std::vector<TraineeSummary>* group = nullptr; ///< the people of this device
    Timestamp time = 0;               ///< of day
    std::size_t moves = 0;            ///< made in an exercise
    std::string left_visit;           ///< name of a job from a link that was left; empty: none
    Box window;                       ///< free of notches and system bars
    float pixels_per_dp = 1.0f;
    const Abilities* abilities = nullptr;
    const About* about = nullptr;
};

/// Where the parts of the window lie.
struct Layout {
    bool compact = true; ///< panel below the diagram and places at the bottom; else side by side
    Box header;
    Box banner;          ///< that the job came from a link; empty where it didn't
    Box diagram;
    Box cycle;           ///< what a running cycle is worked with, below the diagram; or empty
    Box panel;
    Box places;
};

/// Below this width, dp, the window is compact; so is one that is taller than wide.
inline constexpr float compact_width = 600.0f;

Layout lay_out(const Model& model, Canvas& canvas);

/// Height that the header's texts need in a width.
float header_height(const Model& model, Canvas& canvas, float width);

/// Draws the whole frame.
void draw_frame(const Model& model, Frame& frame);

// -- places ---------------------------------------------------------------------------------------
void press_place(const Model& model, const Layout& layout, Canvas& canvas);
void jobs_place(const Model& model, const Layout& layout, Canvas& canvas);
void rate_place(const Model& model, const Layout& layout, Canvas& canvas);
void practice_place(const Model& model, const Layout& layout, Canvas& canvas);
void register_place(const Model& model, const Layout& layout, Canvas& canvas);

// -- parts of places ------------------------------------------------------------------------------
void places_bar(const Model& model, const Layout& layout, Canvas& canvas);
void press_header(const Model& model, const Layout& layout, Canvas& canvas);
void head_panel(const Model& model, const HeadAssessment& head, Rows& rows);
void press_panel(const Model& model, Rows& rows);
/// The stop that is being set: between minus and plus, with the other one beside it.
void stop_controls(const Model& model, const Head& head, Rows& rows);
/// Every head with its verdict, as a row that leads to it; without it during an exercise.
void head_rows(const Model& model, Rows& rows);
void looks_panel(const Model& model, Rows& rows);
void number_pad(const Model& model, const Layout& layout, Canvas& canvas);
/// Height that the pad needs in a compact window.
float pad_height(const Model& model, Canvas& canvas, float window_width);
void notice_line(const Model& model, const Layout& layout, Canvas& canvas);

/// Whether there is anything that the share sheet could do.
bool can_share(const Model& model);

/// Over everything else: the job as a link, as a code to photograph and as a file. What lies below
/// can't be touched meanwhile.
void share_sheet(const Model& model, Canvas& canvas);

/// Over everything else: how the numbers of the press are measured, what was read and what follows.
void measure_sheet(const Model& model, Canvas& canvas);

/// Over everything else: the run, part by part (day_view.h).
void day_sheet(const Model& model, Canvas& canvas);

/// The number pad alone, in a box; a sheet's upper corners are round.
void draw_pad(const Model& model, Box box, bool sheet, Canvas& canvas);

/// How hot platens become, turn by turn, and what that means for the flash's dwell.
void heat_panel(const Model& model, Rows& rows);

/// Says that the job came from a link and isn't kept, with the buttons that keep or leave it.
void visit_banner(const Model& model, const Layout& layout, Canvas& canvas);
/// Height that it needs in a width.
float banner_height(const Model& model, Canvas& canvas, float width, bool compact);

/// Words for how the job stands with the library.
std::string save_words(const Model& model);

/// One finding with its reason and, where there is one, the button that fixes it.
/// `named` puts the head's name before the title. Names start with `finding/STATION/INDEX`.
void finding_card(const Model& model, const HeadAssessment& head, std::size_t index, bool named,
                  bool framed, Rows& rows);

/// The plot of allowed stops with today's point on it.
void allowed_plot(const Model& model, const HeadAssessment& head, Rows& rows);

/// The room left at each limit, with tolerances, and the chance of missed image.
void margins_panel(const Model& model, const HeadAssessment& head, Rows& rows);

/// Side view, off-contact, air, mesh and ink of a head, each a section.
void contact_sections(const Model& model, const HeadAssessment& head, Rows& rows);

/// The side view with its handles and what it says.
void side_panel(const Model& model, const HeadAssessment& head, Rows& rows);

/// A section that opens and closes; true while open.
bool section_head(const Model& model, Section section, std::string_view name,
                  std::string_view words, Rows& rows);

/// Leads to finding out what is wrong with a head, or with any (0).
void find_fault_button(HeadId head, Rows& rows);

/// Rows of numbers; a tap opens the number pad.
void number_row(const Model& model, HeadId head, Field field, Rows& rows);

/// A choice between a few things side by side.
struct Choice {
    std::string_view name; ///< stable
    std::string words;
    int action = -1;
    bool chosen = false;
};
void choices(std::string_view name, std::string_view label, std::span<const Choice> options, Rows& rows);
inline void choices(std::string_view name, std::string_view label,
                    std::initializer_list<Choice> options, Rows& rows) {
    choices(name, label, std::span(options.begin(), options.size()), rows);
}

/// Value of a field as people read it, with its unit; stops as the ruler's number.
std::string field_value(const Model& model, HeadId head, Field field);

/// "Head 6 · navy".
std::string head_name(const Model& model, const Head& head);

/// Thing name of a field: the press's own key, such as "head/6/image.width_mm".
std::string field_thing(const Model& model, HeadId head, Field field);

} // namespace carriageway
