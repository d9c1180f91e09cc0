// What a fault of a file says was expected, in no language.
#pragma once

#include <string>

#include "app/records/form.h"

namespace carriageway {

/// "10 … 2000" in the file's unit.
std::string range_text(const NumberRange& range);
std::string range_text(const WholeRange& range);

/// "3" or "3 … 2000": how many items a list has.
std::string size_text(const ListSize& size);

/// The choices in quotes; of many the one that `found` was probably meant to be, or the first few:
/// more would be noise.
std::string choices_text(const Choices& choices, const std::string& found);

} // namespace carriageway
