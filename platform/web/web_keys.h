// The browser's keys as the program's.
#pragma once

#include <string>
#include <string_view>

#include "app/input.h"

namespace carriageway {

/// A key by its name in UI Events (KeyboardEvent.key); Key::none for all others. Letters are
/// meant as shortcuts, whatever their case.
Key key_of(std::string_view name);

/// The text that a key types: its name, where that is one character; otherwise nothing.
std::string text_of_key(std::string_view name);

} // namespace carriageway
