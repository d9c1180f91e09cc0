#include "core/ink_shape.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/silhouette.h"

namespace carriageway {
namespace {

/// Pixels along one side of a cell: enough of them for `least` mm and for at most `most_cells`.
/// Offsets within a cell have 16 bits.
int cell_side(int pixels, double mm_a_pixel, double least, int most_cells) {
    constexpr double largest = std::numeric_limits<std::uint16_t>::max();
    const double few_enough = std::ceil(static_cast<double>(pixels) / std::max(1, most_cells));
    const double long_enough = std::ceil(std::max(0.0, least) / mm_a_pixel);
    return static_cast<int>(std::clamp(std::max(few_enough, long_enough), 1.0, largest));
}

bool has_size(double mm) { return std::isfinite(mm) && mm > 0.0; }

}  // namespace

InkShape::InkShape(const PixelGrid& grid, const InkRules& rules) : grid_(grid), rules_(rules) {
    grid_.width = std::clamp(grid.width, 0, largest_side);
    grid_.height = std::clamp(grid.height, 0, largest_side);
    rules_.most_corners = std::clamp(rules.most_corners, 4, most_outline_corners);
    if (grid_.width == 0 || grid_.height == 0) return;
    if (!has_size(grid_.across) || !has_size(grid_.along)) return;
    cell_width_ = cell_side(grid_.width, grid_.across, rules.cell, rules.most_cells);
    cell_height_ = cell_side(grid_.height, grid_.along, rules.cell, rules.most_cells);
    columns_ = (grid_.width + cell_width_ - 1) / cell_width_;
    rows_ = (grid_.height + cell_height_ - 1) / cell_height_;
    cells_.resize(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_));
}

void InkShape::add(int y, int first, int step, std::span<const std::uint8_t> darkness) {
    if (cells_.empty() || y < 0 || y >= grid_.height || first < 0 || step < 1) return;
    if (first >= grid_.width) return;
    const int room = (grid_.width - first + step - 1) / step;
    const int count = static_cast<int>(
        std::min(darkness.size(), static_cast<std::size_t>(room)));
    for (int at = 0; at < count;) {
        if (darkness[static_cast<std::size_t>(at)] < least_ink) {
            ++at;
            continue;
        }
        int end = at + 1;
        if (step == 1) {
            while (end < count && darkness[static_cast<std::size_t>(end)] >= least_ink) ++end;
        }
        const int from = first + at * step;
        add_run(y, from, from + (end - at));
        at = end;
    }
}

void InkShape::add_run(int y, int from, int to) {
    const int row = y / cell_height_;
    const auto in_row = static_cast<std::uint16_t>(y - row * cell_height_);
    for (int column = from / cell_width_; from < to; ++column) {
        const int start = column * cell_width_;
        const int end = std::min(to, start + cell_width_);
        Cell& cell = cells_[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) +
                            static_cast<std::size_t>(column)];
        const auto left = static_cast<std::uint16_t>(from - start);
        const auto right = static_cast<std::uint16_t>(end - 1 - start);
        if (cell.count == 0) {
            cell = {left, right, in_row, in_row, 0};
        } else {
            cell.left = std::min(cell.left, left);
            cell.right = std::max(cell.right, right);
            cell.top = std::min(cell.top, in_row);
            cell.bottom = std::max(cell.bottom, in_row);
        }
        cell.count += static_cast<std::uint32_t>(end - from);
        from = end;
    }
}

InkShape::Reach InkShape::reach_of(std::size_t index) const {
    const Cell& cell = cells_[index];
    const auto columns = static_cast<std::size_t>(columns_);
    const int left = static_cast<int>(index % columns) * cell_width_;
    const int top = static_cast<int>(index / columns) * cell_height_;
    return {left + cell.left, left + cell.right + 1, top + cell.top, top + cell.bottom + 1,
            cell.count};
}

void InkShape::join(Reach& whole, const Reach& part) {
    whole.left = std::min(whole.left, part.left);
    whole.right = std::max(whole.right, part.right);
    whole.top = std::min(whole.top, part.top);
    whole.bottom = std::max(whole.bottom, part.bottom);
    whole.count += part.count;
}

/// The patch that the cell `start` is part of; its cells are marked as seen and listed.
InkShape::Reach InkShape::patch_from(std::size_t start, std::vector<bool>& seen,
                                     std::vector<std::size_t>& cells) const {
    Reach patch;
    seen[start] = true;
    cells.assign(1, start);
    for (std::size_t next = 0; next < cells.size(); ++next) {
        const std::size_t index = cells[next];
        join(patch, reach_of(index));
        const int column = static_cast<int>(index % static_cast<std::size_t>(columns_));
        const int row = static_cast<int>(index / static_cast<std::size_t>(columns_));
        for (int r = std::max(0, row - 1); r <= std::min(rows_ - 1, row + 1); ++r) {
            for (int c = std::max(0, column - 1); c <= std::min(columns_ - 1, column + 1); ++c) {
                const std::size_t near = static_cast<std::size_t>(r) *
                                             static_cast<std::size_t>(columns_) +
                                         static_cast<std::size_t>(c);
                if (seen[near] || cells_[near].count == 0) continue;
                seen[near] = true;
                cells.push_back(near);
            }
        }
    }
    return patch;
}

bool InkShape::is_speck(const Reach& patch) const {
    return (patch.right - patch.left) * grid_.across < rules_.speck &&
           (patch.bottom - patch.top) * grid_.along < rules_.speck;
}

/// The ink of each row of cells; without any, its right stays 0.
std::vector<InkShape::Reach> InkShape::bands_of(const std::vector<bool>& left_out) const {
    std::vector<Reach> bands(static_cast<std::size_t>(rows_));
    for (std::size_t index = 0; index < cells_.size(); ++index) {
        if (cells_[index].count == 0 || left_out[index]) continue;
        join(bands[index / static_cast<std::size_t>(columns_)], reach_of(index));
    }
    return bands;
}

double InkShape::x_of(int column) const { return (column - 0.5 * grid_.width) * grid_.across; }
double InkShape::y_of(int row) const { return (0.5 * grid_.height - row) * grid_.along; }

void InkShape::outline_around(const std::vector<Reach>& bands, InkFound& found) const {
    std::vector<Band> inked;
    for (std::size_t at = bands.size(); at-- > 0;) {  // from the bottom: y grows toward the top
        const Reach& band = bands[at];
        if (band.count == 0) continue;
        // A band meets the one beside it where their cells do; toward a gap it ends with its ink.
        const bool below = at + 1 < bands.size() && bands[at + 1].count != 0;
        const bool above = at > 0 && bands[at - 1].count != 0;
        const int cell_top = static_cast<int>(at) * cell_height_;
        const int bottom = below ? cell_top + cell_height_ : band.bottom;
        const int top = above ? cell_top : band.top;
        inked.push_back({y_of(bottom), y_of(top), x_of(band.left), x_of(band.right)});
    }
    found.slack = std::max(rules_.slack, 0.0);
    found.outline = silhouette(inked, rules_.most_corners, found.slack);
}

InkFound InkShape::found() const {
    InkFound found;
    std::vector<bool> seen(cells_.size()), left_out(cells_.size());
    std::vector<std::size_t> cells;
    Reach ink;
    for (std::size_t index = 0; index < cells_.size(); ++index) {
        if (seen[index] || cells_[index].count == 0) continue;
        const Reach patch = patch_from(index, seen, cells);
        if (!is_speck(patch)) {
            join(ink, patch);
            continue;
        }
        for (const std::size_t cell : cells) left_out[cell] = true;
        ++found.specks;
        found.speck_pixels += patch.count;
    }
    if (ink.count == 0) return found;
    found.ink_pixels = ink.count;
    found.ink_area = static_cast<double>(ink.count) * grid_.across * grid_.along;
    found.extent = {x_of(ink.left), x_of(ink.right), y_of(ink.bottom), y_of(ink.top)};
    outline_around(bands_of(left_out), found);
    const double area = signed_area(found.outline);
    if (area > 0.0) found.printed_share = std::min(1.0, found.ink_area / area);
    return found;
}

}  // namespace carriageway
