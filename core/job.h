// A job: what a person decided or measured for one run, as plain values.
//
// Lengths mm, angles rad, speeds mm/s; axes as in geometry.h. A job is changed only by
// apply() (edit.h). Heads have ids that never change; their order is that of their stations.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/garment.h"
#include "core/geometry.h"
#include "core/press.h"
#include "core/readings.h"
#include "core/run_record.h"

namespace carriageway {

/// Names a head for as long as it exists. 0 names no head (the job itself).
using HeadId = std::uint32_t;

/// A screen frame with its mesh. The opening is the outside less twice the profile.
struct Screen {
    double across = 584.0;
    double along = 787.0;
    double profile_width = 38.0;
    double mesh_count = 62.0;      ///< threads per cm
    double thread_diameter = 64.0; ///< µm
    double tension_along = 25.0;   ///< N/cm
    double tension_across = 25.0;  ///< N/cm
    bool operator==(const Screen&) const = default;
};

/// The image on a screen: a rectangle, or any simple polygon in `outline`.
struct Image {
    double width = 300.0;  ///< across; used while `outline` is empty
    double length = 400.0; ///< along the arm; used while `outline` is empty
    Outline outline;       ///< corners about the image's own origin, before turning and moving
    double offset_x = 0.0; ///< the image's origin in the head's axes
    double offset_y = 0.0;
    double rotation = 0.0; ///< counter-clockwise seen from above
    bool operator==(const Image&) const = default;
};

/// How a blade's edge is cut.
enum class BladeEdge { not_noted, square, rounded, single_bevel, double_bevel };

/// A squeegee in its holder.
struct Squeegee {
    double width = 356.0;          ///< blade length across the arm
    double angle = radians(15.0);  ///< from the vertical
    double gauge = 1.0;            ///< marks
    double hardness = 0.0;         ///< Shore A (ISO 48-4); 0: not noted
    BladeEdge edge = BladeEdge::not_noted;
    bool operator==(const Squeegee&) const = default;
};

/// A flood bar in its holder.
struct FloodBar {
    double width = 381.0;
    double angle = radians(15.0);
    double gauge = 1.0;
    bool winged = true;
    bool operator==(const FloodBar&) const = default;
};

/// The inner ends of the two limit bars, y in mm (p_o and p_m).
struct Stops {
    double operator_side = -260.0;
    double machine_side = 260.0;
    bool operator==(const Stops&) const = default;
};
constexpr double stop_of(const Stops& stops, End end) {
    return end == End::machine_side ? stops.machine_side : stops.operator_side;
}
constexpr double& stop_of(Stops& stops, End end) {
    return end == End::machine_side ? stops.machine_side : stops.operator_side;
}

/// Heights of the mesh over the platen at the press's height points (press.h), off-contact.
struct ScreenHeights {
    double left = 3.0;    ///< operator's side, left
    double right = 3.0;   ///< operator's side, right
    double machine = 3.0; ///< machine's side
    bool operator==(const ScreenHeights&) const = default;
};

/// Air on the blades, kPa above the air round the press.
struct BladePressure {
    double squeegee = 220.0;
    double flood = 150.0;
    bool on_height_stop = false; ///< the squeegee rests on its height stop, not on the mesh
    bool operator==(const BladePressure&) const = default;
};

/// What is laid down: the mesh's and the stencil's thickness, and how much of the image prints.
struct Deposit {
    double fabric_thickness = 0.0; ///< of the mesh, µm; 0: not known, taken from its threads
    double stencil = 10.0;         ///< build-up on the print side, µm
    double printed_share = 0.5;    ///< of the image's area that prints, 0 to 1
    double finest_detail = 0.0;    ///< mm, narrowest line of the image; 0: not known
    double strokes = 1.0;          ///< print strokes a piece, whole
    bool operator==(const Deposit&) const = default;
};

/// What a colour wants of its place among the others.
struct ColourWish {
    double order = 0.0;      ///< whole; a lower one prints before a higher one, equal ones as it suits
    double cool_after = 0.0; ///< whole; cool stations wanted between its flash and the next head
    double screen_on = 0.0;  ///< station where its screen is clamped already; 0: nowhere
    bool flash_after = false;   ///< is flashed before the next colour prints
    bool flash_together = false; ///< that flash, and the cool stations, directly behind it
    bool wet_on_wet = true;  ///< may print onto what was printed before without a flash between
    bool pinned = false;     ///< stays on its station, whatever else is better
    bool operator==(const ColourWish&) const = default;
};

/// What else brings a colour back as it was: free text, empty where not noted.
struct ColourNotes {
    std::string ink;     ///< kind, mix, additives
    std::string stencil; ///< emulsion or film, coats, exposure
    bool operator==(const ColourNotes&) const = default;
};

/// One print head as set for this job.
struct Head {
    HeadId id = 0;
    int station = 0;            ///< the number on its arm, 1 to the press's stations
    std::string colour;         ///< name of the ink colour
    std::uint32_t ink = 0x808080; ///< 0xRRGGBB, for the drawing only
    Screen screen;
    Image image;
    Squeegee squeegee;
    FloodBar flood;
    Direction print_stroke = Direction::toward_operator;
    double print_speed = 600.0;
    double flood_speed = 700.0;
    Stops stops;
    ScreenHeights heights;
    BladePressure pressure;
    Deposit deposit;
    ColourWish wish;
    ColourNotes notes;
    std::vector<MarkRound> rounds; ///< of registration, in the order they were read
    bool operator==(const Head&) const = default;
};

/// The platen under a screen, in the head's axes.
struct Platen {
    double width = 406.0;
    double length = 559.0;
    double offset_x = 0.0; ///< its centre
    double offset_y = 30.0;
    bool operator==(const Platen&) const = default;
};

/// What a station without a head is for.
enum class StationUse { open, load, unload, flash, cool };

/// What is wanted of every head of the job.
struct Wishes {
    double run_past = 25.0;     ///< of both bands beyond the image, each end (common practice 25 to 50)
    double side_overlap = 12.0; ///< blade beyond the image, each side (common practice 12 to 25)
    bool operator==(const Wishes&) const = default;
};

/// The garment on the platen.
struct Garment {
    GarmentKind kind = GarmentKind::t_shirt;
    double compressed = 0.5; ///< mm, its thickness under a blade
    std::string name;        ///< fabric, weight, colour; empty: not noted
    bool operator==(const Garment&) const = default;
};

/// How closely colours must meet, and which head the others are set by.
struct RegistrationWish {
    double tolerance = 0.3; ///< mm. Ours: no public figure was found for garments
    HeadId base = 0;        ///< 0, or the id of no head: the first one
    bool operator==(const RegistrationWish&) const = default;
};

/// The run: how many, how hot, how fast.
struct RunPlan {
    double pieces = 100.0;     ///< whole
    double flash_dwell = 4.0;  ///< s under the flash unit
    double cycle = 8.0;        ///< s from piece to piece
    double flash_temperature = 0.0; ///< °C, what the flash unit is set to; 0: not noted
    double dryer_temperature = 0.0; ///< °C; 0: not noted
    double dryer_time = 0.0;        ///< s in the dryer; 0: not noted
    bool operator==(const RunPlan&) const = default;
};

/// The people at the open stations. Invented for the demonstration.
struct Handling {
    double load = 3.0;   ///< s to lay a garment on its platen
    double unload = 2.0; ///< s to take it off
    bool operator==(const Handling&) const = default;
};

/// What is assumed where nobody measures; shown beside every number that rests on it. All ours.
struct Assumptions {
    double friction = 0.3;         ///< blade on mesh
    double mesh_stiffness = 700.0; ///< N/cm per unit of strain
    double transfer_share = 0.9;   ///< of the ink in the mesh that leaves it
    double second_stroke_share = 0.5; ///< what a further stroke lays, beside the first
    double ink_in_screen = 150.0;  ///< cm³ that must lie in a screen
    double waste_share = 0.05;
    bool operator==(const Assumptions&) const = default;
};

/// One run of one design on one press.
struct Job {
    std::string name;
    PressProfile press;
    Platen platen;
    Wishes wishes;
    Garment garment;
    RegistrationWish registration;
    RunPlan run;
    Handling handling;
    Assumptions assumed;
    std::vector<HeightReading> height_readings; ///< of levelling
    std::vector<StationUse> uses; ///< one a station, station 1 first
    std::vector<Head> heads;      ///< in the order of their stations, at most one a station
    std::vector<WalkMark> walk;   ///< in the order of (head, field), each once
    RunRecord record;
    bool operator==(const Job&) const = default;
};

/// The head with this id, or nullptr.
const Head* find_head(const Job& job, HeadId id);
Head* find_head(Job& job, HeadId id);

/// The head on this station, or nullptr.
const Head* head_on(const Job& job, int station);

/// Corners of the image as it lies on the screen, in the head's axes, counter-clockwise; written
/// into `out`, whose storage is used again.
void place_image(const Image& image, Outline& out);

/// The opening inside the frame, in the head's axes. A profile wider than half the frame gives an
/// empty rectangle.
Rect opening_of(const Screen& screen);

/// The platen as a rectangle in the head's axes.
Rect rect_of(const Platen& platen);

/// Longest name, in bytes of UTF-8.
inline constexpr int longest_name = 200;

} // namespace carriageway
