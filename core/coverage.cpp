// Cutting columns by the two bands, and joining neighbours of what is missed.
#include "core/coverage.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <limits>

#include "core/missed_pieces.h"

namespace carriageway {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

enum class Fate : std::uint8_t { unprinted, starved, heavy, covered };
static_assert(static_cast<int>(Fate::unprinted) == static_cast<int>(MissKind::unprinted) &&
              static_cast<int>(Fate::starved) == static_cast<int>(MissKind::starved) &&
              static_cast<int>(Fate::heavy) == static_cast<int>(MissKind::heavy));

/// What happens along the arm at one x: below levels[0] fates[0], then between the levels, and
/// above the last one the last fate.
struct Ladder {
    std::array<double, 4> levels{};
    std::array<Fate, 5> fates{};
    std::size_t count = 0; ///< levels in use
};

/// The two bands as ladders: outside the squeegee across the arm, inside it but beside the flood,
/// and inside both.
struct Plan {
    Rect both; ///< where squeegee and flood both pass
    double squeegee_left = infinity, squeegee_right = infinity;
    double flood_left = infinity, flood_right = infinity; ///< within the squeegee's
    Ladder outside; ///< as it stands here, everything unprinted
    Ladder beside, inside;
};

Plan plan_of(const Bands& bands) {
    const Rect& squeegee = bands.squeegee;
    const Rect& flood = bands.flood;
    Plan plan;
    if (!bands.moves || squeegee.empty()) return plan;
    plan.squeegee_left = squeegee.left;
    plan.squeegee_right = squeegee.right;
    if (flood.empty()) {
        plan.flood_left = plan.flood_right = squeegee.left;
        plan.beside = {{squeegee.lo, squeegee.hi},
                       {Fate::unprinted, Fate::starved, Fate::unprinted}, 2};
        return plan;
    }
    plan.flood_left = std::clamp(flood.left, squeegee.left, squeegee.right);
    plan.flood_right = std::clamp(flood.right, squeegee.left, squeegee.right);
    const double lo = std::clamp(flood.lo, squeegee.lo, squeegee.hi);
    const double hi = std::clamp(flood.hi, squeegee.lo, squeegee.hi);
    plan.both = {plan.flood_left, plan.flood_right, lo, hi};
    const bool to_machine = bands.flood_finish == End::machine_side;
    const Fate below = to_machine ? Fate::starved : Fate::heavy;
    const Fate above = to_machine ? Fate::heavy : Fate::starved;
    plan.inside = {{squeegee.lo, lo, hi, squeegee.hi},
                   {Fate::unprinted, below, Fate::covered, above, Fate::unprinted}, 4};
    plan.beside = {{squeegee.lo, to_machine ? hi : lo, squeegee.hi},
                   {Fate::unprinted, below, above, Fate::unprinted}, 3};
    return plan;
}

const Ladder& ladder_at(const Plan& plan, double x) {
    if (x < plan.squeegee_left || x > plan.squeegee_right) return plan.outside;
    if (x < plan.flood_left || x > plan.flood_right) return plan.beside;
    return plan.inside;
}

/// The x at which one column has to be cut: its sides, then where a band begins or ends across,
/// or where its bottom or top crosses a level.
class Cuts {
  public:
    Cuts(const Column& column, const Plan& plan) {
        places_[0] = column.x0;
        add(column, plan.squeegee_left);
        add(column, plan.squeegee_right);
        if (column.x1 > plan.squeegee_left && column.x0 < plan.squeegee_right) {
            add(column, plan.flood_left);
            add(column, plan.flood_right);
            add_crossings(column, plan.inside.count > 0 ? plan.inside : plan.beside);
        }
        places_[count_++] = column.x1;
    }

    std::size_t parts() const { return count_ - 1; }
    double operator[](std::size_t i) const { return places_[i]; }

  private:
    void add(const Column& column, double x) {
        if (!(x > column.x0 && x < column.x1)) return;
        std::size_t place = count_;
        while (places_[place - 1] > x) --place;
        if (places_[place - 1] == x) return;
        for (std::size_t i = count_; i > place; --i) places_[i] = places_[i - 1];
        places_[place] = x;
        ++count_;
    }

    void add_crossings(const Column& column, const Ladder& ladder) {
        for (std::size_t i = 0; i < ladder.count; ++i) {
            const double level = ladder.levels[i];
            add_crossing(column, column.lo0 - level, column.lo1 - level);
            add_crossing(column, column.hi0 - level, column.hi1 - level);
        }
    }

    /// Where a line that stands `from` above a level at x0 and `to` at x1 crosses it.
    void add_crossing(const Column& column, double from, double to) {
        if ((from < 0.0 && to > 0.0) || (from > 0.0 && to < 0.0))
            add(column, column.x0 + (column.x1 - column.x0) * (from / (from - to)));
    }

    // Two sides, four ends of bands, and two lines with four levels each.
    std::array<double, 14> places_{};
    std::size_t count_ = 1;
};

bool lies_in(const Column& column, const Rect& rect) {
    return column.x0 >= rect.left && column.x1 <= rect.right &&
           std::min(column.lo0, column.lo1) >= rect.lo &&
           std::max(column.hi0, column.hi1) <= rect.hi;
}

/// Tiles of what is missed, each kept with its neighbours in one tree of `root`.
class MissedTiles {
  public:
    MissedTiles(const Plan& plan, CoverScratch& scratch) : plan_(plan), scratch_(scratch) {
        scratch_.tiles.clear();
        scratch_.kinds.clear();
        scratch_.root.clear();
    }

    /// Cuts all columns, slab by slab; returns the area that is covered.
    double cut(const std::vector<Column>& columns) {
        double covered = 0.0;
        scratch_.before.clear();
        double x_before = 0.0;
        for (std::size_t i = 0; i < columns.size();) {
            const double x0 = columns[i].x0;
            if (!scratch_.before.empty() && x_before != x0) scratch_.before.clear();
            x_before = columns[i].x1;
            scratch_.left.clear();
            scratch_.right.clear();
            for (; i < columns.size() && columns[i].x0 == x0; ++i) covered += cut(columns[i]);
            join(
                scratch_.before.size(), [this](std::size_t k) { return scratch_.before[k]; },
                scratch_.left.size(), [this](std::size_t k) { return scratch_.left[k]; });
            scratch_.before.swap(scratch_.right);
        }
        return covered;
    }

  private:
    double cut(const Column& column) {
        if (lies_in(column, plan_.both)) return column.area();
        const Cuts cuts(column, plan_);
        double covered = 0.0;
        std::size_t before = scratch_.tiles.size();
        for (std::size_t i = 0; i < cuts.parts(); ++i) {
            const std::size_t first = scratch_.tiles.size();
            covered += cut_part(part_of(column, cuts[i], cuts[i + 1]));
            const std::size_t end = scratch_.tiles.size();
            if (i == 0) list(scratch_.left, first, end);
            if (i + 1 == cuts.parts()) list(scratch_.right, first, end);
            join(
                first - before, [before](std::size_t k) { return before + k; }, end - first,
                [first](std::size_t k) { return first + k; });
            before = first;
        }
        return covered;
    }

    /// Cuts what no level crosses inside: the tiles come from bottom to top.
    double cut_part(const Column& part) {
        const Ladder& ladder = ladder_at(plan_, 0.5 * (part.x0 + part.x1));
        const double lo = 0.5 * (part.lo0 + part.lo1);
        const double hi = 0.5 * (part.hi0 + part.hi1);
        double covered = 0.0;
        for (std::size_t i = 0; i <= ladder.count; ++i) {
            Column tile = part;
            if (i > 0) {
                const double level = ladder.levels[i - 1];
                if (hi <= level) break;
                if (lo < level) tile.lo0 = tile.lo1 = level;
            }
            if (i < ladder.count) {
                const double level = ladder.levels[i];
                if (lo >= level || (i > 0 && level <= ladder.levels[i - 1])) continue;
                if (hi > level) tile.hi0 = tile.hi1 = level;
            }
            covered += keep(tile, ladder.fates[i]);
        }
        return covered;
    }

    /// Keeps a tile of missed image; of a covered one returns the area.
    double keep(Column tile, Fate fate) {
        tile.hi0 = std::max(tile.lo0, tile.hi0);
        tile.hi1 = std::max(tile.lo1, tile.hi1);
        if (fate == Fate::covered) return tile.area();
        scratch_.root.push_back(static_cast<std::uint32_t>(scratch_.tiles.size()));
        scratch_.kinds.push_back(static_cast<MissKind>(fate));
        scratch_.tiles.push_back(tile);
        return 0.0;
    }

    static void list(std::vector<std::uint32_t>& side, std::size_t first, std::size_t end) {
        for (std::size_t tile = first; tile < end; ++tile)
            side.push_back(static_cast<std::uint32_t>(tile));
    }

    /// Joins tiles left of a cut with those right of it that share some of their side; both come
    /// from bottom to top.
    template <class LeftTile, class RightTile>
    void join(std::size_t lefts, LeftTile left_tile, std::size_t rights, RightTile right_tile) {
        for (std::size_t i = 0, j = 0; i < lefts && j < rights;) {
            const auto left = static_cast<std::uint32_t>(left_tile(i));
            const auto right = static_cast<std::uint32_t>(right_tile(j));
            const Column& a = scratch_.tiles[left];
            const Column& b = scratch_.tiles[right];
            const double shared = std::min(a.hi1, b.hi0) - std::max(a.lo1, b.lo0);
            if (shared > least_neck && scratch_.kinds[left] == scratch_.kinds[right])
                scratch_.root[root_of(scratch_, right)] = root_of(scratch_, left);
            if (a.hi1 < b.hi0)
                ++i;
            else
                ++j;
        }
    }

    const Plan& plan_;
    CoverScratch& scratch_;
};

} // namespace

void cover(const std::vector<Column>& columns, const Bands& bands, CoverScratch& scratch,
           Coverage& out) {
    out.image_area = 0.0;
    for (const Column& column : columns) out.image_area += column.area();
    const Plan plan = plan_of(bands);
    MissedTiles missed(plan, scratch);
    out.covered_area = missed.cut(columns);
    gather_pieces(scratch, out);
}

} // namespace carriageway
