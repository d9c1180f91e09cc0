#include "app/sheet_of.h"

#include <ctime>

#include "app/drawing/pdf_painter.h"
#include "app/records/job_link.h"
#include "app/records/link_base.h"

namespace carriageway {

namespace {

// ISO 216 and ANSI/ASME Y14.1, mm, upright.
constexpr double a4_width = 210.0, a4_height = 297.0;
constexpr double letter_width = 215.9, letter_height = 279.4;

std::string trouble_text(Language language, const PdfFile& file) {
    if (file.trouble == PdfTrouble::none) return {};
    if (file.trouble == PdfTrouble::memory)
        return std::string(word(language, Word::paper_no_memory));
    return say(language, Word::paper_not_made,
               {std::to_string(static_cast<int>(file.trouble)) + "." + std::to_string(file.code)});
}

} // namespace

std::string date_text(Timestamp time) {
    if (time <= 0) return {};
    const std::time_t seconds = static_cast<std::time_t>(time / 1000);
    char buffer[32] = "";
    if (const std::tm* local = std::localtime(&seconds))
        std::strftime(buffer, sizeof buffer, "%Y-%m-%d", local);
    return buffer;
}

void prepare_sheet(const SheetRequest& request, SheetInput& input) {
    assess(request.job, input.assessment);
    PaperRequest& paper = input.paper;
    paper.job = &request.job;
    paper.assessment = &input.assessment;
    paper.language = request.language;
    paper.units = request.unit;
    paper.width = request.letter ? letter_width : a4_width;
    paper.height = request.letter ? letter_height : a4_height;
    paper.page_a_head = request.page_a_head;
    paper.date = date_text(request.time);
    if (!usable_link_base(request.link_base)) return;
    paper.link = link_on(request.link_base, job_link_fragment(request.job));
    paper.too_large = paper.link.empty();
    if (!paper.too_large) paper.code = qr_code(paper.link);
}

DrawnSheet sheet_of(const SheetRequest& request) {
    SheetInput input;
    prepare_sheet(request, input);
    const JobSheet sheet = job_sheet(input.paper);
    std::vector<PdfPage> pages;
    for (const DrawingList& list : sheet.pages)
        pages.push_back({&list, {input.paper.width, input.paper.height}, paper_mm_per_dp});
    PdfOptions options;
    options.title = request.job.name;
    options.language = request.language == Language::spanish ? "es" : "en";
    options.full_size = true; // the drawings are to scale
    PdfFile file = paint_pdf(pages, options);
    return {std::move(file.bytes), static_cast<int>(pages.size()), std::move(file.replaced),
            trouble_text(request.language, file), input.assessment.fit};
}

} // namespace carriageway
