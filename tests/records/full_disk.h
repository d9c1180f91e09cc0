// A disk that fills up: an SQLite VFS that hands everything on to the default one, until it is told
// that there is no more room.
#pragma once

namespace carriageway {

/// Registered under the name "full-disk"; one for the whole test program.
class FullDisk {
  public:
    static const char* name() { return "full-disk"; }
    static void install(); ///< once is enough; more does no harm
    /// Bytes that can still be written; below 0: as many as anyone likes. Writing over what is there
    /// counts too, as on file systems that write each change to a new place.
    static void leave(long long bytes);
};

} // namespace carriageway
