// carriageway picture: draws a job into a PNG file.
#include <algorithm>
#include <cmath>
#include <ostream>

#include "app/records/command_json.h"
#include "app/records/command_options.h"
#include "app/records/job_source.h"

namespace carriageway {
namespace {

// Sizes that are drawn, dp and pixels per dp. Ours: a phone at the least, a wall at the most.
constexpr int least_side = 200;
constexpr int most_side = 8000;
constexpr double least_scale_drawn = 0.5;
constexpr double most_scale_drawn = 4.0;
constexpr double most_pixels = 64e6;

/// A whole number from 1 to `most`, in digits alone.
std::optional<int> whole_number(std::string_view text, int most) {
    if (text.empty() || text.size() > 6) return std::nullopt;
    int value = 0;
    for (const char letter : text) {
        if (letter < '0' || letter > '9') return std::nullopt;
        value = value * 10 + (letter - '0');
    }
    if (value < 1 || value > most) return std::nullopt;
    return value;
}

bool read_size(const std::string& text, PictureRequest& request) {
    const std::size_t cross = text.find('x');
    if (cross == std::string::npos) return false;
    const std::optional<int> width =
        whole_number(std::string_view(text).substr(0, cross), most_side);
    const std::optional<int> height =
        whole_number(std::string_view(text).substr(cross + 1), most_side);
    if (!width || !height || std::min(*width, *height) < least_side) return false;
    request.width = *width;
    request.height = *height;
    return true;
}

int pixels(int dp, double scale) {
    return static_cast<int>(std::lround(dp * scale));
}

/// Fills in everything but the job; exit_fit when the options are understood.
int read_options(const Console& console, const Given& given, PictureRequest& request) {
    const auto bad = [&](const std::string& value, const char* option, const std::string& use) {
        return console.misuse(say(console.language, Word::option_bad_value, {value, option, use}));
    };
    const auto range = [&](const std::string& from, const std::string& to) {
        return say(console.language, Word::from_to, {from, to});
    };
    const std::vector<std::string>& places = console.services.places;
    if (!places.empty()) request.place = places.front();
    if (given.place) {
        if (std::find(places.begin(), places.end(), *given.place) == places.end()) {
            return bad(*given.place, "--place", joined(places));
        }
        request.place = *given.place;
    }
    if (given.head) {
        const std::optional<int> station = whole_number(*given.head, most_stations);
        if (!station) return bad(*given.head, "--head", range("1", std::to_string(most_stations)));
        request.station = *station;
    }
    if (given.size && !read_size(*given.size, request)) {
        return bad(*given.size, "--size",
                   range(std::to_string(least_side) + "x" + std::to_string(least_side),
                         std::to_string(most_side) + "x" + std::to_string(most_side)));
    }
    if (given.scale) {
        const std::optional<double> scale = read_number(*given.scale);
        if (!scale || *scale < least_scale_drawn || *scale > most_scale_drawn) {
            return bad(*given.scale, "--scale", range("0.5", "4"));
        }
        request.scale = *scale;
    }
    if (static_cast<double>(pixels(request.width, request.scale)) *
            pixels(request.height, request.scale) >
        most_pixels) {
        return bad(
            given.size ? *given.size : *given.scale, given.size ? "--size" : "--scale",
            say(console.language, Word::picture_too_large, {format_number(most_pixels / 1e6, 0)}));
    }
    if (given.theme && *given.theme != "light" && *given.theme != "dark") {
        return bad(*given.theme, "--theme", "light, dark");
    }
    request.dark = given.theme == "dark";
    request.language = console.language;
    request.unit = console.unit;
    return exit_fit;
}

}  // namespace

int picture_command(const Console& console, const Given& given) {
    PictureRequest request;
    const int status = read_options(console, given, request);
    if (status != exit_fit) return status;
    const std::string& name = given.operands.front();
    std::optional<SourcedJob> sourced = job_from(console, name);
    if (!sourced) return exit_trouble;
    request.job = std::move(sourced->job);
    if (request.station != 0 && head_on(request.job, request.station) == nullptr) {
        return console.complain(name, say(console.language, Word::no_head_on_station,
                                          {std::to_string(request.station)}));
    }
    const DrawnPicture drawn = console.services.picture(request);
    if (!drawn.trouble.empty()) return console.complain(name, drawn.trouble);
    if (!put_bytes(console, *given.output, drawn.png, given.force)) return exit_trouble;
    if (!console.json) return exit_fit;
    nlohmann::ordered_json report = started_report();
    report["job"] = request.job.name;
    report["output"] = *given.output;
    report["place"] = request.place;
    report["station"] = request.station != 0 ? nlohmann::ordered_json(request.station)
                                             : nlohmann::ordered_json(nullptr);
    report["width_px"] = pixels(request.width, request.scale);
    report["height_px"] = pixels(request.height, request.scale);
    write_report(*given.output == "-" ? console.services.err : console.services.out, report);
    return exit_fit;
}

}  // namespace carriageway
