// Jobs and edits to store.
#pragma once

#include <optional>
#include <random>
#include <string>
#include <vector>

#include "app/records/library.h"
#include "core/edit.h"

namespace samples {

/// A job that fault_of() accepts, with one head a colour, on stations 1, 2, ...
carriageway::Job job(const std::string& name,
                     const std::vector<std::string>& colours = {"Black", "Red", "White"},
                     const std::string& press = "Press one");

/// Draws an edit of any kind and applies it; draws again while it is refused.
carriageway::LoggedEdit random_edit(carriageway::Job& job, std::mt19937& random,
                                    carriageway::Timestamp time);

/// The edit that sets the first head's stops so that the `number`th of a row can be told from all
/// others, applied.
carriageway::LoggedEdit numbered_edit(carriageway::Job& job, int number,
                                      carriageway::Timestamp time);

/// The number of an edit made by numbered_edit(); -1 for any other.
int number_of_edit(const carriageway::Edit& edit);

} // namespace samples
