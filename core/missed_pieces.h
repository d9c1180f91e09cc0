// From tiles of missed image to pieces: a part of cover() that needs no bands.
#pragma once

#include "core/coverage.h"

namespace carriageway {

/// The tile that stands for all those connected to `tile`. `scratch.root` leads each tile toward
/// it; paths are shortened on the way.
inline std::uint32_t root_of(CoverScratch& scratch, std::uint32_t tile) {
    std::vector<std::uint32_t>& root = scratch.root;
    while (root[tile] != tile) tile = root[tile] = root[root[tile]];
    return tile;
}

/// Writes the pieces that the tiles of `scratch` make up, and their tiles, over those of `out`,
/// whose image area must be known: pieces too small for it are left out (least_piece_share).
/// Pieces come in the order of their kinds, then of their bounds' lo, then left.
void gather_pieces(CoverScratch& scratch, Coverage& out);

} // namespace carriageway
