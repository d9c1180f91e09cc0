// The executable: the command line where there is a command, otherwise the window.
#include <cstdlib>
#include <iostream>

#include <imgui.h>

#include "app/frame_loop.h"
#include "app/picture_of.h"
#include "app/records/autosave.h"
#include "app/records/command_line.h"
#include "app/records/data_folder.h"
#include "app/records/library_rescue.h"
#include "app/records/library_text.h"
#include "app/sheet_of.h"
#include "app/time_of_day.h"
#include "app/version.h"
#include "platform/windows_built_on.h"

namespace carriageway {
namespace {

std::string first_set(std::initializer_list<const char*> names) {
    for (const char* name : names)
        if (const char* value = std::getenv(name); value && *value) return value;
    return {};
}

struct ImGuiOwner {
    ImGuiOwner() { ImGui::CreateContext(); }
    ~ImGuiOwner() { ImGui::DestroyContext(); }
};

std::vector<std::string> back_ends() {
    std::vector<std::string> names;
#ifdef CARRIAGEWAY_SDL2
    names.push_back("sdl2");
#endif
#ifdef CARRIAGEWAY_GLFW
    names.push_back("glfw");
#endif
    return names;
}

/// Runs until the window closes. Trouble with the window itself ends as an exception.
int run_window(const WindowRequest& request, Language language, const std::string& folder) {
    const ImGuiOwner owner;
    std::string name = request.back_end;
    if (name.empty()) name = back_ends().empty() ? "null" : back_ends().front();
    const std::unique_ptr<Window> window = open_window(name, 1280, 840);
    Window& opened = *window;
    Session session(folder, [&opened] { opened.wake(); }, time_of_day, language);
    Looks looks = session.looks();
    if (request.language) looks.language = *request.language;
    if (request.unit) looks.units = *request.unit;
    if (!(looks == session.looks())) session.set_looks(looks);
    if (request.id) session.open(*request.id);
    if (request.job && request.from_link) session.visit(*request.job);
    else if (request.job) session.open_new(*request.job);
    Fonts fonts(*ImGui::GetIO().Fonts);
    Program program(session);
    program.built_on(windows_built_on());
    if (!session.trouble().empty()) program.notice(session.trouble(), true);
    else if (!session.rescued().empty()) program.notice(session.rescued(), true);
    window->title("Carriageway");
    FrameLoop loop(program, *window, fonts);
    while (loop.turn()) {
    }
    if (session.flush()) return exit_fit;
    std::cerr << "carriageway: " << session.trouble() << '\n';
    return exit_trouble;
}

int run(const std::vector<std::string>& arguments) {
    const Language language = system_language(first_set({"LC_ALL", "LC_MESSAGES", "LANG"}));
    const LibraryResult<std::string> folder = default_data_folder();
    CommandServices services{std::cin, std::cout, std::cerr, program_version(), language, LengthUnit::mm,
                             picture_places(), back_ends(), {}, time_of_day, picture_of, sheet_of, program_built_on()};
    for (BuiltOn& one : windows_built_on()) services.built_on.push_back(std::move(one));
    services.open_library = [&]() -> LibraryResult<Library> {
        if (!folder) return folder.fault();
        OpenedLibrary opened = open_or_rescue(*folder, platform_library_options(), time_of_day());
        if (opened.rescue)
            std::cerr << "carriageway: " << rescue_sentence(language, *opened.rescue) << '\n';
        return std::move(opened.library);
    };
    const CommandOutcome outcome = run_command_line(arguments, services);
    if (!outcome.window) return outcome.status;
    if (!folder) std::cerr << "carriageway: " << fault_sentence(language, folder.fault()) << '\n';
    try {
        return run_window(*outcome.window, language, folder ? *folder : std::string());
    } catch (const std::exception& error) {
        std::cerr << "carriageway: " << error.what() << '\n';
        return exit_trouble;
    }
}

} // namespace
} // namespace carriageway

int main(int argc, char** argv) {
    return carriageway::run(std::vector<std::string>(argv + 1, argv + argc));
}
