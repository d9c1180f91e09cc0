// The command line: checks, sets, draws, imports, exports and lists jobs without a window.
//
//   carriageway check JOB          a table of heads, then findings with what mends them
//   carriageway stations JOB       the best station for every colour
//   carriageway rate JOB           pieces an hour, the slowest station, what a change is worth
//   carriageway set JOB -o OUT     shortest good stops, on the ruler's graduations
//   carriageway picture JOB -o FILE
//   carriageway import FILE...     into the library
//   carriageway export NAME -o FILE
//   carriageway list [--search TEXT]
//   carriageway link JOB [--base ADDRESS]
//   carriageway sheet JOB -o FILE.pdf|FILE.csv   to print, or for a spreadsheet
//   carriageway register MARKS [--job JOB] [--head STATION]
//   carriageway rate JOB           how fast it runs, and what sets the rate
//   carriageway compare JOB JOB    what was set differently
//   carriageway separation PICTURE... [--width LENGTH] [--into JOB --head STATION -o OUT]
//   carriageway [JOB]              the window
//
// JOB is a file, a link to a job (job_link.h), "-" for standard input, or a name in the library; a
// file comes before a name.
// Errors go to the error stream as "carriageway: JOB: message". Everything that is shown comes from
// the catalogue and has its control characters taken out. --json writes what command_json.h says.
#pragma once

#include <functional>
#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

#include "app/records/library.h"
#include "app/text/built_on.h"
#include "app/text/measure.h"
#include "app/text/words.h"
#include "core/job.h"

namespace carriageway {

/// What a command ends with.
inline constexpr int exit_fit = 0;      ///< every head is fit; or done, where no job is judged
inline constexpr int exit_not_fit = 1;  ///< some head isn't, or moves nothing (rate); or some mark
                                        ///< isn't within tolerance
inline constexpr int exit_trouble = 2;  ///< unreadable, unwritable, or wrong arguments

/// What `picture` wants drawn.
struct PictureRequest {
    Job job;
    std::string place;  ///< one of CommandServices::places
    int station = 0;    ///< of the head to show, which has one; 0: the whole
    int width = 1440;   ///< dp
    int height = 900;
    double scale = 1.0;  ///< pixels per dp
    bool dark = false;
    Language language = Language::english;
    LengthUnit unit = LengthUnit::mm;
};

/// A picture as a PNG file's bytes, or why there is none in a sentence.
struct DrawnPicture {
    std::string png;
    std::string trouble;  ///< empty: drawn
};

/// What `sheet` wants written as a PDF.
struct SheetRequest {
    Job job;
    bool letter = false;      ///< on US Letter; else on A4
    bool page_a_head = true;  ///< behind the overview; else tables of all heads
    std::string link_base;    ///< address of the job's link; one that isn't usable (link_base.h):
                              ///< no link is printed
    Language language = Language::english;
    LengthUnit unit = LengthUnit::mm;
    Timestamp time = 0;  ///< for the date on it; 0: room to write it
};

/// A sheet as a file's bytes, or why there is none in a sentence.
struct DrawnSheet {
    std::string bytes;  ///< of a PDF, or of a table
    int pages = 0;      ///< of a PDF
    std::vector<std::string> replaced;  ///< letters that can't be printed, in UTF-8
    std::string trouble;                ///< empty: drawn
    bool fit = false;                   ///< every head of the job is fit
};

/// What a window is to be opened on.
struct WindowRequest {
    std::string back_end;     ///< one of CommandServices::back_ends; empty: the first that works
    std::optional<JobId> id;  ///< a job of the library
    std::optional<Job> job;   ///< a job from a file, a link or standard input
    bool from_link = false;   ///< the job is only shown: the person says whether it is kept
    std::optional<Language> language;  ///< where given; otherwise as kept in the library
    std::optional<LengthUnit> unit;
};

/// What the command line uses of the rest of the program. Streams must outlive the call.
struct CommandServices {
    std::istream& in;
    std::ostream& out;
    std::ostream& err;
    std::string version;
    Language language = Language::english;  ///< where --lang doesn't say
    LengthUnit unit = LengthUnit::mm;       ///< where --units doesn't say
    std::vector<std::string> places;        ///< what `picture` can draw, the first by default
    std::vector<std::string> back_ends;     ///< window systems of this build
    std::function<LibraryResult<Library>()> open_library;  ///< called when a library is needed
    std::function<Timestamp()> now;                        ///< for what is imported
    std::function<DrawnPicture(const PictureRequest&)> picture;
    std::function<DrawnSheet(const SheetRequest&)> sheet = {};
    std::vector<BuiltOn> built_on = {};  ///< what --version names below the program's own
};

/// What came of it.
struct CommandOutcome {
    int status = exit_fit;
    std::optional<WindowRequest> window;  ///< set: there was no command, open this
};

/// Carries out the arguments (UTF-8, without the program's own name). Throws only for lack of
/// memory. Output that can't be written ends with `exit_trouble`.
CommandOutcome run_command_line(const std::vector<std::string>& arguments,
                                const CommandServices& services);

}  // namespace carriageway
