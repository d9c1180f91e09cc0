// A table in plain text, its columns aligned.
#pragma once

#include <string>
#include <vector>

namespace carriageway {

/// Rows of cells. The first rows are headings. Widths count characters, not bytes.
class TextTable {
  public:
    /// Starts a column. Numbers stand at its right edge, text at its left.
    void column(bool numbers) { numbers_.push_back(numbers); }
    /// Adds a row with a cell for each column.
    void row(std::vector<std::string> cells) { rows_.push_back(std::move(cells)); }
    /// The table, two spaces between columns, each row ending in a line feed without spaces before.
    std::string text() const;

  private:
    std::vector<bool> numbers_;
    std::vector<std::vector<std::string>> rows_;
};

}  // namespace carriageway
