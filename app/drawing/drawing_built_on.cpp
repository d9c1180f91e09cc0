#include "app/drawing/drawing_built_on.h"

#include <hpdf.h>
#include <imgui.h>

namespace carriageway {

std::vector<BuiltOn> drawing_built_on() {
    return {
        {"Dear ImGui", ImGui::GetVersion(), "MIT"},
        {"libharu", HPDF_GetVersion(), "Zlib"},
        {"QR-Code-generator", {}, "MIT"}, // neither header nor library says which
        {"B612", {}, "OFL-1.1"},
    };
}

} // namespace carriageway
