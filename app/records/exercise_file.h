// Exercises and results that go from one device to another, as a file (JSON) or as a link.
//
// An exercise that the program made is its kind, seed and level, and is made again where it
// arrives. One that a trainer made out of a job is the job as it is broken, with what is claimed to
// be wrong and what mends it; where it arrives it is assessed, and refused unless exactly that is
// found. It travels without walk and record: they hold people's initials. Links have the form of a
// job's (job_link.h): ADDRESS#exercise=1.… and ADDRESS#result=1.…
//
// All of it comes from anywhere: reading is strict and limited, as with job files (exchange.h).
// Nothing here holds a name but a result into which the person typed one.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "app/records/exchange.h"
#include "app/records/trainees.h"
#include "core/exercise.h"

namespace carriageway {

/// Keys that open the documents and hold their version.
inline constexpr const char* exercise_key = "carriageway_exercise";
inline constexpr const char* result_key = "carriageway_result";

/// Version that is written, and the newest that is read.
inline constexpr int exercise_format = 1;

struct ReadExercise {
    std::optional<Exercise> exercise; ///< empty when refused
    ReadFault fault;
    explicit operator bool() const { return exercise.has_value(); }
};

/// The exercise as text: what a file holds. An exercise made by make_exercise(), or by
/// exercise_from().
std::string write_exercise(const Exercise& exercise);
ReadExercise read_exercise(std::string_view text);

/// "exercise=1.…"; empty where it is too large for a link.
std::string exercise_link_fragment(const Exercise& exercise);
/// Refused as read_job_link() says.
ReadExercise read_exercise_link(std::string_view text);

/// What came of an exercise, as it is sent to a trainer. Nothing proves it: it is as honest as who
/// sends it.
struct ExerciseResult {
    Attempt attempt;
    std::string name; ///< as typed by the person; empty: none
    bool operator==(const ExerciseResult&) const = default;
};

struct ReadResult {
    std::optional<ExerciseResult> result;
    ReadFault fault;
    explicit operator bool() const { return result.has_value(); }
};

std::string write_result(const ExerciseResult& result);
ReadResult read_result(std::string_view text);

/// "result=1.…".
std::string result_link_fragment(const ExerciseResult& result);
ReadResult read_result_link(std::string_view text);

/// What a link carries, by its marker; `job` where there is no other.
enum class LinkContent { job, exercise, result, reply };
LinkContent content_of_link(std::string_view link);

/// Largest text of a file that is read as a result, bytes. Ours: the largest that is written is
/// smaller.
inline constexpr std::size_t largest_result = 64u * 1024u;

} // namespace carriageway
