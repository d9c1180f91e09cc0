#include "app/records/text_table.h"

#include <algorithm>

#include "app/records/console.h"

namespace carriageway {

std::string TextTable::text() const {
    std::vector<std::size_t> widths(numbers_.size(), 0);
    for (const std::vector<std::string>& row : rows_) {
        for (std::size_t at = 0; at < widths.size(); ++at) {
            widths[at] = std::max(widths[at], characters_in(row[at]));
        }
    }
    std::string out;
    for (const std::vector<std::string>& row : rows_) {
        std::string line;
        for (std::size_t at = 0; at < widths.size(); ++at) {
            if (at != 0) line += "  ";
            const std::string room(widths[at] - characters_in(row[at]), ' ');
            line += numbers_[at] ? room + row[at] : row[at] + room;
        }
        line.erase(line.find_last_not_of(' ') + 1);
        out += line + '\n';
    }
    return out;
}

}  // namespace carriageway
