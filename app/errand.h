// What only the system around the program can do, as values: the program asks, a window carries it
// out.
#pragma once

#include <cstdint>
#include <string>

namespace carriageway {

enum class ErrandKind : std::uint8_t {
    pick_file,  ///< let the person choose a job file; it comes back as InputKind::file
    give_file,  ///< hand out the file at `text`: share it, or put it among the downloads
    copy_text,  ///< put `text` on the clipboard
    share_text, ///< offer `text`, a link, to the system's sharing
    take_over,  ///< make this the one place that writes the library
    update,     ///< start the newer version that is waiting
    link_taken, ///< the link that the program was opened with has been dealt with
};

struct Errand {
    ErrandKind kind = ErrandKind::pick_file;
    std::string text;
};

/// What a window can do besides drawing; views offer nothing that can't be done.
struct Abilities {
    bool pick_file = false;
    bool give_file = false;  ///< otherwise a job is written beside the library
    bool copy_text = false;
    bool share_text = false;
    /// Address in front of a job link's fragment; empty: there is none, so no links are offered.
    std::string link_base;
    bool operator==(const Abilities&) const = default;
};

} // namespace carriageway
