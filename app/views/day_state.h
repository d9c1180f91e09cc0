// The run and what surrounds it: which part of its sheet is shown, and what is under way there.
// Nothing here is part of a job.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "app/records/library.h"
#include "core/fields.h"
#include "core/walk_merge.h"

namespace carriageway {

struct StationSearch; // station_search.h

/// Parts of the sheet; `contents` leads to all of them.
enum class DayPart { contents, stations, walk, lists, recipe, paper, runs, compare, merge };

enum class PaperSize { a4, letter };

/// What a printed sheet holds.
enum class PaperLayout { overview_and_heads, overview_and_table };

/// What a person is used to; kept in the library's settings.
struct Habits {
    std::string initials;     ///< that ticks are kept with
    PaperSize paper = PaperSize::a4;
    PaperLayout layout = PaperLayout::overview_and_heads;
    std::string link_base;    ///< address that links begin with, where the window has none of its own
    bool first_steps = false; ///< done or skipped: not shown again unless asked
    bool operator==(const Habits&) const = default;
};

/// Numbers that the pad types for the run, where they are no fields of the job.
enum class DayNumber {
    none,
    really_set, ///< what a field of a head was really set to, on the walk
    printed,    ///< pieces so far
    spoiled,    ///< of them
    minutes,    ///< that the press stood still
};

/// What the number pad is open for.
struct DayTarget {
    DayNumber number = DayNumber::none;
    HeadId head = 0;            ///< of really_set
    Field field = Field::count; ///< of really_set
};

/// What comes from the other half of a walk without anybody choosing.
struct TakenOver {
    struct Place {
        HeadId head = 0; ///< 0: the job's own numbers
        int marks = 0;
    };
    std::vector<Place> walk; ///< in walking order, only where there are any
    int steps = 0;     ///< ticked, of the lists
    int counts = 0;    ///< of pieces
    int stoppages = 0;
    int readings = 0;  ///< of heights
    int others = 0;    ///< numbers, texts and lists that only the other half has
    bool nothing() const {
        return walk.empty() && steps + counts + stoppages + readings + others == 0;
    }
};

/// Two halves of a walk that are put together.
struct MergeState {
    WalkMerge merge;
    std::vector<bool> take_theirs; ///< one a conflict
    TakenOver taken_over; ///< counted once: a frame draws what stands here
    bool by_link = false; ///< the other half came by a link
    std::optional<DayPart> before; ///< what the sheet showed; nothing: it was closed
};

/// A job that the one that is open is compared with.
struct CompareState {
    std::string name; ///< in the user's language
    Job job;          ///< as it was really set
    bool everything = false; ///< names, notes and wishes as well
};

struct DayState {
    bool open = false;
    DayPart part = DayPart::contents;
    std::string opener; ///< what had the keyboard's focus before
    HeadId walk_head = 0; ///< shown on the walk
    bool walk_all = false; ///< all heads are shown instead
    CheckList list = CheckList::before_run;
    bool in_run = false;        ///< counts and stoppages are shown instead of the list
    bool changing_list = false; ///< its steps are being put in and taken out
    bool only_gaps = false;     ///< of the recipe
    StopReason reason = StopReason::other; ///< chosen for the next stoppage
    double printed = 0.0; ///< typed for the count that is being entered
    std::shared_ptr<StationSearch> search; ///< for the best placement: under way, or done
    RunId run = 0;        ///< chosen in the history
    std::optional<MergeState> merge;
    std::optional<CompareState> compare;
};

} // namespace carriageway
