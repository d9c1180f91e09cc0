#include "platform/desktop/opengl_frame.h"

#include <imgui.h>
#include <imgui_impl_opengl3.h>
#ifdef __EMSCRIPTEN__
#include <GLES3/gl3.h>
#else
#include <imgui_impl_opengl3_loader.h>
#endif

#include <stdexcept>

namespace carriageway {

OpenGlFrame::OpenGlFrame(const OpenGlKind& kind) {
    if (!ImGui_ImplOpenGL3_Init(kind.shading))
        throw std::runtime_error("The graphics driver has no OpenGL 3: update or install one.");
}

OpenGlFrame::~OpenGlFrame() { ImGui_ImplOpenGL3_Shutdown(); }

void OpenGlFrame::begin() {
    ImGui_ImplOpenGL3_NewFrame();
    if (ImGui::GetIO().Fonts->TexID != nullptr) return;
    ImGui_ImplOpenGL3_DestroyFontsTexture();
    ImGui_ImplOpenGL3_CreateFontsTexture();
}

void OpenGlFrame::draw(int width, int height, std::uint32_t background) {
    const auto channel = [background](int shift) {
        return static_cast<float>((background >> shift) & 0xFFu) / 255.0f;
    };
    glViewport(0, 0, width, height);
    glDisable(GL_SCISSOR_TEST);
    glClearColor(channel(16), channel(8), channel(0), 1.0f);
    glClear(GL_COLOR_BUFFER_BIT);
    if (ImDrawData* data = ImGui::GetDrawData()) ImGui_ImplOpenGL3_RenderDrawData(data);
}

} // namespace carriageway
