// The parts of the Practice place (practice_place.cpp puts them together).
#pragma once

#include "app/views/views.h"

namespace carriageway {

/// Each part fills a column from `rows.y` down. Names of its things begin with the part's name.
void exercises_part(const Model& model, Rows& rows);
void faults_part(const Model& model, Rows& rows);
void call_part(const Model& model, Rows& rows);
void trainees_part(const Model& model, Rows& rows);

} // namespace carriageway
