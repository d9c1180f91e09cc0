// The knowledge of fault finding as it is read from its data, assets/faults/faults.json: what the
// core ranks by (core/fault_finding.h), and the texts that go with it in both languages.
//
// The data's form is assets/schemas/faults.schema.json.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "app/text/words.h"
#include "core/fault_finding.h"

namespace carriageway {

/// One text in both languages.
struct BookText {
    std::string english;
    std::string spanish;
};

/// The texts of a cause.
struct CauseTexts {
    BookText name; ///< "Stop too near the image"
    BookText fix;  ///< what to do, one or two sentences
};

/// The texts of a test.
struct TestTexts {
    BookText question;             ///< what to do or look at, and what is asked
    std::vector<BookText> answers; ///< in the order of FaultTest::answers
};

/// Knowledge and texts; each list in the order of that of `book`.
struct FaultLore {
    FaultBook book;
    std::vector<BookText> symptoms;
    std::vector<CauseTexts> causes;
    std::vector<TestTexts> tests;
    std::vector<BookText> sources; ///< who says so: "common practice, no source"
};

/// Why data is no fault book: one sentence in English, for whoever maintains the data, and where.
struct FaultBookFault {
    std::string what; ///< "causes[3].tests[0]: there is no test \"ruler\""
    std::size_t line = 0;   ///< from 1
    std::size_t column = 0; ///< from 1, in bytes; both 0: not at one place
};

/// Bounds of weights and factors: within them no product runs out of what a number holds.
inline constexpr double least_factor = 0.02;
inline constexpr double most_factor = 50.0;

/// Reads data: JSON in UTF-8. Refused: text that isn't JSON or is deeper or longer than a book
/// needs, keys missing or not known, ids twice, references to nothing, texts missing in a language,
/// weights and factors outside 1/50 to 50, a cause without a test, a test with one answer.
std::variant<FaultLore, FaultBookFault> read_fault_book(std::string_view json);

/// The program's own, read once from what is embedded; always good, as a test checks (were it not,
/// an empty one). From one thread only.
const FaultLore& fault_lore();

/// The text in a language; `pseudo` as words.h makes it of the English one.
std::string text_of(Language language, const BookText& text);

} // namespace carriageway
