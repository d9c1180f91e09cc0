// What the views of the people who practise share (practice_trainees.cpp puts them together).
#pragma once

#include "app/views/views.h"

namespace carriageway {

/// One person: what comes next, each topic with its signatures, and what can be done with the data.
void trainee_person(const Model& model, Rows& rows);

/// Everybody: a person a row, a topic a box, with level and signature.
void trainee_group(const Model& model, Rows& rows);

/// A result that was sent here, until it is noted for somebody or dropped.
void arrived_result(const Model& model, Rows& rows);

/// A person's name, or what stands for nobody in particular.
std::string person_name(const Canvas& canvas, const TraineeRow& who);

/// How far a topic is signed for, by shape: a dash, a ring, a half-filled and a filled disc.
void sign_mark(DrawingList& list, Vec centre, float size, std::optional<SignState> state);
Word sign_word(SignState state);

} // namespace carriageway
