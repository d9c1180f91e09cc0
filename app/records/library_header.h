// The first bytes of a library's file, looked at before SQLite touches it: what isn't ours is not
// even locked.
#pragma once

#include <cstdint>
#include <string>

namespace carriageway {

/// Throws LibraryStop for a file that does not begin as a library of this program does, is of a
/// newer version, or has been cut short. One that isn't there, is empty or can't be read passes:
/// opening it says that better.
void look_at_header(const std::string& path);

/// What to say of a library of a newer version.
std::string newer_detail(std::int64_t version);

} // namespace carriageway
