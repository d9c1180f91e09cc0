#include "tests/records/disk_memory.h"

#include <algorithm>

#include "tests/scratch_folder.h"

namespace carriageway {

namespace {

constexpr long long sector = 512;

} // namespace

void DiskMemory::opened(const std::string& path, bool was_there) {
    if (!on) return;
    const auto [found, first] = files_.try_emplace(path);
    File& file = found->second;
    if (first && was_there) {
        file.there = true;
        file.bytes = bytes_of(path);
    }
    if (!first && !was_there) file.changes.push_back({true, 0, {}}); // made anew
    file.now_there = true;
}

void DiskMemory::written(const std::string& path, const void* data, int count, long long offset) {
    if (!on) return;
    files_[path].changes.push_back(
        {false, offset, std::string(static_cast<const char*>(data), static_cast<size_t>(count))});
}

void DiskMemory::cut_short(const std::string& path, long long size) {
    if (on) files_[path].changes.push_back({true, size, {}});
}

void DiskMemory::synced(const std::string& path) {
    if (!on || lies) return;
    File& file = files_[path];
    for (const Change& change : file.changes) apply(file.bytes, change);
    file.changes.clear();
    file.there = file.now_there;
}

void DiskMemory::deleted(const std::string& path, bool synced) {
    if (!on) return;
    File& file = files_[path];
    file.now_there = false;
    if (!synced || lies) return;
    file = File{};
}

void DiskMemory::apply(std::string& bytes, const Change& change) {
    const auto at = static_cast<std::size_t>(change.at);
    if (change.cut) {
        bytes.resize(at);
        return;
    }
    bytes.resize(std::max(bytes.size(), at + change.bytes.size()));
    std::copy(change.bytes.begin(), change.bytes.end(),
              bytes.begin() + static_cast<std::ptrdiff_t>(at));
}

void DiskMemory::apply_parts(std::string& bytes, const Change& change, std::mt19937& random) {
    if (change.cut) {
        if (random() % 2 == 0) apply(bytes, change);
        return;
    }
    const long long end = change.at + static_cast<long long>(change.bytes.size());
    for (long long at = change.at; at < end;) {
        const long long next = std::min(end, (at / sector + 1) * sector);
        const auto from = static_cast<std::size_t>(at - change.at);
        if (random() % 2 == 0)
            apply(bytes, {false, at, change.bytes.substr(from, static_cast<size_t>(next - at))});
        at = next;
    }
}

std::map<std::string, std::string> DiskMemory::left(bool some, std::mt19937& random) const {
    std::map<std::string, std::string> out;
    for (const auto& [path, file] : files_) {
        bool there = file.there;
        std::string bytes = file.bytes;
        if (some) {
            if (there != file.now_there && random() % 2 == 0) there = file.now_there;
            // Mostly all or nothing of the last writes is too kind; mostly parts is, too.
            const bool all = random() % 4 == 0;
            for (const Change& change : file.changes)
                all ? apply(bytes, change) : apply_parts(bytes, change, random);
        }
        if (there) out[path.substr(path.find_last_of('/') + 1)] = std::move(bytes);
    }
    return out;
}

} // namespace carriageway
