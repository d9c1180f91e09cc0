// A table on paper: columns as wide as their words want, two rows of headings that every page has
// again, and rows that grow with what is in them.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "app/drawing/paper_page.h"

namespace carriageway {

struct PaperColumn {
    std::string group;   ///< over it and its neighbours of the same group; may be empty
    std::string heading; ///< may be empty
    std::string unit;    ///< below the heading; may be empty
    bool number = false; ///< set to the right
};

struct PaperCell {
    std::string words;
    std::string below;  ///< under it, in bold letters: what stands there instead
    bool bold = false;
    std::optional<std::uint32_t> swatch; ///< an ink before the words, 0xRRGGBB
    std::optional<Role> verdict;         ///< its sign before the words
};

class PaperTable {
public:
    explicit PaperTable(std::vector<PaperColumn> columns) : columns_(std::move(columns)) {}
    /// As many cells as there are columns.
    void row(std::vector<PaperCell> cells) { rows_.push_back(std::move(cells)); }
    /// Size of the letters that its columns have room for, as a share of the usual.
    float letters(PaperPages& pages) const { return plan_of(pages, largest).times; }
    /// Draws everything from `pages.y` down, over the whole width, in letters of at most this size.
    void draw(PaperPages& pages, float most) const;

private:
    struct Plan {
        float times = 1.0f; ///< size of the letters, as a share of the usual
        std::vector<float> x, width;
    };
    static constexpr float largest = 1.2f;
    Plan plan_of(PaperPages& pages, float most) const;
    std::vector<float> widths(float room, bool whole, const PaperPages& pages) const;
    float row_height(const std::vector<PaperCell>& cells, const Plan& plan,
                     const PaperPages& pages) const;
    float headings_height(const Plan& plan, const PaperPages& pages) const;
    float groups_height(const Plan& plan, const PaperPages& pages) const;
    void draw_headings(const Plan& plan, PaperPages& pages) const;
    void draw_groups(const Plan& plan, PaperPages& pages) const;
    void draw_row(const std::vector<PaperCell>& cells, const Plan& plan, PaperPages& pages) const;
    std::size_t group_end(std::size_t column) const;

    std::vector<PaperColumn> columns_;
    std::vector<std::vector<PaperCell>> rows_;
};

/// An ink's swatch: its colour in a black ring, so that white shows as well.
void draw_swatch(DrawingList& list, Vec centre, float size, std::uint32_t ink);

/// The sign of a verdict in black, of the shapes that the screen has: a triangle for stop, a
/// diamond for mind, a disc where nothing is to mend.
void draw_paper_verdict(DrawingList& list, Vec centre, float size, Role role);

/// Width of the longest word.
float widest_word(const TypeMeasure& type, TypeStyle style, std::string_view words);

} // namespace carriageway
