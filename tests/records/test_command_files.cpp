// The command line's dealings with files, streams, the library and odd arguments.
#include <algorithm>
#include <catch2/catch_test_macros.hpp>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <sstream>
#include <streambuf>

#include "app/records/command_line.h"
#include "app/records/console.h"
#include "app/records/exchange.h"
#include "app/records/file_bytes.h"
#include "app/records/text_table.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
namespace fs = std::filesystem;

namespace {

const std::string demo_path = CARRIAGEWAY_SOURCE_DIR "/assets/demo/demo-job.json";

using Arguments = std::vector<std::string>;

struct Run {
    int status = -1;
    std::string out;
    std::string err;
    std::optional<WindowRequest> window;
    std::optional<PictureRequest> pictured;
};

CommandServices services_on(std::istream& in, std::ostream& out, std::ostream& err) {
    return {in, out, err, "0.0-test", Language::english, LengthUnit::mm, {}, {}, {}, {}, {}};
}

/// Runs a command with a library in `folder`, writing into `out`.
Run run_into(std::ostream& out, const Arguments& arguments, const ScratchFolder& folder) {
    Run run;
    std::istringstream in;
    std::ostringstream err;
    CommandServices services = services_on(in, out, err);
    services.places = {"press", "jobs"};
    services.back_ends = {"sdl2", "glfw"};
    services.open_library = [&] { return Library::open(folder.file("library")); };
    services.now = [] { return Timestamp{1'700'000'000'000}; };
    services.picture = [&](const PictureRequest& request) {
        run.pictured = request;
        return DrawnPicture{"picture", {}};
    };
    CommandOutcome outcome = run_command_line(arguments, services);
    run.status = outcome.status;
    run.err = err.str();
    run.window = std::move(outcome.window);
    return run;
}

Run run(const Arguments& arguments, const ScratchFolder& folder) {
    std::ostringstream out;
    Run done = run_into(out, arguments, folder);
    done.out = out.str();
    return done;
}

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

/// A stream that takes nothing, as a full disk does.
class FullBuffer : public std::streambuf {
  protected:
    int_type overflow(int_type) override { return traits_type::eof(); }
    std::streamsize xsputn(const char*, std::streamsize) override { return 0; }
    int sync() override { return -1; }
};

} // namespace

TEST_CASE("wrong arguments are named, with where help is") {
    ScratchFolder folder;
    struct Case {
        Arguments arguments;
        const char* message;
        const char* help;
    };
    const Case cases[] = {
        {{"check"}, "missing JOB", "carriageway check --help"},
        {{"check", "--foo", "x"}, "unrecognized option '--foo'", "carriageway check --help"},
        {{"check", "--foo=3", "x"}, "unrecognized option '--foo'", "carriageway check --help"},
        {{"check", "--force", "x"}, "unrecognized option '--force'", "carriageway check --help"},
        {{"check", "-z", "x"}, "unrecognized option '-z'", "carriageway check --help"},
        {{"check", "a", "b"}, "extra operand 'b'", "carriageway check --help"},
        {{"list", "a"}, "extra operand 'a'", "carriageway list --help"},
        {{"set", demo_path}, "missing -o OUT", "carriageway set --help"},
        {{"set", demo_path, "-o"}, "requires an argument", "carriageway set --help"},
        {{"import"}, "missing FILE", "carriageway import --help"},
        {{"export", "-o", "x"}, "missing NAME", "carriageway export --help"},
        {{"--json"}, "missing COMMAND", "carriageway --help"},
        {{"a", "b"}, "extra operand 'b'", "carriageway --help"},
        {{"--open", "a", "b"}, "extra operand 'b'", "carriageway --help"},
        {{"--nonsense"}, "unrecognized option '--nonsense'", "carriageway --help"},
        {{"--backend", "x"}, "invalid argument 'x' for '--backend'", "carriageway --help"},
        {{"check", "x", "--lang", "fr"},
         "invalid argument 'fr' for '--lang'; use en, es",
         "carriageway check --help"},
        {{"check", "x", "--units", "ft"},
         "invalid argument 'ft' for '--units'; use mm, in",
         "carriageway check --help"},
    };
    for (const Case& one : cases) {
        const Run result = run(one.arguments, folder);
        INFO(result.err);
        CHECK(result.status == exit_trouble);
        CHECK(result.out.empty());
        CHECK_FALSE(result.window.has_value());
        CHECK(result.err.rfind("carriageway: ", 0) == 0);
        CHECK(has(result.err, one.message));
        CHECK(has(result.err, std::string("Try '") + one.help + "' for more information."));
    }
    CHECK(
        has(run({"check", "--lang", "es", "--nada"}, folder).err, "opción no reconocida '--nada'"));
    CHECK_FALSE(fs::exists(folder.file("library"))); // none of this needed a library
}

TEST_CASE("names that look like something else") {
    ScratchFolder folder;
    // A job named like a command is asked for, not run.
    CHECK(has(run({"check", "list"}, folder).err, "carriageway: list: no such file, and no job"));
    // Behind "--" nothing is an option.
    CHECK(
        has(run({"check", "--", "-odd.json"}, folder).err, "carriageway: -odd.json: no such file"));
    CHECK(has(run({"check", "--", "-a", "--b"}, folder).err, "extra operand '--b'"));
    CHECK(run({"check", demo_path, "--json", "--json", "--units", "in", "--units", "mm"}, folder)
              .status == exit_not_fit);
}

TEST_CASE("help is there for every command, in both languages, within its columns") {
    ScratchFolder folder;
    for (const char* command : {"check", "set", "picture", "import", "export", "list", ""}) {
        Arguments arguments{"--help"};
        if (*command != '\0') arguments.insert(arguments.begin(), command);
        const Run english = run(arguments, folder);
        CHECK(english.status == exit_fit);
        CHECK(english.err.empty());
        CHECK(english.out.rfind(std::string("Usage: carriageway ") + command, 0) == 0);
        CHECK(has(english.out, "--json"));
        CHECK(has(english.out, "Exit status: 0"));
        arguments.push_back("--lang=es");
        const Run spanish = run(arguments, folder);
        CHECK(spanish.out.rfind("Uso: carriageway", 0) == 0);
        CHECK(has(spanish.out, "muestra esta ayuda y termina"));
        CHECK_FALSE(has(spanish.out, "{0}"));
    }
    CHECK(run({"-h"}, folder).out == run({"--help"}, folder).out);
    CHECK(run({"--version"}, folder).out == "carriageway 0.0-test\n");
}

TEST_CASE("output that can't be written is trouble, whatever the job is like") {
    ScratchFolder folder;
    FullBuffer nothing;
    for (const Arguments& arguments :
         {Arguments{"check", demo_path}, {"--help"}, {"set", demo_path, "-o", "-"}}) {
        std::ostream full(&nothing);
        const Run result = run_into(full, arguments, folder);
        CHECK(result.status == exit_trouble);
        CHECK(has(result.err, "carriageway: standard output: "));
    }
}

TEST_CASE("nothing is overwritten unasked, and nothing is left behind") {
    ScratchFolder folder;
    const std::string out = folder.file("out.json");
    write_bytes(out, "precious");
    Run result = run({"set", demo_path, "-o", out}, folder);
    CHECK(result.status == exit_trouble);
    CHECK(has(result.err, "exists already; give --force to overwrite it"));
    CHECK(bytes_of(out) == "precious");

#ifndef _WIN32 // which has other permissions, and lets few people make links
    fs::permissions(out, fs::perms::owner_read | fs::perms::owner_write);
    fs::create_symlink(out, folder.file("link"));
    CHECK(run({"set", demo_path, "-o", folder.file("link")}, folder).status == exit_trouble);
    CHECK(run({"set", demo_path, "-o", folder.file("link"), "--force"}, folder).status == exit_fit);
    CHECK(fs::is_symlink(folder.file("link"))); // followed, not replaced
    CHECK(read_job(bytes_of(out)).job.has_value());
    CHECK(fs::status(out).permissions() == (fs::perms::owner_read | fs::perms::owner_write));

    fs::create_symlink(folder.file("nowhere"), folder.file("dangling"));
    CHECK(run({"set", demo_path, "-o", folder.file("dangling")}, folder).status == exit_trouble);
    CHECK(fs::is_symlink(folder.file("dangling")));
#endif

    CHECK(has(run({"set", demo_path, "-o", folder.file("none/out.json")}, folder).err,
              "no such folder"));
    CHECK(has(run({"set", demo_path, "-o", folder.path()}, folder).err, "is a folder"));
#ifndef _WIN32
    CHECK(run({"set", demo_path, "-o", "/dev/null"}, folder).status == exit_fit);
#endif
    for (const fs::directory_entry& entry : fs::directory_iterator(folder.path())) {
        INFO(entry.path());
        CHECK(entry.path().filename().string().find(".carriageway-") == std::string::npos);
    }
}

TEST_CASE("files as a whole, however large") {
    ScratchFolder folder;
    const std::string path = folder.file("bytes");
    const std::string large(300'000, 'x');
    CHECK_FALSE(write_file(path, large, false).has_value());
    std::string read;
    CHECK_FALSE(read_file(path, 1'000'000, read).has_value());
    CHECK(read == large);
    CHECK_FALSE(read_file(path, 100, read).has_value());
    CHECK(read.size() == 100);
    const std::optional<FileFault> exists = write_file(path, "", false);
    REQUIRE(exists.has_value());
    CHECK(exists->kind == FileFault::Kind::exists);
    CHECK_FALSE(write_file(path, "", true).has_value());
    CHECK(bytes_of(path).empty());
    CHECK(fault_sentence(Language::spanish, *read_file(folder.file("no"), 1, read)) ==
          "no existe el archivo");
}

TEST_CASE("a file larger than any job is refused, not swallowed") {
    ScratchFolder folder;
    const std::string path = folder.file("large.json");
    write_bytes(path, std::string(largest_text + 100, ' '));
    const Run result = run({"check", path}, folder);
    CHECK(result.status == exit_trouble);
    CHECK(has(result.err, "carriageway: " + path + ": "));
}

TEST_CASE("a terminal is not steered by names in a file") {
    Job job = *read_job(bytes_of(demo_path)).job;
    job.name = "evil\x1b[31m\xC2\x9Bname";
    job.heads.front().colour = "a\nb";
    ScratchFolder folder;
    const std::string path = folder.file("evil.json");
    write_bytes(path, write_job(job));
    for (const Arguments& arguments : {Arguments{"check", path},
                                       {"set", path, "-o", folder.file("out.json")},
                                       {"import", path},
                                       {"list"}}) {
        const Run result = run(arguments, folder);
        INFO(result.out << result.err);
        CHECK_FALSE(has(result.out + result.err, "\x1b"));
        CHECK_FALSE(has(result.out + result.err, "\xC2\x9B"));
        CHECK_FALSE(has(result.out, "a\nb"));
    }
    CHECK(printable("caf\xC3\xA9 \xFF\x07") == "caf\xC3\xA9 ??");
}

TEST_CASE("imported jobs keep apart, and one bad file does not stop the others") {
    ScratchFolder folder;
    const std::string broken = folder.file("broken.json");
    write_bytes(broken, "{}");
    const Run result = run({"import", demo_path, broken, demo_path, "--json"}, folder);
    CHECK(result.status == exit_trouble);
    CHECK(has(result.err, "carriageway: " + broken + ": "));
    const nlohmann::json report = nlohmann::json::parse(result.out);
    REQUIRE(report.at("imported").size() == 2);
    const std::string name = read_job(bytes_of(demo_path)).job->name;
    CHECK(report.at("imported")[0].at("name") == name);
    CHECK(report.at("imported")[1].at("name") == name + " (2)");
    CHECK(run({"check", name + " (2)"}, folder).status == exit_not_fit);

    const nlohmann::json list = nlohmann::json::parse(run({"list", "--json"}, folder).out);
    REQUIRE(list.at("jobs").size() == 2);
    CHECK(list.at("jobs")[0].at("updated") == "2023-11-14T22:13:20Z"); // 1 700 000 000 s
    CHECK(list.at("jobs")[0].at("heads") == 6);
    CHECK(has(run({"list", "--search", "zebra"}, folder).out, "No job has \"zebra\""));
}

TEST_CASE("a name that several jobs have is not guessed at") {
    ScratchFolder folder;
    {
        LibraryResult<Library> library = Library::open(folder.file("library"));
        REQUIRE(static_cast<bool>(library));
        const Job job = *read_job(bytes_of(demo_path)).job;
        REQUIRE(static_cast<bool>(library->create(job, 1)));
        REQUIRE(static_cast<bool>(library->create(job, 2)));
    }
    const std::string name = read_job(bytes_of(demo_path)).job->name;
    const Run result = run({"check", name}, folder);
    CHECK(result.status == exit_trouble);
    CHECK(has(result.err, "2 jobs of the library have this name"));
}

TEST_CASE("a file comes before a job of the same name") {
    ScratchFolder folder;
    Job job = *read_job(bytes_of(demo_path)).job;
    job.name = folder.file("both");
    write_bytes(folder.file("import.json"), write_job(job));
    CHECK(run({"import", folder.file("import.json")}, folder).status == exit_fit);
    CHECK(run({"check", folder.file("both")}, folder).status == exit_not_fit); // the library's
    write_bytes(folder.file("both"), "no job");
    CHECK(run({"check", folder.file("both")}, folder).status == exit_trouble); // the file
}

TEST_CASE("picture hands over what was asked for") {
    ScratchFolder folder;
    const std::string out = folder.file("p.png");
    const Run result =
        run({"picture", demo_path, "-o", out, "--head", "5", "--size", "360x740", "--scale", "2.5",
             "--theme", "dark", "--place", "jobs", "--lang", "es", "--units", "in", "--json"},
            folder);
    CHECK(result.status == exit_fit);
    REQUIRE(result.pictured.has_value());
    CHECK(result.pictured->station == 5);
    CHECK(result.pictured->width == 360);
    CHECK(result.pictured->height == 740);
    CHECK(result.pictured->scale == 2.5);
    CHECK(result.pictured->dark);
    CHECK(result.pictured->place == "jobs");
    CHECK(result.pictured->language == Language::spanish);
    CHECK(result.pictured->unit == LengthUnit::inch);
    CHECK(bytes_of(out) == "picture");
    const nlohmann::json report = nlohmann::json::parse(result.out);
    CHECK(report.at("width_px") == 900);
    CHECK(report.at("height_px") == 1850);

    for (const Arguments& wrong : {Arguments{"--size", "360"},
                                   {"--size", "199x300"},
                                   {"--size", "8001x300"},
                                   {"--size", "-300x300"},
                                   {"--size", "300x300x300"},
                                   {"--size", "8000x8001"},
                                   {"--scale", "0.4"},
                                   {"--scale", "nan"},
                                   {"--head", "0"},
                                   {"--head", "65"},
                                   {"--head", "five"},
                                   {"--theme", "blue"},
                                   {"--place", "nowhere"}}) {
        Arguments arguments{"picture", demo_path, "-o", folder.file("never.png")};
        arguments.insert(arguments.end(), wrong.begin(), wrong.end());
        const Run refused = run(arguments, folder);
        INFO(wrong.back() << ": " << refused.err);
        CHECK(refused.status == exit_trouble);
        CHECK(has(refused.err, "'" + wrong.front() + "'"));
        CHECK_FALSE(refused.pictured.has_value());
    }
    CHECK(
        has(run({"picture", demo_path, "-o", folder.file("never.png"), "--head", "3"}, folder).err,
            "no head on station 3"));
    CHECK_FALSE(fs::exists(folder.file("never.png")));
    CHECK(run({"picture", demo_path, "-o", "-"}, folder).out == "picture");
}

TEST_CASE("a picture that can't be drawn leaves no file") {
    ScratchFolder folder;
    std::istringstream in;
    std::ostringstream out, err;
    CommandServices services = services_on(in, out, err);
    services.places = {"press"};
    services.picture = [](const PictureRequest&) { return DrawnPicture{{}, "no room"}; };
    const std::string path = folder.file("p.png");
    CHECK(run_command_line({"picture", demo_path, "-o", path}, services).status == exit_trouble);
    CHECK(has(err.str(), "no room"));
    CHECK_FALSE(fs::exists(path));
}

TEST_CASE("the window is asked for with what the arguments say") {
    ScratchFolder folder;
    Run result = run({"--backend", "glfw", "--open", demo_path, "--lang", "es"}, folder);
    REQUIRE(result.window.has_value());
    CHECK(result.window->back_end == "glfw");
    CHECK(result.window->language == Language::spanish);
    CHECK_FALSE(result.window->unit.has_value());
    CHECK(result.window->job == read_job(bytes_of(demo_path)).job);

    CHECK(run({"import", demo_path}, folder).status == exit_fit);
    result = run({read_job(bytes_of(demo_path)).job->name}, folder);
    REQUIRE(result.window.has_value());
    CHECK(result.window->id.has_value());
    CHECK_FALSE(result.window->job.has_value());
}

TEST_CASE("columns line up by characters, not bytes") {
    TextTable table;
    table.column(false);
    table.column(true);
    table.row({"é", "1"});
    table.row({"abc", "22"});
    CHECK(table.text() == "é     1\nabc  22\n");
}

TEST_CASE("the table of check lines up, with units under its headings") {
    ScratchFolder folder;
    std::istringstream lines(run({"check", demo_path}, folder).out);
    std::vector<std::string> table;
    for (std::string line; std::getline(lines, line);) table.push_back(line);
    const auto units = std::find_if(table.begin(), table.end(), [](const std::string& line) {
        return line.find_first_not_of(" m") == std::string::npos && has(line, "mm");
    });
    REQUIRE(units != table.end());
    REQUIRE(table.end() - units > 6);
    std::vector<std::size_t> ends; // where each column of numbers ends
    for (std::size_t at = units->find("mm"); at != std::string::npos;
         at = units->find("mm", at + 2)) {
        ends.push_back(at + 2);
    }
    CHECK(ends.size() == 8); // travel, two bands, two run-pasts, apart, two ruler readings
    for (auto row = units + 1; row != units + 7; ++row) {
        INFO(*row);
        CHECK(row->size() <= 120);
        for (const std::size_t end : ends) {
            REQUIRE(row->size() > end);
            CHECK((*row)[end - 1] != ' ');
            CHECK((*row)[end] == ' ');
        }
    }
}
