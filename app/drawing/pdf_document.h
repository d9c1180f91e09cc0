// A PDF being written: libharu's document with its pages, the two faces of the type, and how opaque
// things are. Unit: points (72 an inch).
//
// An error is remembered, the first one of them, and leaves libharu by no jump: ask sound() and
// stop.
#pragma once

#include <hpdf.h>

#include <array>
#include <string>

#include "app/drawing/pdf_letters.h"
#include "app/drawing/pdf_memory.h"
#include "app/drawing/pdf_painter.h"
#include "app/drawing/type.h"

namespace carriageway {

class PdfDocument {
public:
    explicit PdfDocument(const PdfOptions& options);
    ~PdfDocument();
    PdfDocument(const PdfDocument&) = delete;
    PdfDocument& operator=(const PdfDocument&) = delete;

    bool sound() const;
    PdfTrouble trouble() const; ///< none while it is sound
    unsigned long code() const { return code_; }

    /// Settles the letters and makes the fonts, after which text can be shown.
    void make_fonts(PdfLetters& letters);
    HPDF_Font font(TypeStyle style) const { return fonts_[style.bold]; }

    HPDF_Page add_page(double width, double height);
    /// Of lines and areas, 0 to 255.
    HPDF_ExtGState opacity(std::uint8_t alpha);

    /// All bytes of it; empty when it isn't sound.
    std::string written();

private:
    static void note(HPDF_STATUS error, HPDF_STATUS detail, void* document);
    void describe(const PdfOptions& options);
    void set_title(const std::string& title);
    HPDF_FontDef load_face(bool bold);
    HPDF_Font make_font(HPDF_FontDef face, HPDF_Encoder encoder);
    void check(HPDF_STATUS status);

    PdfMemory memory_;
    HPDF_Doc document_ = nullptr;
    unsigned long code_ = 0;
    bool bad_time_ = false;
    std::array<HPDF_Font, 2> fonts_{}; ///< regular, bold
    std::array<HPDF_ExtGState, 256> opacities_{};
};

} // namespace carriageway
