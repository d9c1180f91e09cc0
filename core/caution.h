// What to keep in mind before hands or eyes come near a press. The machine's manual, the employer's
// procedures, local codes and licensed practice come first; nothing here says that a press is safe.
#pragma once

namespace carriageway {

enum class Caution {
    none,
    hands_in_carriage, ///< hands go under an arm or into a carriage
    index_path,        ///< keep clear of what turns, and of a carriage that runs
    isolated_and_bled, ///< air and electrical power isolated and locked, air bled
    lamps_alive,       ///< air bled, control power on for the lamps, moved by hand only
    hot_surface,       ///< flash and platens burn
    solvents,          ///< inks and solvents: air, gloves, the maker's safety sheet
};

} // namespace carriageway
