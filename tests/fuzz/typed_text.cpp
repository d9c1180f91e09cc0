#include <string>

#include "app/records/exchange.h"
#include "app/records/job_table.h"
#include "app/records/json_piece.h"
#include "app/records/library.h"
#include "app/records/trainees.h"
#include "core/job_check.h"
#include "tests/fuzz/inputs.h"
#include "tests/fuzz/sound_job.h"

namespace carriageway::fuzz {
namespace {

/// A library that each input is looked for in, as a whole word and letter by letter.
Library& searched(bool word_index) {
    static Library with = Library::in_memory();
    static Library without = [] {
        LibraryPlace place;
        place.memory = "fuzz";
        place.options.word_index = false;
        return std::move(*Library::open(place));
    }();
    static const bool filled = [] {
        for (Library* library : {&with, &without})
            demand(bool(library->create(sound_job(), 1)), "a library refuses the demonstration");
        return true;
    }();
    (void)filled;
    return word_index ? with : without;
}

} // namespace

void typed_text(std::string_view bytes) {
    const std::string typed(bytes);
    Job job = sound_job();
    const bool named = bool(apply(job, Edit{SetName{0, typed}}));
    demand(named == is_name(typed), "a job's name is judged in two ways");
    if (named) {
        const ReadJob again = read_job(write_job(job));
        demand(again && *again.job == job, "a name is read as another");
    } else {
        demand(job == sound_job(), "a refused name changes the job");
    }
    if (const std::optional<std::string> name = trainee_name(typed))
        demand(is_name(*name) && trainee_name(*name) == name, "a person's name isn't a name");
    demand(utf8_length(shortened(in_quotes(bytes))) == shortened(in_quotes(bytes)).size(),
           "a piece for a message isn't UTF-8");
    (void)csv_line({typed, plain_field(bytes)});

    for (const bool word_index : {true, false}) {
        const LibraryResult<std::vector<JobRow>> found = searched(word_index).list(typed, 10);
        demand(bool(found), "a library can't search for a text");
        const LibraryResult<std::int64_t> count = searched(word_index).count(typed);
        demand(count && *count == static_cast<std::int64_t>(found->size()),
               "as many are counted as are found");
    }
}

} // namespace carriageway::fuzz
