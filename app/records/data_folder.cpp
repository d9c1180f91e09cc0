#include "app/records/data_folder.h"

#include <cstdlib>
#include <filesystem>

#ifdef _WIN32
#include "app/records/file_bytes.h"
#endif

namespace carriageway {

namespace {

#ifdef _WIN32
constexpr const char* needed_variable = "APPDATA";
#else
constexpr const char* needed_variable = "HOME";
#endif

std::optional<std::string> absolute_path(const Environment& environment, const char* name) {
    std::optional<std::string> value = environment(name);
    if (!value || value->empty()) return std::nullopt;
    const std::filesystem::path path(std::u8string(value->begin(), value->end()));
    if (!path.is_absolute()) return std::nullopt;
    return value;
}

} // namespace

#ifdef _WIN32
Environment system_environment() {
    return [](const char* name) -> std::optional<std::string> {
        const std::wstring wide_name(name, name + std::char_traits<char>::length(name));
        const wchar_t* value = _wgetenv(wide_name.c_str());
        if (value == nullptr) return std::nullopt;
        return utf8_of(value);
    };
}
#else
Environment system_environment() {
    return [](const char* name) -> std::optional<std::string> {
        const char* value = std::getenv(name);
        if (value == nullptr) return std::nullopt;
        return std::string(value);
    };
}
#endif

LibraryResult<std::string> default_data_folder(const Environment& environment) {
#ifdef _WIN32
    if (auto folder = absolute_path(environment, "APPDATA")) return *folder + "\\Carriageway";
#else
#ifdef __APPLE__
    if (auto home = absolute_path(environment, "HOME"))
        return *home + "/Library/Application Support/Carriageway";
#else
    if (auto folder = absolute_path(environment, "XDG_DATA_HOME")) return *folder + "/carriageway";
    if (auto home = absolute_path(environment, "HOME")) return *home + "/.local/share/carriageway";
#endif
#endif
    return LibraryFault{LibraryFault::Kind::no_folder, needed_variable, ""};
}

} // namespace carriageway
