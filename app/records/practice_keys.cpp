// Stable keys of topics, signatures and mistakes, for files and the library.
#include <array>

#include "app/records/finding_key.h"
#include "app/records/trainees.h"
#include "core/fields.h"

namespace carriageway {

namespace {

constexpr std::array topic_keys{
    "find_fault",     "shortest_stroke", "trainee_angle", "which_dial", "read_sheet",
    "place_stations", "judge_gap",       "fault_tests",   "call",
};
static_assert(topic_keys.size() == topic_count);

constexpr std::array sign_keys{"shown", "helped", "alone"};
static_assert(sign_keys.size() == static_cast<std::size_t>(SignState::count));

struct ReasonRow {
    MarkReason reason;
    const char* key;
};
/// Those that can be mistakes.
constexpr ReasonRow reason_rows[] = {
    {MarkReason::fault_missed, "fault_missed"},
    {MarkReason::not_a_fault, "not_a_fault"},
    {MarkReason::head_not_fit, "head_not_fit"},
    {MarkReason::stroke_long, "stroke_long"},
    {MarkReason::moves_more, "moves_more"},
    {MarkReason::number_near, "number_near"},
    {MarkReason::number_wrong, "number_wrong"},
    {MarkReason::dial_other_way, "dial_other_way"},
    {MarkReason::dial_missed, "dial_missed"},
    {MarkReason::dial_not_needed, "dial_not_needed"},
    {MarkReason::line_not_set, "line_not_set"},
    {MarkReason::head_disturbed, "head_disturbed"},
    {MarkReason::wishes_broken, "wishes_broken"},
    {MarkReason::placed_worse, "placed_worse"},
    {MarkReason::not_answered, "not_answered"},
};

std::optional<Field> field_from(std::string_view key) {
    for (int i = 0; i < static_cast<int>(Field::count); ++i)
        if (key == info_of(static_cast<Field>(i)).key) return static_cast<Field>(i);
    return std::nullopt;
}

} // namespace

const char* topic_key(PracticeTopic topic) { return topic_keys[static_cast<std::size_t>(topic)]; }

std::optional<PracticeTopic> topic_from(std::string_view key) {
    for (std::size_t i = 0; i < topic_keys.size(); ++i)
        if (key == topic_keys[i]) return static_cast<PracticeTopic>(i);
    return std::nullopt;
}

const char* sign_key(SignState state) { return sign_keys[static_cast<std::size_t>(state)]; }

std::optional<SignState> sign_from(std::string_view key) {
    for (std::size_t i = 0; i < sign_keys.size(); ++i)
        if (key == sign_keys[i]) return static_cast<SignState>(i);
    return std::nullopt;
}

std::string mistake_key(const Mistake& mistake) {
    std::string key;
    for (const ReasonRow& row : reason_rows)
        if (row.reason == mistake.reason) key = row.key;
    if (mistake.finding) key += ' ' + std::string(finding_key(*mistake.finding));
    if (mistake.field) key += ' ' + std::string(info_of(*mistake.field).key);
    return key;
}

std::optional<Mistake> mistake_from(std::string_view key) {
    const std::size_t space = key.find(' ');
    const std::string_view about = space == key.npos ? std::string_view() : key.substr(space + 1);
    Mistake mistake;
    bool known = false;
    for (const ReasonRow& row : reason_rows)
        if (key.substr(0, space) == row.key) {
            mistake.reason = row.reason;
            known = true;
        }
    if (!known) return std::nullopt;
    if (is_about_finding(mistake.reason)) mistake.finding = finding_from(about);
    if (is_about_field(mistake.reason)) mistake.field = field_from(about);
    // What it is about stands there exactly where the reason is about something.
    if (is_about_finding(mistake.reason) != mistake.finding.has_value()) return std::nullopt;
    if (is_about_field(mistake.reason) != mistake.field.has_value()) return std::nullopt;
    if (!mistake.finding && !mistake.field && space != key.npos) return std::nullopt;
    return mistake;
}

} // namespace carriageway
