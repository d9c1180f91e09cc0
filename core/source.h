// Where a figure comes from, so that whoever shows it can say so.
#pragma once

namespace carriageway {

enum class SourceKind {
    published,             ///< read in a public source
    published_conflicting, ///< likewise, and other sources say otherwise
    from_memory,           ///< known to be published, not looked up
    common_practice,       ///< the trade's habit, no source
    ours,                  ///< chosen or derived here
    user,                  ///< typed in or measured by the person
};

} // namespace carriageway
