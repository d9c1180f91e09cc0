// The sheet that stays with a job, as pages to print: an overview of the press, then a page for
// each head or tables of all of them, with room to write down what was really set.
//
// White paper and black ink: everything is told apart by hatching, shape or word. An ink of the job
// is only a swatch beside its name. Nothing of a text is left out: what doesn't fit a line goes on
// in the next, and over to another page. The same request gives the same pages.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "app/drawing/drawing_list.h"
#include "app/drawing/paper_page.h"
#include "app/drawing/qr_code.h"
#include "app/text/measure.h"
#include "app/text/words.h"
#include "core/assess.h"

namespace carriageway {

struct PaperRequest {
    const Job* job = nullptr;               ///< as planned; what was really set stands in its walk
    const Assessment* assessment = nullptr; ///< of this job
    Language language = Language::english;
    LengthUnit units = LengthUnit::mm;
    double width = 210.0; ///< of the paper, mm: A4 upright
    double height = 297.0;
    bool page_a_head = true; ///< else tables of all heads
    std::string link;           ///< to the job; empty: none is printed
    std::optional<QrCode> code; ///< of the link, where one holds it
    bool too_large = false;     ///< a link was wanted and the job is too large for one
    std::string date;           ///< empty: a line to write it on
};

/// Pages, each as large as the paper, paper_mm_per_dp to a dp, and what they were measured with.
struct JobSheet {
    std::unique_ptr<PaperType> type;
    std::vector<DrawingList> pages;
};

JobSheet job_sheet(const PaperRequest& request);

/// The same without what follows the overview: for looking at.
JobSheet job_sheet_front(const PaperRequest& request);

/// Letters of the job's texts that can't be printed, each once, in UTF-8: paper shows a plain
/// letter or a question mark instead.
std::vector<std::string> unprintable_letters(const Job& job);

} // namespace carriageway
