#include "app/records/exercise_file.h"

#include "tests/fuzz/inputs.h"
#include "tests/fuzz/refusals.h"

namespace carriageway::fuzz {
namespace {

void use(const Exercise& exercise) {
    demand(!fault_of(exercise.job), "core refuses the job of an exercise");
    const ReadExercise again = read_exercise(write_exercise(exercise));
    demand(again && *again.exercise == exercise, "an exercise is read as another");
    if (const std::string fragment = exercise_link_fragment(exercise); !fragment.empty()) {
        const ReadExercise linked = read_exercise_link(fragment);
        demand(linked && *linked.exercise == exercise, "an exercise's link is read as another");
    }
    demand(mark(exercise, exercise.solution).score == 1.0, "the solution has not full marks");
    demand(mark(exercise, {}).score < 1.0, "no answer has full marks");
    (void)hints_of(exercise);
}

} // namespace

void exercise_file(std::string_view bytes) {
    if (const ReadExercise read = read_exercise(bytes)) use(*read.exercise);
    else told(read.fault);

    const ReadResult result = read_result(bytes);
    if (!result) return told(result.fault);
    const ReadResult again = read_result(write_result(*result.result));
    demand(again && *again.result == *result.result, "a result is read as another");
    const ReadResult linked = read_result_link(result_link_fragment(*result.result));
    demand(linked && *linked.result == *result.result, "a result's link is read as another");
}

} // namespace carriageway::fuzz
