// Drawing lists as a PDF, one a page: lines, areas and words that any reader prints sharply, with
// the typeface in it and words that can be selected and searched (ISO 32000-1; no picture
// anywhere).
//
// The list covers the page from its top left; one dp is so many millimetres as the page says, so
// what is drawn to scale on the screen is to scale on paper. Margins are the list's own. What lies
// beyond the page is cut off. Nothing is snapped to pixels; outlines of boxes and circles lie
// within them, lines and loops half to each side, none finer than 0.09 mm. The same lists give the
// same bytes.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "app/drawing/drawing_list.h"
#include "app/drawing/paper_look.h"

namespace carriageway {

/// Millimetres.
struct PdfPaper {
    double width = 210.0;
    double height = 297.0;
    PdfPaper turned() const { return {height, width}; }
};
inline constexpr PdfPaper pdf_a4{210.0, 297.0};     ///< upright (ISO 216)
inline constexpr PdfPaper pdf_letter{215.9, 279.4}; ///< upright, 8½ × 11 in (ANSI/ASME Y14.1)

/// A page and what is on it.
struct PdfPage {
    const DrawingList* list = nullptr; ///< nullptr: an empty page
    PdfPaper paper;
    double mm_per_dp = 25.4 / 160.0; ///< a dp is a 160th of an inch where nothing else is wanted
};

/// When a file was made, as read on the clock there.
struct PdfTime {
    int year = 2000;
    int month = 1, day = 1, hour = 0, minute = 0, second = 0;
};

struct PdfOptions {
    std::string title;    ///< UTF-8
    std::string language; ///< of the words, as a BCP 47 tag ("es"), for who has it read aloud
    std::optional<PdfTime> made; ///< not given: the file doesn't say
    PaperLook look = PaperLook::colour;
    bool full_size = false;                      ///< asks readers not to shrink it when they print
    std::size_t memory = std::size_t{512} << 20; ///< most that the writer may take, bytes
};

enum class PdfTrouble : std::uint8_t {
    none,
    no_page,
    paper,  ///< a page's size or scale is no number that makes sense: 5 mm to 5 m, scale above 0
    time,   ///< `made` is no date
    memory, ///< there isn't enough
    writer, ///< the library that writes it refused; `code` is its reason
};

struct PdfFile {
    std::string bytes; ///< empty where there was trouble
    PdfTrouble trouble = PdfTrouble::none;
    unsigned long code = 0;
    /// Letters that the typeface lacks (or, of hundreds of different ones beyond CP1252, the PDF has
    /// no code left for), each once, in UTF-8: a plain letter or a question mark stands in their
    /// place, to be told to whoever is to read it.
    std::vector<std::string> replaced;
    /// Marks that could not be drawn: with a number that isn't finite, or a circle too large.
    int left_out = 0;
};

/// Never throws.
PdfFile paint_pdf(std::span<const PdfPage> pages, const PdfOptions& options);

} // namespace carriageway
