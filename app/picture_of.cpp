#include "app/picture_of.h"

#include <imgui.h>

#include "app/drawing/fonts.h"
#include "app/drawing/picture.h"
#include "app/drawing/png_file.h"
#include "app/program.h"

namespace carriageway {

DrawnPicture picture_of(const PictureRequest& request) {
    Session session(request.job, request.language);
    Looks looks;
    looks.language = request.language;
    looks.units = request.unit;
    looks.theme = request.dark ? ThemeChoice::dark : ThemeChoice::light;
    session.set_looks(looks);
    Program program(session);
    ImFontAtlas atlas;
    Fonts fonts(atlas);
    const float ratio = static_cast<float>(request.scale);
    fonts.rebuild(looks.text_scale, ratio);
    Surface surface;
    surface.width = static_cast<int>(std::lround(request.width * request.scale));
    surface.height = static_cast<int>(std::lround(request.height * request.scale));
    surface.pixels_per_dp = ratio;
    program.build(surface, 0.0, request.dark, fonts);
    if (request.place == "jobs") program.act(GoTo{Place::jobs});
    if (request.place == "register") program.act(GoTo{Place::registration});
    if (const Head* head = head_on(session.job(), request.station)) program.choose_head(head->id);
    // The second frame is past every movement of the camera.
    program.build(surface, 100.0, request.dark, fonts);
    program.build(surface, 200.0, request.dark, fonts);
    const Picture picture =
        paint_picture(program.frame().list, program.theme(), fonts, surface.width, surface.height);
    std::vector<std::uint8_t> bytes;
    if (const std::error_code error = encode_png(picture, bytes)) return {{}, error.message()};
    return {std::string(bytes.begin(), bytes.end()), {}};
}

} // namespace carriageway
