#include "app/records/misspelled.h"

#include <algorithm>
#include <numeric>
#include <string_view>

namespace carriageway {
namespace {

// Single letters to insert, delete or change to make one word of another.
std::size_t letters_apart(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    std::iota(row.begin(), row.end(), std::size_t{0});
    for (std::size_t i = 0; i < a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i + 1;
        for (std::size_t j = 0; j < b.size(); ++j) {
            const std::size_t change = diagonal + (a[i] == b[j] ? 0 : 1);
            diagonal = row[j + 1];
            row[j + 1] = std::min({row[j] + 1, row[j + 1] + 1, change});
        }
    }
    return row.back();
}

}  // namespace

std::string meant_key(const std::string& key, const std::vector<std::string>& candidates) {
    constexpr std::size_t longest_guessed = 60;
    if (key.empty() || key.size() > longest_guessed) return {};
    std::string best;
    std::size_t least = key.size() / 3 + 1;
    for (const std::string& candidate : candidates) {
        const bool same_start = std::string_view(candidate).starts_with(key + "_");
        const std::size_t apart = same_start ? 0 : letters_apart(key, candidate);
        if (apart < least) {
            least = apart;
            best = candidate;
        }
    }
    return best;
}

}  // namespace carriageway
