// The fields of jobs, press profiles and edits, as a form to walk along.
#pragma once

#include "app/records/form.h"
#include "core/edit.h"
#include "core/job.h"

namespace carriageway {

/// Keys that open a document and hold its version.
inline constexpr const char* job_key = "carriageway_job";
inline constexpr const char* press_key = "carriageway_press";
inline constexpr const char* edit_key = "carriageway_edit";

/// Members of a document, without its version. While reading, values are filled in as they come,
/// so after a fault the object is of no use.
void describe_job(Form& form, Job& job);
void describe_press(Form& form, PressProfile& press);
void describe_edit(Form& form, Edit& edit);

/// The path of a field from the top of a job file, with the index of its head in the list where it
/// belongs to one: "heads[2].image.width_mm".
std::string path_of(Field field, std::size_t head_index);

/// A station's use as files name it: "flash".
const char* station_use_key(StationUse use);

} // namespace carriageway
