// The sheet on the screen: chosen, made by a tap, and handed out where a window can.
#include <cstdlib>
#include <filesystem>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>

#include "app/records/job_link.h"
#include "tests/app/driver.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Catch::Matchers::ContainsSubstring;
using Catch::Matchers::StartsWith;

namespace {

void open_paper(Driver& driver) {
    driver.reveal("day");
    driver.tap("day");
    driver.tap("day/paper");
    REQUIRE(driver.has("paper/pdf"));
}

/// What one of poppler's programs prints about a file; it may not warn of anything.
std::string poppler(const std::string& command, const std::string& file) {
    const ScratchFolder folder;
    const std::string out = folder.file("out"), err = folder.file("err");
    const std::string line = "LC_ALL=C " + command + " '" + file + "' " +
                             (command.rfind("pdftotext", 0) == 0 ? "- " : "") + ">'" + out +
                             "' 2>'" + err + "'";
    INFO(line);
    REQUIRE(std::system(line.c_str()) == 0);
    INFO(bytes_of(err));
    REQUIRE(bytes_of(err).empty());
    return bytes_of(out);
}

std::string exported(const ScratchFolder& folder, const std::string& name) {
    return (std::filesystem::path(folder.path()) / "exports" / name).string();
}

} // namespace

TEST_CASE("A tap makes the sheet beside the library, and says where", "[paper]") {
    const ScratchFolder folder;
    Driver driver(phone, folder.path());
    open_paper(driver);
    driver.tap("paper/pdf");
    const std::string path = exported(folder, "Paper-boat-regatta-shirt-front.pdf");
    CHECK_THAT(driver.find("notice").label, ContainsSubstring(path));
    REQUIRE(std::filesystem::exists(path));
    const std::string info = poppler("pdfinfo", path);
    CHECK_THAT(info, ContainsSubstring("Title:           Paper-boat regatta shirt, front"));
    CHECK_THAT(info, ContainsSubstring("(A4)"));
    CHECK_THAT(info, ContainsSubstring("Pages:           8"));
    // The session's clock stands at 2023-11-14 22:13 UTC: within a day of it anywhere.
    CHECK_THAT(poppler("pdftotext -layout", path), ContainsSubstring("2023-11-1"));
    // Another one doesn't take its place. (The notice lies over the button.)
    driver.tap("notice/close");
    driver.tap("paper/pdf");
    CHECK(std::filesystem::exists(exported(folder, "Paper-boat-regatta-shirt-front-2.pdf")));
}

TEST_CASE("Paper and layout are chosen, kept and used", "[paper]") {
    const ScratchFolder folder;
    {
        Driver driver(desktop, folder.path(), Language::spanish);
        open_paper(driver);
        CHECK(driver.find("paper/a4").chosen);
        CHECK(driver.find("paper/heads").chosen);
        driver.tap("paper/letter");
        driver.tap("paper/tables");
        CHECK(driver.find("paper/letter").chosen);
        CHECK(driver.find("paper/tables").chosen);
        driver.tap("paper/pdf");
        const std::string path = exported(folder, "Paper-boat-regatta-shirt-front.pdf");
        CHECK_THAT(poppler("pdfinfo", path), ContainsSubstring("(letter)"));
        const std::string text = poppler("pdftotext -layout", path);
        CHECK_THAT(
            text,
            ContainsSubstring(
                std::string(word(Language::spanish, Word::paper_planned_below)).substr(0, 20)));
        CHECK_THAT(text, ContainsSubstring("Contrarracleta"));
        REQUIRE(driver.session().flush());
    }
    Driver again(desktop, folder.path(), Language::spanish);
    CHECK(again.session().habits().paper == PaperSize::letter);
    CHECK(again.session().habits().layout == PaperLayout::overview_and_table);
}

TEST_CASE("The table is made by a tap, a row a head", "[paper]") {
    const ScratchFolder folder;
    Driver driver(phone, folder.path());
    open_paper(driver);
    driver.tap("paper/table");
    const std::string path = exported(folder, "Paper-boat-regatta-shirt-front.csv");
    CHECK_THAT(driver.find("notice").label, ContainsSubstring(path));
    const std::string table = bytes_of(path);
    std::size_t lines = 0;
    for (std::size_t at = table.find("\r\n"); at != std::string::npos;
         at = table.find("\r\n", at + 2))
        ++lines;
    CHECK(lines == 1 + driver.session().job().heads.size());
    CHECK_THAT(table, ContainsSubstring("Sail yellow"));
}

TEST_CASE("The job's link is printed once an address is typed that can be one", "[paper]") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    open_paper(driver);
    const std::string path = exported(folder, "Paper-boat-regatta-shirt-front");
    driver.tap("paper/pdf");
    CHECK_THAT(poppler("pdftotext", path + ".pdf"), !ContainsSubstring("example.org"));
    driver.tap("paper/link-base");
    driver.type("example.org");
    driver.tap("typing/done");
    CHECK(driver.has("paper/link-base-refused"));
    driver.tap("paper/pdf");
    CHECK_THAT(poppler("pdftotext", path + "-2.pdf"), !ContainsSubstring("example.org"));
    driver.tap("paper/link-base");
    driver.key(Key::a, true);
    driver.type("https://example.org/carriageway/");
    driver.tap("typing/done");
    INFO(driver.program().state().habits.link_base);
    CHECK_FALSE(driver.has("paper/link-base-refused"));
    driver.tap("paper/pdf");
    CHECK_THAT(poppler("pdftotext", path + "-3.pdf"),
               ContainsSubstring("https://example.org/carriageway/"));
}

TEST_CASE("In a browser the file is handed out, with the page's own address on it", "[paper]") {
    const ScratchFolder folder;
    Driver driver(phone, folder.path());
    driver.as_in_a_browser();
    open_paper(driver);
    CHECK_FALSE(driver.has("paper/link-base"));
    for (const char* button : {"paper/pdf", "paper/table"}) {
        driver.tap(button);
        REQUIRE_FALSE(driver.window().errands().empty());
        const Errand& errand = driver.window().errands().back();
        CHECK(errand.kind == ErrandKind::give_file);
        REQUIRE(std::filesystem::exists(errand.text));
        if (std::string(button) == "paper/pdf")
            CHECK_THAT(poppler("pdftotext", errand.text),
                       ContainsSubstring("https://example.org/carriageway/"));
        CHECK_FALSE(driver.has("notice"));
    }
}

TEST_CASE("Letters that can't be printed are told before and after", "[paper]") {
    const ScratchFolder folder;
    Driver driver(phone, folder.path());
    const HeadId head = driver.session().job().heads.front().id;
    open_paper(driver);
    CHECK_FALSE(driver.has("paper/unprintable"));
    driver.program().act(DoEdit{Edit{SetName{head, "\u5929\u9752 ma\u00F1ana"}}});
    driver.settle();
    REQUIRE(driver.has("paper/unprintable"));
    CHECK_THAT(driver.find("paper/unprintable").label, ContainsSubstring("\u5929 \u9752"));
    CHECK_THAT(driver.find("paper/unprintable").label, !ContainsSubstring("\u00F1"));
    driver.tap("paper/pdf");
    CHECK_THAT(driver.find("notice").label, ContainsSubstring("\u5929 \u9752"));
}

TEST_CASE("The preview has the shape of the paper, and nothing of the job is changed by it",
          "[paper]") {
    for (const WindowSize& size : {small_phone, phone, tablet, desktop}) {
        Driver driver(size);
        const Job before = driver.session().job();
        open_paper(driver);
        driver.reveal("paper/preview");
        const auto ratio = [&] {
            const Box box = driver.find("paper/preview").box;
            return static_cast<double>(box.height() / box.width());
        };
        INFO(size.name);
        CHECK(std::abs(ratio() - 297.0 / 210.0) < 0.005);
        driver.tap("paper/letter");
        CHECK(std::abs(ratio() - 279.4 / 215.9) < 0.005);
        driver.reveal("paper/preview");
        driver.picture(std::string("paper ") + size.name);
        CHECK(driver.session().job() == before);
    }
}

TEST_CASE("By keys alone: to the sheet, through its choices, and back", "[paper]") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    driver.program().act(OpenDay{DayPart::paper});
    driver.program().state().focus = "paper/letter";
    driver.program().state().show_focus = true;
    driver.settle();
    driver.key(Key::enter);
    CHECK(driver.session().habits().paper == PaperSize::letter);
    for (int i = 0; i < 12 && driver.program().state().focus != "paper/pdf"; ++i)
        driver.key(Key::tab);
    CHECK(driver.program().state().focus == "paper/pdf");
    driver.key(Key::enter);
    CHECK(std::filesystem::exists(exported(folder, "Paper-boat-regatta-shirt-front.pdf")));
    driver.key(Key::escape);
    CHECK(driver.has("day/paper"));
}
