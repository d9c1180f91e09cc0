// Sentences about registration and levelling: what to turn, what is left, and why there is no
// answer. Used by the places and by the command line alike.
#pragma once

#include <string>
#include <vector>

#include "app/text/measure.h"
#include "core/head_registration.h"
#include "core/job_levelling.h"

namespace carriageway {

/// How a verdict is meant; a view gives each its mark.
enum class Tone { good, act, stop, ask };

/// A verdict in two parts.
struct SaidVerdict {
    Tone tone = Tone::ask;
    std::string title;
    std::string why;
};

/// What to do at one adjuster.
struct SaidScrew {
    std::string title; ///< "Left: 3 dial marks clockwise"
    std::vector<std::string> lines;
    bool turn = false; ///< something is to be turned
};

/// A fine length (measure.h) with a plus or minus sign; what rounds to zero has none.
std::string signed_length(double mm, LengthUnit unit, bool with_unit = true);

/// A number of turns as people count them: "1/4", "1 1/12"; of a dial with so many marks.
std::string turns_fraction(int marks, int marks_a_turn);

/// "3 dial marks clockwise"; positive is clockwise.
std::string dial_text(Language language, int marks);

/// Where a point lies against its place: "0.3 mm to the right, 0.1 mm toward the machine".
std::string offset_text(Language language, LengthUnit unit, const Point& by);

/// The whole of a head's registration in two sentences.
SaidVerdict registration_verdict(Language language, LengthUnit unit, const HeadRegistration& head,
                                 const PressProfile& press, double tolerance);

/// Why marks give no answer and what to do. Marks count from 1.
std::string fault_text(Language language, LengthUnit unit, const RegistrationFault& fault);
std::string fault_text(Language language, const AdjusterFault& fault, const PressProfile& press);
/// Likewise of prints by platen; `readings` are those that were given.
std::string fault_text(Language language, const ScatterFault& fault,
                       const std::vector<PlatenReading>& readings);

/// One adjuster of an advice.
SaidScrew screw_text(Language language, LengthUnit unit, const ScrewAdvice& screw,
                     const Adjuster& adjuster);

/// What an advice leaves: what rounding does, a turn that the marks don't show, and what no
/// adjuster reaches.
std::vector<std::string> left_over_text(Language language, LengthUnit unit, const Advice& advice);

/// Growth and skew, with causes where they stand out.
std::vector<std::string> distortion_text(Language language, const Registration& registration);

/// How the rounds go, and what each screw really does.
std::vector<std::string> progress_text(Language language, LengthUnit unit, const Rounds& rounds,
                                       const PressProfile& press);

/// Signs of a scatter in words; none: that there is nothing but scatter.
std::vector<std::string> signs_text(Language language, const Scatter& scatter);

/// What prints of several platens come to: signs, the head itself beyond the tolerance (mm), or
/// nothing but scatter.
SaidVerdict scatter_verdict(Language language, LengthUnit unit, const Scatter& scatter,
                            double tolerance);

// ---- levelling ----

/// Name of the head or platen that a part is.
std::string part_name(const Job& job, Language language, const PartOff& part, bool head);

/// A job's levelling in a title and a few sentences. Good only where every part is known and no
/// readings contradict others.
SaidVerdict levelling_verdict(Language language, LengthUnit unit, const Job& job,
                              const JobLevelling& found);

/// What is off at a head or a platen and what to do, without its name, one sentence a line.
std::vector<std::string> off_text(Language language, LengthUnit unit, const PartOff& part,
                                  bool head, double tolerance);

/// How high a head or a platen lies at its three points: plus is high for both. Empty where tilts
/// aren't known.
std::string points_text(Language language, LengthUnit unit, const PartOff& part, bool head);

/// How far a part lies high (plus) or low, mm: a gap that is too wide is a high head, but a low
/// platen.
double height_of(double gap, bool head);

/// What to turn at a platen's screws; empty: none, or nothing known.
std::vector<std::string> level_turns_text(Language language, const PlatenTurns& turns,
                                          const std::vector<LevelScrew>& screws);

/// A reading that doesn't fit, by how much, and to read it again.
std::string stray_text(const Job& job, Language language, LengthUnit unit,
                       const StrayReading& stray);

/// Name of the height point nearest to a place: one of the press's three, or the centre.
Word point_word(const HeightPoints& points, const Point& place);

} // namespace carriageway
