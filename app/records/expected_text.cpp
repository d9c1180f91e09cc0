#include "app/records/expected_text.h"

#include "app/records/misspelled.h"

namespace carriageway {
namespace {

constexpr const char* between = " \u2026 ";

}  // namespace

std::string range_text(const NumberRange& range) {
    const std::string least = number_text(limit_in_file(range.least, range.factor));
    const std::string most = number_text(limit_in_file(range.most, range.factor));
    return (range.above_least ? "> " + least : least) + between + most;
}

std::string range_text(const WholeRange& range) {
    return std::to_string(range.least) + between + std::to_string(range.most);
}

std::string size_text(const ListSize& size) {
    std::string text = std::to_string(size.least);
    if (size.most != size.least) text += between + std::to_string(size.most);
    return text;
}

std::string choices_text(const Choices& choices, const std::string& found) {
    constexpr std::size_t most_listed = 8;
    const std::vector<std::string> all(choices.begin(), choices.end());
    const bool many = all.size() > most_listed;
    const std::string near = many ? meant_key(found, all) : std::string();
    if (!near.empty()) return "\"" + near + "\", \u2026";
    std::string text;
    for (std::size_t i = 0; i < all.size() && i < most_listed; ++i) {
        text += (i > 0 ? ", \"" : "\"") + all[i] + "\"";
    }
    return many ? text + ", \u2026" : text;
}

}  // namespace carriageway
