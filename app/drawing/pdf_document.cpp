#include "app/drawing/pdf_document.h"

#include <cstdio>
#include <cstring>

#include "app/drawing/embedded_fonts.h"

namespace carriageway {

namespace {

constexpr char encoding_name[] = "WinAnsiEncoding";

/// Writes a font's encoding in libharu's place, which has names for a thousand letters of the Adobe
/// Glyph List only: the others get those that the list's specification makes of code points
/// (ISO 32000-1, 9.6.6.1). Called by libharu: nothing may be thrown.
HPDF_STATUS write_encoding(HPDF_Encoder encoder, HPDF_Stream stream) {
    const auto* const codes = static_cast<HPDF_BasicEncoderAttr>(encoder->attr);
    const char* const none = HPDF_UnicodeToGryphName(0);
    HPDF_STATUS status =
        HPDF_Stream_WriteStr(stream, "/Encoding <<\n/Type /Encoding\n/BaseEncoding /");
    if (status == HPDF_OK) status = HPDF_Stream_WriteStr(stream, encoding_name);
    if (status == HPDF_OK) status = HPDF_Stream_WriteStr(stream, "\n/Differences [");
    for (int code = codes->first_char; status == HPDF_OK && code <= codes->last_char; ++code) {
        if (codes->differences[code] == 0) continue;
        const HPDF_UNICODE letter = codes->unicode_map[code];
        const char* const name = HPDF_UnicodeToGryphName(letter);
        char words[80];
        // The list's Delta, Omega and mu are the signs that look like the Greek letters.
        const bool greek = letter >= 0x0370 && letter <= 0x03FF;
        if (!greek && std::strcmp(name, none) != 0)
            std::snprintf(words, sizeof words, "%d /%s ", code, name);
        else
            std::snprintf(words, sizeof words, "%d /uni%04X ", code, static_cast<unsigned>(letter));
        status = HPDF_Stream_WriteStr(stream, words);
    }
    return status == HPDF_OK ? HPDF_Stream_WriteStr(stream, "]\n>>\n") : status;
}

HPDF_Date date_of(const PdfTime& time) {
    HPDF_Date date{};
    date.year = time.year;
    date.month = time.month;
    date.day = time.day;
    date.hour = time.hour;
    date.minutes = time.minute;
    date.seconds = time.second;
    date.ind = ' ';
    return date;
}

bool in_range(const PdfTime& time) {
    return time.year >= 1 && time.year <= 9999 && time.hour >= 0 && time.hour <= 23 &&
           time.minute >= 0 && time.minute <= 59 && time.second >= 0 && time.second <= 59;
}

} // namespace

void PdfDocument::note(HPDF_STATUS error, HPDF_STATUS, void* document) {
    PdfDocument& mine = *static_cast<PdfDocument*>(document);
    if (mine.code_ == 0) mine.code_ = error;
}

void PdfDocument::check(HPDF_STATUS status) {
    if (status != HPDF_OK && code_ == 0) code_ = status;
}

PdfDocument::PdfDocument(const PdfOptions& options) : memory_(options.memory) {
    document_ = HPDF_NewEx(&PdfDocument::note, &PdfMemory::take, &PdfMemory::give, 0, this);
    if (document_ == nullptr) {
        check(HPDF_FAILD_TO_ALLOC_MEM);
        return;
    }
    describe(options);
}

PdfDocument::~PdfDocument() {
    if (document_ != nullptr) HPDF_Free(document_);
}

bool PdfDocument::sound() const {
    return code_ == 0 && document_ != nullptr && HPDF_GetError(document_) == HPDF_OK;
}

PdfTrouble PdfDocument::trouble() const {
    if (memory_.ran_out()) return PdfTrouble::memory;
    if (bad_time_) return PdfTrouble::time;
    return sound() ? PdfTrouble::none : PdfTrouble::writer;
}

void PdfDocument::describe(const PdfOptions& options) {
    check(HPDF_SetCompressionMode(document_, HPDF_COMP_ALL));
    if (!options.title.empty()) set_title(options.title);
    if (sound() && !options.language.empty())
        check(HPDF_Dict_Add(document_->catalog, "Lang",
                            HPDF_String_New(document_->mmgr, options.language.c_str(), nullptr)));
    if (sound() && options.full_size)
        check(HPDF_SetViewerPreference(document_, HPDF_PRINT_SCALING_NONE));
    if (!sound() || !options.made) return;
    bad_time_ = !in_range(*options.made) || HPDF_SetInfoDateAttr(document_, HPDF_INFO_CREATION_DATE,
                                                                 date_of(*options.made)) != HPDF_OK;
    if (bad_time_) check(HPDF_INVALID_DATE_TIME);
}

/// As UTF-16 with a byte order mark, which libharu's own call can't pass on (ISO 32000-1, 7.9.2.2).
void PdfDocument::set_title(const std::string& title) {
    std::string bytes = "\xFE\xFF";
    const auto add = [&](char32_t unit) {
        bytes += static_cast<char>(unit >> 8 & 0xFFu);
        bytes += static_cast<char>(unit & 0xFFu);
    };
    std::string_view rest = title;
    while (!rest.empty()) {
        const char32_t point = take_code_point(rest);
        if (point > 0xFFFF) add(0xD800 + ((point - 0x10000) >> 10));
        add(point > 0xFFFF ? 0xDC00 + (point & 0x3FF) : point);
    }
    HPDF_Binary value = HPDF_Binary_New(document_->mmgr, reinterpret_cast<HPDF_BYTE*>(bytes.data()),
                                        static_cast<HPDF_UINT>(bytes.size()));
    check(HPDF_Dict_Add(document_->info, "Title", value));
}

HPDF_FontDef PdfDocument::load_face(bool bold) {
    const unsigned char* const bytes = bold ? embedded::b612_bold : embedded::b612_regular;
    const unsigned size = bold ? embedded::b612_bold_size : embedded::b612_regular_size;
    HPDF_Stream stream = HPDF_MemStream_New(document_->mmgr, size);
    if (stream == nullptr) return nullptr;
    if (HPDF_Stream_Write(stream, bytes, size) != HPDF_OK) {
        HPDF_Stream_Free(stream);
        return nullptr;
    }
    HPDF_FontDef face = HPDF_TTFontDef_Load(document_->mmgr, stream, HPDF_TRUE);
    if (face == nullptr) return nullptr;
    if (HPDF_List_Add(document_->fontdef_list, face) != HPDF_OK) {
        HPDF_FontDef_Free(face);
        return nullptr;
    }
    // Marks the font as holding only what is used of it (ISO 32000-1, 9.6.4).
    char tag[] = "CWAAAA";
    tag[5] = bold ? 'B' : 'A';
    HPDF_TTFontDef_SetTagName(face, tag);
    return face;
}

HPDF_Font PdfDocument::make_font(HPDF_FontDef face, HPDF_Encoder encoder) {
    HPDF_Font font = HPDF_TTFont_New(document_->mmgr, face, encoder, document_->xref);
    if (font == nullptr) return nullptr;
    if (HPDF_List_Add(document_->font_mgr, font) != HPDF_OK) return nullptr;
    font->filter = HPDF_STREAM_FILTER_FLATE_DECODE;
    return font;
}

void PdfDocument::make_fonts(PdfLetters& letters) {
    if (!sound()) return;
    std::array<HPDF_FontDef, 2> faces{};
    for (const bool bold : {false, true})
        if (sound()) faces[bold] = load_face(bold);
    HPDF_Encoder encoder =
        sound() ? HPDF_BasicEncoder_New(document_->mmgr, encoding_name) : nullptr;
    if (encoder == nullptr || HPDF_Doc_RegisterEncoder(document_, encoder) != HPDF_OK) return;

    letters.settle([&](char32_t letter) {
        if (letter == 0 || letter > 0xFFFF) return false;
        for (HPDF_FontDef face : faces)
            if (HPDF_TTFontDef_GetGlyphid(face, static_cast<HPDF_UINT16>(letter)) == 0)
                return false;
        return true;
    });
    auto* const codes = static_cast<HPDF_BasicEncoderAttr>(encoder->attr);
    for (const auto& [code, letter] : letters.extra()) {
        codes->unicode_map[code] = static_cast<HPDF_UNICODE>(letter);
        codes->differences[code] = 1;
    }
    if (!letters.extra().empty()) encoder->write_fn = &write_encoding;
    for (const bool bold : {false, true})
        if (sound()) fonts_[bold] = make_font(faces[bold], encoder);
}

HPDF_Page PdfDocument::add_page(double width, double height) {
    HPDF_Page page = sound() ? HPDF_AddPage(document_) : nullptr;
    if (page == nullptr) return nullptr;
    check(HPDF_Page_SetWidth(page, static_cast<HPDF_REAL>(width)));
    check(HPDF_Page_SetHeight(page, static_cast<HPDF_REAL>(height)));
    return page;
}

HPDF_ExtGState PdfDocument::opacity(std::uint8_t alpha) {
    HPDF_ExtGState& state = opacities_[alpha];
    if (state != nullptr || !sound()) return state;
    state = HPDF_CreateExtGState(document_);
    if (state == nullptr) return nullptr;
    const HPDF_REAL share = static_cast<HPDF_REAL>(alpha) / 255.0f;
    check(HPDF_ExtGState_SetAlphaFill(state, share));
    check(HPDF_ExtGState_SetAlphaStroke(state, share));
    return state;
}

std::string PdfDocument::written() {
    if (sound()) check(HPDF_SaveToStream(document_));
    if (!sound()) return {};
    HPDF_UINT32 size = HPDF_GetStreamSize(document_);
    std::string bytes(size, '\0');
    check(HPDF_ResetStream(document_));
    check(HPDF_ReadFromStream(document_, reinterpret_cast<HPDF_BYTE*>(bytes.data()), &size));
    if (!sound() || size != bytes.size()) return {};
    return bytes;
}

} // namespace carriageway
