#include "app/views/register_view.h"

namespace carriageway {

void register_platens_drawing(const RegisterView&, Box, Canvas&) {}

void register_platens_panel(const RegisterView&, Rows&) {}

} // namespace carriageway
