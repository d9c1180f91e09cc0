// What of some files is on a disk, and what would be lost if the power were cut now.
#pragma once

#include <map>
#include <random>
#include <string>
#include <vector>

namespace carriageway {

class DiskMemory {
  public:
    bool on = false;
    bool lies = false; ///< a sync brings nothing to the disk

    void opened(const std::string& path, bool was_there);
    void written(const std::string& path, const void* data, int count, long long offset);
    void cut_short(const std::string& path, long long size);
    void synced(const std::string& path);
    void deleted(const std::string& path, bool synced);

    /// The files, by their names without folders, as they are after the power was cut. `some`: parts
    /// of what wasn't synced may be there.
    std::map<std::string, std::string> left(bool some, std::mt19937& random) const;

  private:
    struct Change {
        bool cut = false;
        long long at = 0; ///< where it was written; the new size of one that was cut
        std::string bytes;
    };
    struct File {
        bool there = false; ///< its name is on the disk
        std::string bytes;
        bool now_there = false; ///< as the program sees it
        std::vector<Change> changes;
    };
    static void apply(std::string& bytes, const Change& change);
    static void apply_parts(std::string& bytes, const Change& change, std::mt19937& random);

    std::map<std::string, File> files_;
};

} // namespace carriageway
