// During the run: pieces counted so far, and why and how long the press stood still.
#include "app/text/list_sentences.h"
#include "app/views/chip_grid.h"
#include "app/views/list_view.h"
#include "core/run_tally.h"

namespace carriageway {

namespace {

constexpr int most_columns = 3;

/// "312 pieces an hour since the count before, stops included"; empty where no rate is known.
std::string rate_text(Language language, const RunRecord& record, std::size_t count) {
    const std::optional<double> rate = pieces_an_hour(record, count);
    return rate ? say(language, Word::tally_rate, {format_number(*rate, 0)}) : std::string();
}

/// The last count, large: how many of how many, the spoiled ones, the rate.
void tally(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    const RunRecord& record = model.job->record;
    const float top = rows.y;
    std::string head, more;
    if (record.counts.empty()) {
        head = canvas.word(Word::tally_none);
        rows.text(head, body_text, Role::soft_ink, 10.0f);
    } else {
        const PieceCount& last = record.counts.back();
        head = say(language, Word::tally_printed_of,
                   {format_number(last.printed, 0), format_number(model.job->run.pieces, 0)});
        rows.text(head, large_text, Role::ink, 2.0f);
        const double share = last.printed > 0.0 ? last.spoiled / last.printed : 0.0;
        more = say(language, Word::tally_spoiled, {format_number(last.spoiled, 0)}) + " (" +
               format_number(100.0 * share, 1) + " %)";
        if (const std::string rate = rate_text(language, record, record.counts.size() - 1);
            !rate.empty())
            more += ". " + capitalised(rate);
        rows.text(more, body_text, Role::ink, 10.0f);
    }
    canvas.reading("lists/tally", {rows.x, top, rows.x + rows.width, rows.y - 10.0f}, head, more);
    canvas.list().things().back().live = true;
}

/// The newest first.
void counts_list(const Model& model, Rows& rows) {
    const Language language = rows.canvas.language();
    const RunRecord& record = model.job->record;
    for (std::size_t i = record.counts.size(); i-- > 0;) {
        const PieceCount& count = record.counts[i];
        std::string detail = stamp_text(count.stamp);
        if (const std::string rate = rate_text(language, record, i); !rate.empty())
            detail += (detail.empty() ? "" : " · ") + rate;
        const std::string words = count_text(language, count);
        entry_row({"lists/count/" + std::to_string(i + 1), words, detail,
                   say(language, Word::tally_remove, {words}), RemoveCount{i}},
                  rows);
    }
}

void reason_grid(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    std::vector<Chip> chips;
    constexpr auto reasons = static_cast<int>(StopReason::count);
    // `other` is the first of the enum and the last that somebody looks for.
    for (int i = 1; i <= reasons; ++i) {
        const auto reason = static_cast<StopReason>(i % reasons);
        chips.push_back({"lists/reason/" + std::to_string(i % reasons),
                         capitalised(canvas.word(reason_word(reason))), {},
                         model.state->day.reason == reason, ChooseReason{reason}});
    }
    rows.text(canvas.word(Word::stoppage_why), small_text, Role::soft_ink, 4.0f);
    chip_grid("lists/reasons", canvas.word(Word::stoppage_why), chips,
              chip_columns(chips, most_columns, rows.width, canvas), rows);
}

void stoppages_list(const Model& model, Rows& rows) {
    const Language language = rows.canvas.language();
    const std::vector<Stoppage>& stoppages = model.job->record.stoppages;
    for (std::size_t i = stoppages.size(); i-- > 0;) {
        const Stoppage& stoppage = stoppages[i];
        std::string detail = stamp_text(stoppage.stamp);
        if (!stoppage.note.empty()) detail += (detail.empty() ? "" : " · ") + stoppage.note;
        const std::string words = stoppage_text(language, stoppage);
        entry_row({"lists/stoppage/" + std::to_string(i + 1), words, detail,
                   say(language, Word::stoppage_remove, {words}), RemoveStoppage{i}},
                  rows);
    }
}

void stoppages_part(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const RunRecord& record = model.job->record;
    list_heading(canvas.word(Word::stoppages), rows);
    const bool any = !record.stoppages.empty();
    const std::string total =
        any ? say(canvas.language(), Word::stoppage_total,
                  {format_number(minutes_stood(record), 1)})
            : std::string(canvas.word(Word::stoppage_none));
    const float top = rows.y;
    rows.text(total, body_text, any ? Role::ink : Role::soft_ink, 10.0f);
    canvas.reading("lists/stood-still", {rows.x, top, rows.x + rows.width, rows.y - 10.0f}, total,
                   {});
    reason_grid(model, rows);
    wide_button("lists/minutes", canvas.word(Word::stoppage_minutes), ButtonLook::quiet,
                OpenDayPad{{DayNumber::minutes}}, rows);
    if (!any) return;
    text_row(model, "lists/stoppage-note", canvas.word(Word::stoppage_note),
             record.stoppages.back().note, canvas.word(Word::stoppage_note_hint),
             EditText{TextTarget::stoppage_note}, rows);
    stoppages_list(model, rows);
}

} // namespace

void in_run_part(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    tally(model, rows);
    wide_button("lists/count", canvas.word(Word::tally_count), ButtonLook::strong,
                OpenDayPad{{DayNumber::printed}}, rows, true);
    counts_list(model, rows);
    stoppages_part(model, rows);
    rows.space(8.0f);
    text_row(model, "lists/run-notes", canvas.word(Word::run_notes), model.job->record.notes,
             canvas.word(Word::run_notes_hint), EditText{TextTarget::note, 0, 0, Note::run}, rows);
}

} // namespace carriageway
