#include "app/drawing/pdf_painter.h"

#include <exception>
#include <new>

#include "app/drawing/pdf_marks.h"

namespace carriageway {

namespace {

constexpr double points_per_mm = 72.0 / 25.4;

/// Smallest and largest page, mm: what libharu takes is 3 to 14400 points.
constexpr double least_paper = 5.0, most_paper = 5000.0;

bool makes_sense(const PdfPage& page) {
    const auto within = [](double side) { return side >= least_paper && side <= most_paper; };
    // The largest paper is then 5 to 5 million dp wide, which a float still tells apart.
    return within(page.paper.width) && within(page.paper.height) && page.mm_per_dp >= 1e-3 &&
           page.mm_per_dp <= 1e3;
}

void paint_page(const PdfPage& page, const PdfOptions& options, const PdfLetters& letters,
                PdfDocument& document, PdfFile& file) {
    const double width = page.paper.width * points_per_mm;
    const double height = page.paper.height * points_per_mm;
    HPDF_Page sheet = document.add_page(width, height);
    if (sheet == nullptr || page.list == nullptr) return;
    PdfPen pen(document, sheet, page.mm_per_dp * points_per_mm, height);
    PdfMarks marks(*page.list, letters, options.look, page.paper, page.mm_per_dp, pen);
    marks.paint(document);
    file.left_out += marks.left_out();
}

PdfFile painted(std::span<const PdfPage> pages, const PdfOptions& options) {
    PdfLetters letters;
    for (const PdfPage& page : pages)
        if (page.list != nullptr)
            for (const Mark& mark : page.list->marks())
                if (mark.kind == MarkKind::text) letters.take(page.list->words(mark));
    PdfFile file;
    PdfDocument document(options);
    document.make_fonts(letters);
    for (const PdfPage& page : pages)
        if (document.sound()) paint_page(page, options, letters, document, file);
    file.bytes = document.written();
    file.trouble = document.trouble();
    file.code = document.code();
    if (file.trouble != PdfTrouble::none) file.bytes.clear();
    file.replaced = letters.replaced();
    return file;
}

PdfFile refused(PdfTrouble trouble) {
    PdfFile file;
    file.trouble = trouble;
    return file;
}

} // namespace

PdfFile paint_pdf(std::span<const PdfPage> pages, const PdfOptions& options) {
    if (pages.empty()) return refused(PdfTrouble::no_page);
    for (const PdfPage& page : pages)
        if (!makes_sense(page)) return refused(PdfTrouble::paper);
    try {
        return painted(pages, options);
    } catch (const std::bad_alloc&) {
        return refused(PdfTrouble::memory);
    } catch (const std::exception&) {
        return refused(PdfTrouble::writer); // the typeface in the program is none
    }
}

} // namespace carriageway
