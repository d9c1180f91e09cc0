#include "core/missed_pieces.h"

#include <algorithm>
#include <cstddef>

namespace carriageway {

namespace {

/// Adds a tile's area and extent to its piece.
void add_to(MissedPiece& piece, const Column& tile) {
    piece.area += tile.area();
    piece.bounds.left = std::min(piece.bounds.left, tile.x0);
    piece.bounds.right = std::max(piece.bounds.right, tile.x1);
    piece.bounds.lo = std::min({piece.bounds.lo, tile.lo0, tile.lo1});
    piece.bounds.hi = std::max({piece.bounds.hi, tile.hi0, tile.hi1});
    ++piece.count;
}

/// Lists a piece for each tree, its root in `first`.
void list_pieces(CoverScratch& scratch, std::vector<MissedPiece>& pieces) {
    const std::size_t count = scratch.tiles.size();
    scratch.piece.assign(count, 0);
    for (std::uint32_t tile = 0; tile < count; ++tile) {
        const Column& column = scratch.tiles[tile];
        const std::uint32_t root = root_of(scratch, tile);
        if (scratch.piece[root] == 0) {
            const Rect bounds{column.x0, column.x1, std::min(column.lo0, column.lo1),
                              std::max(column.hi0, column.hi1)};
            pieces.push_back({scratch.kinds[tile], 0.0, bounds, root, 0});
            scratch.piece[root] = static_cast<std::uint32_t>(pieces.size());
        }
        add_to(pieces[scratch.piece[root] - 1], column);
    }
}

bool comes_before(const MissedPiece& a, const MissedPiece& b) {
    if (a.kind != b.kind) return a.kind < b.kind;
    if (a.bounds.lo != b.bounds.lo) return a.bounds.lo < b.bounds.lo;
    if (a.bounds.left != b.bounds.left) return a.bounds.left < b.bounds.left;
    return a.first < b.first;
}

/// Puts the pieces in order and the tiles of each together. Pieces that were dropped keep the mark
/// 0, and their tiles go.
void arrange(CoverScratch& scratch, Coverage& out) {
    std::sort(out.pieces.begin(), out.pieces.end(), comes_before);
    std::fill(scratch.piece.begin(), scratch.piece.end(), 0U);
    std::uint32_t tiles = 0;
    for (std::size_t i = 0; i < out.pieces.size(); ++i) {
        MissedPiece& piece = out.pieces[i];
        scratch.piece[piece.first] = static_cast<std::uint32_t>(i + 1);
        piece.first = tiles;
        tiles += piece.count;
        piece.count = 0;
    }
    out.tiles.resize(tiles);
    for (std::uint32_t tile = 0; tile < scratch.tiles.size(); ++tile) {
        const std::uint32_t mark = scratch.piece[root_of(scratch, tile)];
        if (mark == 0) continue;
        MissedPiece& piece = out.pieces[mark - 1];
        out.tiles[piece.first + piece.count++] = scratch.tiles[tile];
    }
}

} // namespace

void gather_pieces(CoverScratch& scratch, Coverage& out) {
    out.pieces.clear();
    out.tiles.clear();
    if (scratch.tiles.empty()) return;
    list_pieces(scratch, out.pieces);
    const double least = least_piece_share * out.image_area;
    const auto rounding = [least](const MissedPiece& piece) { return piece.area < least; };
    out.pieces.erase(std::remove_if(out.pieces.begin(), out.pieces.end(), rounding),
                     out.pieces.end());
    arrange(scratch, out);
}

} // namespace carriageway
