// Which key of a file a misspelled one was probably meant to be.
#pragma once

#include <string>
#include <vector>

namespace carriageway {

/// The candidate that `key` was probably meant to be, or an empty text: one whose unit was left out
/// or is another, or one that is at most a third of its letters away.
std::string meant_key(const std::string& key, const std::vector<std::string>& candidates);

} // namespace carriageway
