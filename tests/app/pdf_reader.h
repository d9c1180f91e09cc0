// What an independent reader (poppler's programs) makes of a PDF.
#pragma once

#include <string>
#include <vector>

#include "app/drawing/pdf_painter.h"
#include "app/drawing/raster.h"
#include "tests/scratch_folder.h"

namespace carriageway::test {

/// A word as it stands on a page, points from its top left.
struct FoundWord {
    std::string word;
    double x0, y0, x1, y1;
};

/// Keeps a PDF in a file for as long as it lives. A program that is missing, that fails or that
/// warns of anything fails the test.
class PdfReader {
public:
    explicit PdfReader(const std::string& bytes);

    std::string text() const;  ///< of all pages
    std::string fonts() const; ///< pdffonts' table
    std::string facts() const; ///< pdfinfo's, with the size of every page
    std::vector<FoundWord> words() const;
    /// A page in pixels, smooth; `per_mm` of them to a millimetre.
    Picture page(int number, double per_mm) const;

private:
    std::string run(const std::string& program, const std::string& options) const;

    ScratchFolder folder_;
};

/// Paints lists and requires that it went well.
PdfFile made_pdf(const std::vector<PdfPage>& pages, const PdfOptions& options = {});

} // namespace carriageway::test
