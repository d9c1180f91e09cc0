// The sheet that stays with a job: on which paper, and made as a file.
#include "app/program.h"
#include "app/records/job_table.h"
#include "app/records/link_base.h"
#include "app/sheet_of.h"

namespace carriageway {

namespace {

std::string joined(const std::vector<std::string>& letters) {
    std::string all;
    for (const std::string& letter : letters) all += (all.empty() ? "" : " ") + letter;
    return all;
}

} // namespace

void Program::carry_out(const ChoosePaper& a) {
    Habits habits = state_.habits;
    habits.paper = a.size;
    habits.layout = a.layout;
    set_habits(habits);
}

void Program::carry_out(const MakePaper& a) {
    const Looks& looks = state_.looks;
    const Job& job = session_.job();
    DrawnSheet drawn;
    if (a.table) {
        drawn.bytes = job_table(job, session_.assessment(), looks.language, looks.units);
    } else {
        SheetRequest request;
        request.job = job;
        request.letter = state_.habits.paper == PaperSize::letter;
        request.page_a_head = state_.habits.layout == PaperLayout::overview_and_heads;
        request.link_base =
            abilities_.link_base.empty() ? state_.habits.link_base : abilities_.link_base;
        request.language = looks.language;
        request.unit = looks.units;
        request.time = session_.time();
        drawn = sheet_of(request);
    }
    if (!drawn.trouble.empty()) return notice(drawn.trouble, true);
    const std::optional<std::string> path =
        session_.export_bytes(job.name, a.table ? ".csv" : ".pdf", drawn.bytes);
    if (!path) return say_trouble();
    const std::string letters =
        drawn.replaced.empty()
            ? std::string()
            : say(looks.language, Word::paper_unprintable, {joined(drawn.replaced)});
    if (abilities_.give_file) {
        errands_.push_back({ErrandKind::give_file, *path});
        if (!letters.empty()) notice(say(looks.language, Word::paper_given, {letters}));
        return;
    }
    const std::string written = say(looks.language, Word::exported_to, {*path});
    notice(letters.empty() ? written : written + ". " + letters);
}

} // namespace carriageway
