// Walks over the data of a fault book and says what is wrong with it, where. Serves fault_book.cpp.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>

#include "app/records/fault_book.h"
#include "app/records/json_text.h"

namespace carriageway {

/// One value of the data and its path.
struct BookNode {
    const JsonNode* node = nullptr; ///< never nullptr
    std::string path;
};

/// Reads parts of a text that is JSON. The first fault stays; after it everything reads as empty.
class BookParts {
  public:
    explicit BookParts(std::string_view text) : text_(text) {}

    bool failed() const { return fault_.has_value(); }
    const std::optional<FaultBookFault>& fault() const { return fault_; }

    /// Notes a fault at a value: "path: sentence".
    void refuse(const BookNode& at, const std::string& sentence);

    /// Checks that it is an object with no other keys than these.
    void object(const BookNode& at, std::initializer_list<std::string_view> keys);

    /// A member of the kind; missing or of another kind: a fault, and a value of that kind without
    /// anything in it.
    BookNode member(const BookNode& of, std::string_view key, JsonNode::Kind kind);
    /// The same where it may be missing, without a fault.
    BookNode optional_member(const BookNode& of, std::string_view key, JsonNode::Kind kind);
    bool has(const BookNode& of, std::string_view key) const;

    std::string text(const BookNode& of, std::string_view key); ///< not empty, at most longest_book_text
    BookText both(const BookNode& of);  ///< "en" and "es"
    std::string id(const BookNode& of); ///< small letters, digits and low lines
    double factor(const BookNode& at);  ///< a number within the bounds
    double optional_factor(const BookNode& of, std::string_view key);

    /// Items of a list, or values of an object, each with its path.
    static BookNode item(const BookNode& of, std::size_t index);

  private:
    std::string_view text_;
    std::optional<FaultBookFault> fault_;
};

/// Longest text of a book, bytes of UTF-8. Ours: it has to fit on a telephone.
inline constexpr std::size_t longest_book_text = 240;

} // namespace carriageway
