#include "app/drawing/picture.h"

#include <imgui_internal.h>

#include "app/drawing/fonts.h"
#include "app/drawing/screen_painter.h"

namespace carriageway {

namespace {

/// What a draw list needs to know; Dear ImGui's own values for a window, so that both look alike.
void share(ImDrawListSharedData& shared, const Fonts& fonts, ImVec2 size) {
    const ImFontAtlas& atlas = fonts.atlas();
    shared.TexUvWhitePixel = atlas.TexUvWhitePixel;
    shared.TexUvLines = atlas.TexUvLines;
    shared.Font = fonts.font({});
    shared.FontSize = fonts.pixel_size({});
    shared.CurveTessellationTol = 1.25f;
    shared.SetCircleTessellationMaxError(0.30f);
    shared.ClipRectFullscreen = {0.0f, 0.0f, size.x, size.y};
    shared.InitialFlags = ImDrawListFlags_AntiAliasedLines | ImDrawListFlags_AntiAliasedFill |
                          ImDrawListFlags_AllowVtxOffset;
}

} // namespace

Picture paint_picture(const DrawingList& list, Theme theme, const Fonts& fonts, int width,
                      int height) {
    Picture picture = blank_picture(width, height, colour_of(theme, Role::paper));
    const ImVec2 size{static_cast<float>(width), static_cast<float>(height)};
    ImDrawListSharedData shared;
    share(shared, fonts, size);
    ImDrawList draw(&shared);
    draw._ResetForNewFrame();
    draw.PushTextureID(fonts.atlas().TexID);
    draw.PushClipRectFullScreen();
    ScreenPainter painter;
    painter.paint(list, theme, fonts, draw);

    ImDrawData data;
    data.DisplaySize = size;
    data.FramebufferScale = {1.0f, 1.0f};
    data.AddDrawList(&draw);
    rasterise(data, fonts.atlas(), picture);
    return picture;
}

} // namespace carriageway
