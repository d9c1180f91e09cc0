#include "app/views/practice_view.h"

namespace carriageway {

void faults_part(const Model&, Rows&) {}

} // namespace carriageway
