// Random walks, records and changes of plans for tests. Moments, initials and values come from so
// few that two people often agree and often don't.
#pragma once

#include "core/edit.h"
#include "tests/core/sample_job.h"

namespace carriageway::sample {

/// A moment out of a handful, sometimes none; initials out of a few, sometimes none.
Stamp likely_stamp(Random& random);

/// A number that the field accepts, out of three.
double one_of_three(Random& random, Field field);

/// Notes so many numbers on the walk, of heads of the job, of the job itself, and now and then of a
/// head that isn't there.
void note_on_walk(Random& random, Job& job, int marks);

/// Ticks steps, counts pieces, notes stoppages, an approval and a text.
void note_in_run(Random& random, Job& job);

/// Changes what is planned or noted of heads and job: numbers, texts, choices, images, stops.
void change_plan(Random& random, Job& job, int changes);

/// Takes a head off, adds one with an id above 900, or uses a station otherwise.
void change_heads(Random& random, Job& job);

} // namespace carriageway::sample
