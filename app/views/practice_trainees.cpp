#include "app/views/practice_view.h"

namespace carriageway {

void trainees_part(const Model&, Rows&) {}

} // namespace carriageway
