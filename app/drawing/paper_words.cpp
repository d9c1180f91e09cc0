#include "app/drawing/paper_words.h"

#include <algorithm>
#include <map>

#include "app/text/list_sentences.h"
#include "app/text/paper_sentences.h"
#include "app/text/recipe_sentences.h"
#include "app/text/sentences.h"
#include "core/recipe.h"
#include "core/walk.h"

namespace carriageway {

namespace {

/// Takes line breaks and other controls out of a text: on paper there is no place for them.
void make_printable(std::string& text) {
    for (char& letter : text)
        if (static_cast<unsigned char>(letter) < 0x20 || letter == 0x7F) letter = ' ';
}

Job printable_job(Job job) {
    for (std::string* text : {&job.name, &job.press.name, &job.garment.name}) make_printable(*text);
    for (Head& head : job.heads)
        for (std::string* text : {&head.colour, &head.notes.ink, &head.notes.stencil})
            make_printable(*text);
    for (WalkMark& mark : job.walk) make_printable(mark.stamp.initials);
    for (CheckItem& item : job.press.checks) make_printable(item.text);
    return job;
}

std::string joined(const std::vector<std::string>& texts) {
    std::string out;
    for (const std::string& text : texts) out += (out.empty() ? "" : ", ") + text;
    return out;
}

double value_set(const PaperJob& sheet, Field field) {
    return value_as_set(sheet.job, 0, field).value_or(number_of(sheet.job, nullptr, field));
}

} // namespace

PaperJob::PaperJob(const PaperRequest& asked)
    : request(asked), job(printable_job(*asked.job)), language(asked.language), units(asked.units),
      pace(job_pace(job, *asked.assessment)) {
    if (job.name.empty()) job.name = word(Word::untitled);
}

const HeadAssessment& PaperJob::assessed(const Head& head) const {
    const auto index = static_cast<std::size_t>(&head - job.heads.data());
    return request.assessment->heads[index];
}

std::string value_text(const PaperJob& sheet, Field field, double value) {
    return paper_value(sheet.language, sheet.units, sheet.job, field, value);
}

std::string number_text(const PaperJob& sheet, Field field, double value) {
    return paper_number(sheet.units, sheet.job, field, value);
}

double planned_number(const PaperJob& sheet, HeadId head, Field field) {
    return number_of(sheet.job, find_head(sheet.job, head), field);
}

std::optional<double> real_number(const PaperJob& sheet, HeadId head, Field field) {
    const WalkMark* mark = mark_of(sheet.job, head, field);
    if (!mark || !mark->real) return std::nullopt;
    const double planned = planned_number(sheet, head, field);
    if (number_text(sheet, field, *mark->real) == number_text(sheet, field, planned))
        return std::nullopt;
    return mark->real;
}

std::string field_title(const PaperJob& sheet, Field field) {
    return capitalised(sheet.word(paper_field_word(field)));
}

std::string short_title(const Head& head) {
    const std::string number = std::to_string(head.station);
    return head.colour.empty() ? number : number + " " + head.colour;
}

std::string station_words(const PaperJob& sheet, int station) {
    const StationUse use = sheet.job.uses[static_cast<std::size_t>(station - 1)];
    std::string words(sheet.word(use_word(use)));
    if (use != StationUse::flash) return words;
    words += ", " + value_text(sheet, Field::flash_dwell, value_set(sheet, Field::flash_dwell));
    const double heat = value_set(sheet, Field::flash_temperature);
    if (!is_not_noted(Field::flash_temperature, heat))
        words += ", " + value_text(sheet, Field::flash_temperature, heat);
    return words;
}

std::vector<std::string> gap_lines(const PaperJob& sheet) {
    // Heads that lack the same share a line, in the order of their first one.
    struct Line {
        std::string items;
        std::vector<std::string> stations;
    };
    std::vector<Line> lines;
    std::string of_job;
    const std::vector<RecipeEntry> gaps = recipe_gaps(sheet.job);
    for (std::size_t i = 0; i < gaps.size();) {
        std::vector<std::string> items;
        const HeadId id = gaps[i].head;
        for (; i < gaps.size() && gaps[i].head == id; ++i)
            items.emplace_back(sheet.word(recipe_word(gaps[i].item)));
        const Head* head = find_head(sheet.job, id);
        if (!head) {
            of_job = joined(items);
            continue;
        }
        const std::string all = joined(items);
        auto line = std::find_if(lines.begin(), lines.end(),
                                 [&](const Line& each) { return each.items == all; });
        if (line == lines.end()) line = lines.insert(lines.end(), {all, {}});
        line->stations.push_back(std::to_string(head->station));
    }
    std::vector<std::string> out;
    for (const Line& line : lines)
        out.push_back(say(sheet.language,
                          line.stations.size() == 1 ? Word::paper_gap_head : Word::paper_gap_heads,
                          {joined(line.stations), line.items}));
    if (!of_job.empty()) out.push_back(say(sheet.language, Word::paper_gap_job, {of_job}));
    return out;
}

} // namespace carriageway
