// Random jobs and edits that core accepts, anywhere within the limits of every field.
#pragma once

#include <cstdint>
#include <random>
#include <string>

#include "core/edit.h"
#include "core/job.h"

namespace carriageway {

/// Makes values from a seed. Numbers are drawn between a field's limits, now and then on a limit,
/// as a whole or as a number with few digits.
class RandomJobs {
  public:
    explicit RandomJobs(std::uint64_t seed) : engine_(seed) {}

    double number(double least, double most);
    double number(Field field); ///< that the field accepts
    Point place();
    MeshRow mesh();
    std::vector<MarkRound> rounds();
    std::vector<HeightReading> height_readings();
    Stamp stamp(); ///< now and then nothing
    WalkMark walk_mark(HeadId head, Field field);
    std::vector<WalkMark> walk();
    RunRecord record();
    std::vector<CheckItem> checks();
    ColourWish wish();
    std::size_t below(std::size_t count);
    bool coin() { return below(2) == 0; }

    /// Letters of several alphabets, quotes, escapes and control characters; at most longest_name
    /// bytes.
    std::string name();
    std::string note(); ///< the same, now and then nothing
    Outline outline(std::size_t corners);
    Image image();
    PressProfile press();
    Head head(HeadId id, int station);
    Job job();
    /// Any kind of edit; whether it can be done to a job is left to chance.
    Edit edit(int depth = 0);

  private:
    template <typename Enum>
    Enum choice(std::size_t count) {
        return static_cast<Enum>(below(count));
    }
    Edit simple_edit(std::size_t kind);

    std::mt19937_64 engine_;
};

} // namespace carriageway
