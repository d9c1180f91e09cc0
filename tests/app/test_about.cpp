// What the program says of itself: found among the settings by touch and by keyboard, in both
// languages and at every size of text, and the same as the command line says.
#include <fstream>

#include <catch2/catch_test_macros.hpp>

#include "app/version.h"
#include "tests/app/exercise_steps.h"
#include "tests/scratch_folder.h"

using namespace carriageway;

namespace {

constexpr Language both[] = {Language::english, Language::spanish};

/// As CMake has it, read from its file.
std::string version_of_project() {
    std::ifstream file(CARRIAGEWAY_SOURCE_DIR "/CMakeLists.txt");
    const std::string begins = "project(Carriageway VERSION ";
    for (std::string line; std::getline(file, line);)
        if (line.rfind(begins, 0) == 0)
            return line.substr(begins.size(), line.find(' ', begins.size()) - begins.size());
    FAIL("CMakeLists.txt says no version");
    return {};
}

/// That all of it is there, once it is open.
void check_about(Driver& driver, Language language, const std::string& folder) {
    CHECK(driver.find("section/about").chosen);
    CHECK(driver.find("about/version").label == "Carriageway " + version_of_project());
    CHECK(driver.find("about/decides").label == words_of(Word::paper_decides, language));
    CHECK(driver.find("about/folder").label == say(language, Word::about_folder, {folder}));
    for (const BuiltOn& one : program_built_on())
        CHECK(driver.find("about/" + one.name).label == built_on_line(one));
}

/// That it can be brought into sight, whole and within the window's width.
void check_seen(Driver& driver, const std::string& name) {
    driver.reveal(name);
    driver.settle();
    const Thing& thing = driver.find(name);
    const Box seen = common(thing.box, driver.list().clip_box(thing.clip));
    INFO(name);
    CHECK(seen.height() >= thing.box.height() - 0.5f);
    CHECK(seen.width() >= thing.box.width() - 0.5f);
}

} // namespace

TEST_CASE("About the program by touch, in both languages and large letters", "[about]") {
    for (const Language language : both)
        for (const WindowSize& size : {small_phone, phone, desktop}) {
            INFO(size.name << (language == Language::spanish ? ", Spanish" : ""));
            const ScratchFolder folder;
            Driver driver(size, folder.path(), language);
            driver.set_looks(language, size.width == desktop.width ? 1.0f : 2.0f);
            driver.tap("place/jobs");
            CHECK_FALSE(driver.has("about/version"));
            driver.tap("section/about");
            check_about(driver, language, folder.path());
            for (const char* name : {"about/version", "about/decides", "about/folder", "about/B612"})
                check_seen(driver, name);
            driver.picture(std::string("about-") + size.name +
                           (language == Language::spanish ? "-es" : ""));
            driver.tap("section/about");
            CHECK_FALSE(driver.has("about/version"));
        }
}

TEST_CASE("About the program by keyboard alone, in both languages", "[about]") {
    for (const Language language : both) {
        const ScratchFolder folder;
        Driver driver(desktop, folder.path(), language);
        by_keys(driver, "place/jobs");
        by_keys(driver, "section/about");
        check_about(driver, language, folder.path());
        driver.key(Key::enter); // the focus is still there
        CHECK_FALSE(driver.has("about/version"));
    }
}

TEST_CASE("What the window systems are built on comes last; a page names no folder", "[about]") {
    const ScratchFolder folder;
    Driver driver(phone, folder.path());
    driver.program().built_on({{"Some window", "2.0", "Zlib"}});
    driver.tap("place/jobs");
    driver.tap("section/about");
    CHECK(driver.find("about/Some window").label == "Some window 2.0 (Zlib)");
    CHECK(driver.find("about/Some window").box.y0 > driver.find("about/B612").box.y0);
    driver.as_in_a_browser();
    driver.settle();
    CHECK(driver.find("about/folder").label == words_of(Word::about_browser));
    CHECK(driver.find("about/folder").label.find(folder.path()) == std::string::npos);
}

TEST_CASE("Without a library no folder is named", "[about]") {
    Driver driver(phone);
    driver.tap("place/jobs");
    driver.tap("section/about");
    CHECK(driver.has("about/version"));
    CHECK_FALSE(driver.has("about/folder"));
}
