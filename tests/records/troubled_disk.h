// A disk with troubles of its own: an SQLite VFS that hands everything on to the default one, fails
// when told to, and remembers what a power cut would leave.
#pragma once

#include <random>
#include <string>

namespace carriageway {

/// Registered under the name "troubled-disk"; one for the whole test program. Waits for no disk: a
/// sync is only noted.
class TroubledDisk {
  public:
    static const char* name() { return "troubled-disk"; }
    static void install(); ///< once is enough; more does no harm

    enum class Trouble {
        once,     ///< this operation fails
        for_good, ///< and all after it
        unsaid,   ///< what should have been written is not, and nobody is told: no disk may do that
    };
    /// Fails the operation of this number, counted from now from 0: opening, reading, writing,
    /// cutting, syncing, deleting, asking for the size or for a lock. Below 0: none.
    static void fail(long long number, Trouble trouble = Trouble::once);
    static long long operations(); ///< since then
    static bool failed();          ///< whether it came to that

    /// Begins to remember what reaches the disk. `lies`: a sync brings nothing there.
    static void remember(bool lies = false);
    /// What of that is still there after the power was cut.
    enum class Left {
        synced, ///< what was synced and nothing else
        some,   ///< and, by chance, parts of the rest, in sectors of 512 bytes
    };
    /// Puts the files as they are then into another folder, and remembers no more.
    static void cut(const std::string& folder, Left left, std::mt19937& random);
};

} // namespace carriageway
