// Text that travels in a link's fragment: the form that job_link.h describes, for any document.
#pragma once

#include <string>
#include <string_view>

#include "app/records/job_link.h"

namespace carriageway {

/// "job=1.…" for a text; `marker` is what stands before the version: "job=". Empty where the text
/// or the fragment is larger than links carry (job_link.h).
std::string link_fragment(std::string_view marker, std::string_view text);

/// What a link carries, or why it can't be read.
struct LinkText {
    std::string text;
    ReadFault fault; ///< Kind::none, not_a_link, newer_link, damaged_link or link_too_large
};

/// Whether a marker stands in an address or a fragment.
bool has_marker(std::string_view link, std::string_view marker);

/// Reads what stands behind the marker in an address or a fragment; see read_job_link().
LinkText read_link_text(std::string_view link, std::string_view marker);

} // namespace carriageway
