// Search by words, through the index and without it.
#include <algorithm>
#include <string>
#include <vector>

#include <catch2/catch_test_macros.hpp>
#include <catch2/generators/catch_generators.hpp>

#include "app/records/library.h"
#include "app/records/word_search.h"
#include "tests/records/stored_samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;

namespace {

using Names = std::vector<std::string>;

Library opened(const std::string& folder, bool word_index) {
    LibraryOptions options;
    options.word_index = word_index;
    LibraryResult<Library> library = Library::open(folder, options);
    if (!library) FAIL(library.fault().detail);
    return std::move(*library);
}

// Names of the jobs found, in the alphabet's order.
Names found(const Library& library, const std::string& query) {
    const LibraryResult<std::vector<JobRow>> rows = library.list(query, 100);
    if (!rows) FAIL(rows.fault().detail);
    Names names;
    for (const JobRow& row : *rows)
        names.push_back(row.name);
    std::sort(names.begin(), names.end());
    CHECK(*library.count(query) == static_cast<std::int64_t>(names.size()));
    return names;
}

void fill(Library& library) {
    REQUIRE(library.create(samples::job("Camiseta niño", {"Azul", "Rojo"}, "East press"), 1));
    REQUIRE(library.create(samples::job("Café t-shirt 50%", {"Black"}, "East press"), 2));
    REQUIRE(library.create(samples::job("Hoodie \"fox\"", {"Black", "White_2"}, "West press"), 3));
}

} // namespace

TEST_CASE("words are found in name, colours and press, whatever their case", "[library][search]") {
    const bool word_index = GENERATE(true, false);
    CAPTURE(word_index);
    const ScratchFolder folder;
    Library library = opened(folder.path(), word_index);
    fill(library);
    CHECK(found(library, "").size() == 3);
    CHECK(found(library, "HOOD") == Names{"Hoodie \"fox\""});
    CHECK(found(library, "east") == Names{"Café t-shirt 50%", "Camiseta niño"});
    CHECK(found(library, "black east") == Names{"Café t-shirt 50%"});
    CHECK(found(library, "press  \t BLACK") == Names{"Café t-shirt 50%", "Hoodie \"fox\""});
    CHECK(found(library, "azul rojo niño") == Names{"Camiseta niño"});
    CHECK(found(library, "azul white").empty());
    CHECK(found(library, "t-sh") == Names{"Café t-shirt 50%"});
}

TEST_CASE("what a person types is never taken for an expression", "[library][search]") {
    const bool word_index = GENERATE(true, false);
    CAPTURE(word_index);
    const ScratchFolder folder;
    Library library = opened(folder.path(), word_index);
    fill(library);
    CHECK(found(library, "\"fox\"") == Names{"Hoodie \"fox\""});
    CHECK(found(library, "50%") == Names{"Café t-shirt 50%"});
    CHECK(found(library, "white_2") == Names{"Hoodie \"fox\""});
    CHECK(found(library, "zz%").empty());
    CHECK(found(library, "hoodie OR camiseta").empty());
    CHECK(found(library, "% _ \" ' ( ) * ^ : - +").size() == 3); // punctuation is ignored
    CHECK(found(library, std::string("hoodie\0fox", 10)) == Names{"Hoodie \"fox\""});
    // None of these may fail; what they find is not the point.
    for (const std::string& query :
         {std::string("name:x"), std::string("NEAR(a b)"), std::string("a*"), std::string("\xff\xfe"),
          std::string(100000, 'x'), std::string("\"a"), std::string("–"), std::string("a\"b")}) {
        CHECK(library.list(query, 10));
        CHECK(library.count(query));
    }
}

TEST_CASE("accents are optional with the index", "[library][search]") {
    const ScratchFolder folder;
    Library library = opened(folder.path(), true);
    fill(library);
    CHECK(found(library, "cafe") == Names{"Café t-shirt 50%"});
    CHECK(found(library, "NINO") == Names{"Camiseta niño"});
    CHECK(found(library, "AZÚL") == Names{"Camiseta niño"});
    CHECK(found(library, "afe").empty()); // the beginning of a word
}

TEST_CASE("the index follows every change of a job", "[library][search]") {
    const ScratchFolder folder;
    Library library = opened(folder.path(), true);
    fill(library);
    const JobId id = library.named("Camiseta niño")->front().id;
    REQUIRE_FALSE(library.rename(id, "Polo", 5));
    CHECK(found(library, "camiseta").empty());
    CHECK(found(library, "polo azul") == Names{"Polo"});
    REQUIRE_FALSE(library.remove(id, 6));
    CHECK(found(library, "polo").empty());
    REQUIRE_FALSE(library.restore(id));
    CHECK(found(library, "polo") == Names{"Polo"});
    REQUIRE_FALSE(library.remove(id, 6));
    REQUIRE(*library.purge(6) == 1);
    CHECK(found(library, "polo").empty());
    CHECK(found(library, "azul").empty());
}

TEST_CASE("a library written without the index gets it when opened with it", "[library][search]") {
    const ScratchFolder folder;
    {
        Library library = opened(folder.path(), true);
        fill(library);
    }
    {
        Library library = opened(folder.path(), false);
        REQUIRE(library.create(samples::job("Añadido después"), 9));
        REQUIRE_FALSE(library.rename(library.named("Hoodie \"fox\"")->front().id, "Parka", 9));
        CHECK(found(library, "parka") == Names{"Parka"});
    }
    const Library library = opened(folder.path(), true);
    CHECK(found(library, "anadido despues") == Names{"Añadido después"});
    CHECK(found(library, "parka") == Names{"Parka"});
    CHECK(found(library, "hoodie").empty());
    CHECK_FALSE(library.check());
}

TEST_CASE("a query is parted into words", "[search]") {
    using Words = std::vector<std::string>;
    CHECK(search_words("").empty());
    CHECK(search_words(" \t\n ").empty());
    CHECK(search_words(" one  two ") == Words{"one", "two"});
    CHECK(search_words("# one! -") == Words{"one!"});
    CHECK(search_words(std::string(1000, 'a')) ==
          Words{std::string(static_cast<std::size_t>(longest_search_word), 'a')});
    CHECK(search_words("a b c d e f g h i j k l m n o p q r").size() == most_search_words);
    CHECK(index_expression({"a\"b", "c"}) == "\"a\"\"b\"* \"c\"*");
    CHECK(like_pattern("5%_\\") == "%5\\%\\_\\\\%");
}
