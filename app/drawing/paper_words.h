// What stands on a sheet, in words, and the job that it is about.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/drawing/paper_sheet.h"
#include "core/job_pace.h"

namespace carriageway {

/// What all parts of a sheet share.
struct PaperJob {
    explicit PaperJob(const PaperRequest& request);

    std::string_view word(Word key) const { return carriageway::word(language, key); }
    const HeadAssessment& assessed(const Head& head) const;

    const PaperRequest& request;
    Job job; ///< with control characters taken out of its texts
    Language language;
    LengthUnit units;
    JobPace pace;
};

/// A number of a head, or with head 0 of the job, with its unit (paper_sentences.h); and without.
std::string value_text(const PaperJob& sheet, Field field, double value);
std::string number_text(const PaperJob& sheet, Field field, double value);

/// What is planned.
double planned_number(const PaperJob& sheet, HeadId head, Field field);

/// What was really set, where it is written otherwise than what is planned.
std::optional<double> real_number(const PaperJob& sheet, HeadId head, Field field);

/// How a number is called, at the start of a line.
std::string field_title(const PaperJob& sheet, Field field);

/// "5 navy"; without a colour's name "5".
std::string short_title(const Head& head);

/// What a station without a head is for: "flash, 4 s, 160 °C".
std::string station_words(const PaperJob& sheet, int station);

/// What the recipe lacks: "Heads 1, 3, 5: stencil, ink", one a line; empty where nothing is
/// missing.
std::vector<std::string> gap_lines(const PaperJob& sheet);

} // namespace carriageway
