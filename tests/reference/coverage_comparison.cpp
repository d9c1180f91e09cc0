#include "tests/reference/coverage_comparison.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace carriageway::reference {

namespace {

constexpr const char* kind_names[] = {"unprinted", "starved", "heavy"};

/// Contact thinner than this, mm, is rounding's.
constexpr double thinnest = 1e-9;

/// How far the bounds of a piece may be off, mm.
constexpr double bounds_tolerance = 1e-6;

using Parts = std::vector<Region::Part>;

Parts worth_counting(const Parts& parts, double least_area) {
    Parts kept;
    std::copy_if(parts.begin(), parts.end(), std::back_inserter(kept),
                 [least_area](const Region::Part& part) { return part.area > least_area; });
    return kept;
}

bool near(const Rect& a, const Rect& b) {
    return std::abs(a.left - b.left) <= bounds_tolerance &&
           std::abs(a.right - b.right) <= bounds_tolerance &&
           std::abs(a.lo - b.lo) <= bounds_tolerance && std::abs(a.hi - b.hi) <= bounds_tolerance;
}

/// Each reference piece must have its own among ours.
bool paired(std::vector<const MissedPiece*> ours, const Parts& theirs, double tolerance) {
    for (const Region::Part& part : theirs) {
        const auto found =
            std::find_if(ours.begin(), ours.end(), [&](const MissedPiece* piece) {
                return std::abs(piece->area - part.area) <= tolerance &&
                       near(piece->bounds, part.bounds);
            });
        if (found == ours.end()) return false;
        ours.erase(found);
    }
    return ours.empty();
}

Rect grown(const Rect& rect, double by) {
    return {rect.left - by, rect.right + by, rect.lo - by, rect.hi + by};
}

/// Whether two coverages of one image have other numbers of pieces worth counting.
bool pieces_change(const RegionCoverage& plain, const RegionCoverage& other) {
    for (std::size_t kind = 0; kind < 3; ++kind)
        for (double share : {0.5, 1.0, 2.0}) {
            const double least = share * least_piece_share * plain.image_area;
            if (worth_counting(plain.pieces[kind], least).size() !=
                worth_counting(other.pieces[kind], least).size())
                return true;
        }
    return false;
}

/// Whether moving sides of the bands or of the image by less than anything that counts changes the
/// pieces: a crack of 1e-15 mm, where corners of one x differ in their last bit, parts an image for
/// one program and not for another.
bool decided_by_rounding(const Region& image, const Bands& bands) {
    const RegionCoverage plain = region_coverage(image, bands);
    for (double s : {-thinnest, thinnest}) {
        if (pieces_change(plain, region_coverage(image.offset(s), bands))) return true;
        for (double f : {-thinnest, thinnest}) {
            Bands moved = bands;
            moved.squeegee = grown(bands.squeegee, s);
            moved.flood = grown(bands.flood, f);
            if (pieces_change(plain, region_coverage(image, moved))) return true;
        }
    }
    for (const Parts& parts : plain.pieces)
        for (const Region::Part& part : parts) {
            const double share = part.area / plain.image_area / least_piece_share;
            if (share > 0.5 && share < 2.0) return true;
        }
    return false;
}

/// The tiles of each piece must make it up.
void compare_tiles(Tally& tally, std::uint64_t number, const Coverage& ours, double tolerance) {
    std::size_t next = 0;
    for (const MissedPiece& piece : ours.pieces) {
        if (piece.first != next || next + piece.count > ours.tiles.size()) {
            tally.disagree(number, "tiles of the pieces don't follow one another");
            return;
        }
        double area = 0.0;
        for (std::size_t i = 0; i < piece.count; ++i) area += ours.tiles[next + i].area();
        next += piece.count;
        tally.close(number, "area of a piece's tiles", area, piece.area, tolerance);
    }
    if (next != ours.tiles.size()) tally.disagree(number, "tiles without a piece");
}

void count_classes(Tally& tally, const RegionCoverage& theirs, const Parts (&pieces)[3]) {
    bool hole = false;
    std::size_t all = 0;
    for (std::size_t kind = 0; kind < 3; ++kind) {
        tally.count(kind_names[kind], !pieces[kind].empty());
        all += pieces[kind].size();
        for (const Region::Part& part : pieces[kind]) hole = hole || part.has_hole;
    }
    tally.count("fully covered", all == 0);
    tally.count("not covered at all", theirs.covered_area <= 0.0);
    tally.count("with four pieces or more", all >= 4);
    tally.count("with a ring", hole);
}

} // namespace

void compare_coverage(Tally& tally, std::uint64_t number, const Region& image, const Bands& bands,
                      const Coverage& ours) {
    const RegionCoverage theirs = region_coverage(image, bands);
    const double tolerance = area_tolerance * theirs.image_area;
    const double least = least_piece_share * theirs.image_area;
    tally.close(number, "image area", ours.image_area, theirs.image_area, tolerance);
    tally.close(number, "covered area", ours.covered_area, theirs.covered_area, tolerance);
    compare_tiles(tally, number, ours, tolerance);

    Parts pieces[3];
    std::string differing;
    for (std::size_t kind = 0; kind < 3; ++kind) {
        pieces[kind] = worth_counting(theirs.pieces[kind], least);
        std::vector<const MissedPiece*> of_kind;
        double our_total = 0.0, their_total = 0.0;
        for (const MissedPiece& piece : ours.pieces)
            if (static_cast<std::size_t>(piece.kind) == kind) {
                of_kind.push_back(&piece);
                our_total += piece.area;
            }
        for (const Region::Part& part : theirs.pieces[kind]) their_total += part.area;
        tally.close(number, kind_names[kind], our_total, their_total, tolerance);
        if (!paired(of_kind, pieces[kind], tolerance))
            differing += std::string(" ") + kind_names[kind] + ": " +
                         std::to_string(of_kind.size()) + " pieces, reference " +
                         std::to_string(pieces[kind].size()) +
                         (of_kind.size() == pieces[kind].size() ? " elsewhere or of other areas;"
                                                                : ";");
    }
    count_classes(tally, theirs, pieces);
    const bool rounding = !differing.empty() && decided_by_rounding(image, bands);
    tally.count("decided by rounding", rounding);
    if (!differing.empty() && !rounding) tally.disagree(number, "pieces differ:" + differing);
}

} // namespace carriageway::reference
