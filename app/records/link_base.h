// The address that links to jobs begin with: where the program stands on the web.
#pragma once

#include <string>
#include <string_view>

namespace carriageway {

/// Whether links can stand behind an address: http or https, and nothing in it that a terminal, a
/// message or a code would break.
bool usable_link_base(std::string_view base);

/// The link that begins with `base`, whose own fragment, if it has one, makes room. `fragment` is a
/// job's (job_link.h); without one there is no link: empty.
std::string link_on(std::string_view base, std::string_view fragment);

} // namespace carriageway
