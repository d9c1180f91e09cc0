// The lists of the run, and what is noted while it runs: ticks, counts, stoppages, the first piece.
#include <algorithm>
#include <cmath>

#include "app/program.h"
#include "app/text/sentences.h"
#include "core/job_check.h"
#include "core/list_edits.h"

namespace carriageway {

namespace {

constexpr double ms_per_minute = 60'000.0;

bool is_whole_count(double number, double most) {
    return number >= 0.0 && number <= most && number == std::round(number);
}

std::string without_ends(const std::string& text) {
    constexpr const char* blank = " \t\r\n";
    const std::size_t first = text.find_first_not_of(blank);
    if (first == std::string::npos) return {};
    return text.substr(first, text.find_last_not_of(blank) - first + 1);
}

/// Why a number can't be counted, in words; empty: it can.
std::string count_trouble(Language language, const RunRecord& record, DayNumber number,
                          double typed, double printed) {
    const auto figures = [](double value) { return format_number(value, 0); };
    if (number == DayNumber::minutes) {
        if (!(typed >= 0.0 && typed <= most_minutes))
            return say(language, Word::stoppage_minutes_refused, {figures(most_minutes)});
        if (record.stoppages.size() >= most_stoppages)
            return say(language, Word::tally_full, {std::to_string(most_stoppages)});
        return {};
    }
    if (!is_whole_count(typed, most_pieces_counted))
        return say(language, Word::tally_not_whole, {figures(most_pieces_counted)});
    if (record.counts.size() >= most_counts)
        return say(language, Word::tally_full, {std::to_string(most_counts)});
    if (number == DayNumber::spoiled && typed > printed)
        return say(language, Word::tally_too_spoiled, {figures(printed)});
    // Pieces only become more: a smaller number is a slip, here or in the count before.
    if (number == DayNumber::printed && !record.counts.empty() &&
        typed < record.counts.back().printed)
        return say(language, Word::tally_fewer, {figures(record.counts.back().printed)});
    return {};
}

} // namespace

bool Program::put_record(const RunRecord& record) {
    return record == session_.job().record || apply_edit(Edit{SetRecord{record}});
}

void Program::carry_out(const ShowList& a) {
    DayState& day = state_.day;
    const bool another = day.list != a.list || day.in_run != a.in_run;
    day.list = a.list;
    day.in_run = a.in_run;
    day.changing_list = a.changing;
    state_.typing.reset();
    if (another) state_.day_scroll = 0.0f;
}

void Program::carry_out(const ShowGaps& a) {
    state_.day.only_gaps = a.only;
    state_.day_scroll = 0.0f;
}

void Program::carry_out(const TickStep& a) {
    const Edit edit = tick_step(session_.job(), a.item, a.done, stamp());
    put_record(std::get<SetRecord>(edit.what).record);
}

void Program::carry_out(const ChooseReason& a) { state_.day.reason = a.reason; }

void Program::carry_out(const RemoveCount& a) {
    RunRecord record = session_.job().record;
    if (a.count >= record.counts.size()) return;
    record.counts.erase(record.counts.begin() + static_cast<std::ptrdiff_t>(a.count));
    put_record(record);
}

void Program::carry_out(const RemoveStoppage& a) {
    RunRecord record = session_.job().record;
    if (a.stoppage >= record.stoppages.size()) return;
    record.stoppages.erase(record.stoppages.begin() + static_cast<std::ptrdiff_t>(a.stoppage));
    put_record(record);
}

/// By the person at the program; where that has no initials, by the name typed now.
void Program::carry_out(const ApproveFirstPiece& a) {
    Approval approval = session_.job().record.approval;
    if (a.approved && approval.by.empty() && state_.habits.initials.empty())
        return edit_text(EditText{TextTarget::approved_by});
    if (!a.approved) approval.by.clear();
    else if (approval.by.empty()) approval.by = state_.habits.initials;
    approval.time = a.approved ? session_.time() : 0;
    RunRecord record = session_.job().record;
    record.approval = approval;
    put_record(record);
}

void Program::accept_counted(DayNumber number, double typed) {
    Pad& pad = *state_.pad;
    RunRecord record = session_.job().record;
    pad.trouble =
        count_trouble(state_.looks.language, record, number, typed, state_.day.printed);
    if (!pad.trouble.empty()) return;
    if (number == DayNumber::printed) {
        // Then how many are spoiled: as many as before, until something else is typed.
        state_.day.printed = typed;
        carry_out(OpenDayPad{{DayNumber::spoiled}});
        const double spoiled = record.counts.empty() ? 0.0 : record.counts.back().spoiled;
        state_.pad->text = format_number(spoiled, 0);
        state_.pad->fresh = true;
        return;
    }
    if (number == DayNumber::spoiled) {
        record.counts.push_back({state_.day.printed, typed, stamp()});
    } else {
        // Typed when the press runs again: it began so many minutes ago.
        Stamp began = stamp();
        began.time = std::max<std::int64_t>(
            0, began.time - static_cast<std::int64_t>(std::llround(typed * ms_per_minute)));
        record.stoppages.push_back({typed, state_.day.reason, {}, began});
    }
    state_.pad.reset();
    put_record(record);
}

bool Program::add_own_step(const std::string& typed) {
    const std::string text = without_ends(typed);
    if (text.empty()) return true;
    if (const std::optional<Edit> edit = add_step(session_.job(), state_.day.list, text))
        return apply_edit(*edit);
    const Language language = state_.looks.language;
    notice(is_name(text) ? say(language, Word::list_full, {std::to_string(most_check_items)})
                         : std::string(word(language, Word::refusal_name_too_long)),
           true);
    return false;
}

} // namespace carriageway
