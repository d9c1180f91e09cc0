// Practice: which part of it is shown.
#include "app/program.h"

namespace carriageway {

void Program::carry_out(const ShowPractice& a) {
    state_.practice.part = a.part;
    state_.practice_scroll = 0.0f;
    state_.place = Place::practice;
    state_.typing.reset();
    state_.pad.reset();
    state_.practice.trainee.erasing.reset();
    state_.practice.call.erasing.reset();
    if (a.part == PracticePart::trainees) session_.read_group();
    if (a.part == PracticePart::call) read_calls();
}

} // namespace carriageway
