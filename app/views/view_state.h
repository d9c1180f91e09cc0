// What is being looked at and how: all that a view needs besides the job and its assessment.
// Nothing here is part of a job; nothing here is undone.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>

#include "app/drawing/camera.h"
#include "app/drawing/qr_code.h"
#include "app/records/library.h"
#include "app/text/measure.h"
#include "app/text/words.h"
#include "app/views/class_state.h"
#include "app/views/cycle_state.h"
#include "app/views/day_state.h"
#include "app/views/first_state.h"
#include "app/views/measure_state.h"
#include "app/views/practice_state.h"
#include "app/views/register_state.h"
#include "core/fields.h"

namespace carriageway {

/// Where in the program one is.
enum class Place { press, registration, rate, practice, jobs };

/// Parts of a panel that open and close.
enum class Section {
    plot, margins, side, off_contact, pressure, deposit, image, squeegee, flood_bar, screen, speeds, head, job,
    platen, press_profile, looks, garment, heat, assumed, pace, handling, about, count,
};

enum class ThemeChoice { system, light, dark };

/// How a person wants the program to look; kept in the library's settings.
struct Looks {
    ThemeChoice theme = ThemeChoice::system;
    Language language = Language::english;
    LengthUnit units = LengthUnit::mm;
    float text_scale = 1.0f; ///< 0.8 to 2
    bool operator==(const Looks&) const = default;
};

inline constexpr float least_text_scale = 0.8f;
inline constexpr float most_text_scale = 2.0f;

/// Keys of the number pad besides digits 0 to 9.
enum class PadKey {
    d0, d1, d2, d3, d4, d5, d6, d7, d8, d9,
    point, slash, space, minus, backspace, mm, inch, cm, accept, cancel,
};

/// The number pad while it is open.
struct Pad {
    HeadId head = 0;
    Field field = Field::count;
    RegisterTarget target; ///< set: a number of the Register place instead of a field
    std::string text;
    bool fresh = true;    ///< the old value still stands there: the first key replaces it
    std::string trouble;  ///< why the last try was refused, in the user's language
    std::optional<PadReading> reading; ///< instead of a field: a reading of what is measured
    DayTarget day;        ///< set: a number of the run instead of a field
};

/// What a text field changes.
enum class TextTarget {
    job_name, head_colour, search, row_name, initials, note, approved_by, approved_against,
    stoppage_note, link_base, own_step, new_trainee, trainee_name, sender,
    call_press, call_notes,
};

/// A text field while it is being typed in.
struct TextEntry {
    TextTarget target = TextTarget::search;
    JobId job = 0; ///< for row_name
    HeadId head = 0;       ///< for note
    Note note = Note::ink; ///< for note
    std::string text;
    bool fresh = true; ///< takes the keyboard in its first frame
};

/// A line at the bottom that goes away by itself.
struct Notice {
    std::string text;
    JobId restore = 0;     ///< offers to bring this job back
    double until = 0.0;    ///< s on the window's clock
    bool trouble = false;
    bool run_removed = false; ///< offers to bring the run back that was deleted last
    bool visit_left = false; ///< offers to go back to the job from a link that was left
};

/// The share sheet while it is open. Its link is made once: a frame draws what stands here.
struct Share {
    JobId job = 0;    ///< 0: a job from a link
    std::string name;
    std::string link; ///< empty: the window has no address for links, or the job is too large for one
    bool too_large = false;
    std::optional<QrCode> code; ///< of the link, where one holds it
    std::string opener; ///< what had the keyboard's focus before
};

/// How a blade stood before its angle was changed last: for bringing its edge back.
struct TiltNote {
    HeadId head = 0;
    bool flood = false;
    double angle = 0.0;
    double gauge = 0.0;
};

/// A colour that is dragged from station to station on the diagram.
struct ColourDrag {
    HeadId head = 0;
    Vec at;          ///< the finger
    int station = 0; ///< the nearest one
};

/// A camera on its way.
struct CameraMove {
    Camera from;
    Camera to;
    double start = 0.0;
    double seconds = 0.28;
};

struct ViewState {
    Place place = Place::press;
    HeadId head = 0; ///< chosen; 0: the whole press
    End stop = End::machine_side;
    Camera camera;
    std::optional<CameraMove> move;
    bool own_camera = false; ///< moved by hand: a new size of window leaves it
    bool held = false;       ///< a stop is being dragged
    std::optional<ColourDrag> colour_drag;
    bool tall_sheet = false;
    std::array<bool, static_cast<std::size_t>(Section::count)> open{};
    float panel_scroll = 0.0f;
    float jobs_scroll = 0.0f;
    float share_scroll = 0.0f;
    std::optional<Share> share;
    std::optional<TiltNote> tilted;
    Measuring measuring;
    float measure_scroll = 0.0f;
    std::optional<Pad> pad;
    RegisterState registering;
    DayState day;
    float day_scroll = 0.0f;
    CycleState cycle;
    FirstState first;
    ClassState class_view;
    PracticeState practice;
    float practice_scroll = 0.0f;
    Habits habits;
    std::optional<TextEntry> typing;
    std::string search;
    JobId chosen_job = 0; ///< in the list of jobs
    std::string focus;    ///< name of the thing that the keyboard acts on
    bool show_focus = false;
    std::optional<Notice> notice;
    bool newer_ready = false; ///< a newer version waits to be started
    Looks looks;
    bool dark = false;   ///< what the theme choice comes to
    float pulse = 0.0f;

    bool is_open(Section section) const { return open[static_cast<std::size_t>(section)]; }
};

} // namespace carriageway
