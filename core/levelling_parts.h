// Which heads and platens a list of readings is about, and which of them hang together. Serves
// levelling.h.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/levelling.h"

namespace carriageway {

/// The readings with heads and platens numbered through: heads from 0, then platens.
struct LevelParts {
    std::vector<std::uint32_t> heads;
    std::vector<std::uint32_t> platens;
    std::vector<std::size_t> head_of; ///< of each reading
    std::vector<std::size_t> platen_of;
    std::size_t count() const { return heads.size() + platens.size(); }
};

LevelParts level_parts(const std::vector<HeightReading>& readings);

/// A number for each part, alike for those that the given readings (indices) join, directly or
/// through others.
std::vector<std::size_t> joined(const LevelParts& parts, const std::vector<std::size_t>& readings);

/// Whether points lie far enough apart, in both directions, to carry a plane.
bool carry_plane(const std::vector<Point>& points);

} // namespace carriageway
