#include "app/views/register_view.h"

namespace carriageway {

void register_heights_drawing(const RegisterView&, Box, Canvas&) {}

void register_heights_panel(const RegisterView&, Rows&) {}

} // namespace carriageway
