// Working the lists of a run (check_list.h): how far each is, ticks given and taken back, and the
// lists of the press made a person's own. Everything comes as an edit of the job.
//
// A step that is taken out takes its tick along. The id of an own step follows from its list and
// its text, so that a tick isn't taken for another step's where a job goes to another press.
#pragma once

#include <optional>
#include <string>

#include "core/edit.h"

namespace carriageway {

/// How far a list is.
struct ListProgress {
    int ticked = 0;
    int steps = 0;
    bool operator==(const ListProgress&) const = default;
};

/// Of one list, and of all. Ticks whose step the press doesn't have count nothing.
ListProgress list_progress(const Job& job, CheckList list);
ListProgress list_progress(const Job& job);

/// The tick of an item; nullptr: it has none.
const CheckTick* tick_of(const RunRecord& record, std::uint32_t item);

/// Ticks an item, or takes its tick back. An item that is ticked keeps the tick that it has, one
/// that the press doesn't have gets none: the edit then changes nothing.
Edit tick_step(const Job& job, std::uint32_t item, bool done, const Stamp& stamp);

/// Puts a step of a person's own at the end of a list. Nothing: the text is no name (job_check.h)
/// or empty, or the press has as many steps as it may.
std::optional<Edit> add_step(const Job& job, CheckList list, const std::string& text);

/// Takes a step out of the press's lists, and its tick with it. Nothing: there is no such step, or
/// it is the last one (a press with no steps has the usual ones).
std::optional<Edit> remove_step(const Job& job, std::uint32_t item);

/// Puts the usual steps back that have been taken out; own steps stay. Nothing: none is missing, or
/// there is no room for them.
std::optional<Edit> bring_usual_steps_back(const Job& job);

} // namespace carriageway
