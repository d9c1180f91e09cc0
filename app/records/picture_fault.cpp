// What is wrong with a picture, in words.
#include "app/records/file_bytes.h"
#include "app/records/separation.h"
#include "app/text/measure.h"

namespace carriageway {
namespace {

using Kind = PictureFault::Kind;

std::string whole(std::int64_t number) { return std::to_string(number); }

/// Bytes as megabytes, so that what is over a limit never reads like the limit.
std::string megabytes(std::uint64_t bytes) {
    constexpr std::uint64_t one = 1024u * 1024u;
    return whole(static_cast<std::int64_t>((bytes + one - 1) / one));
}

}  // namespace

std::string fault_sentence(Language language, LengthUnit unit, const PictureFault& fault) {
    const std::string width = whole(fault.width), height = whole(fault.height);
    const std::string across = format_length(fault.across, unit);
    const std::string along = format_length(fault.along, unit);
    switch (fault.kind) {
        case Kind::none: return {};
        case Kind::system:
            return fault_sentence(language, {FileFault::Kind::system, fault.error, false});
        case Kind::is_folder: return std::string(word(language, Word::file_is_folder));
        case Kind::not_a_picture:
#ifdef CARRIAGEWAY_TIFF
            return say(language, Word::picture_not_one, {"PNG, TIFF"});
#else
            return say(language, Word::picture_not_one, {"PNG"});
#endif
        case Kind::damaged:
            if (fault.row == 0) return std::string(word(language, Word::picture_damaged_start));
            return say(language, Word::picture_damaged, {whole(fault.row), height});
        case Kind::cut_short:
            if (fault.row == 0) return std::string(word(language, Word::picture_cut_start));
            return say(language, Word::picture_cut_short, {whole(fault.row), height});
        case Kind::too_many_pixels:
            return say(language, Word::picture_too_many_pixels,
                       {width, height, whole(largest_picture_side),
                        whole(most_picture_pixels / 1'000'000)});
        case Kind::needs_memory:
            return say(language, Word::picture_needs_memory,
                       {megabytes(fault.wanted), megabytes(most_picture_piece)});
        case Kind::not_supported:
            return say(language, Word::picture_not_supported, {fault.found});
        case Kind::no_size: return say(language, Word::picture_no_size, {width, height});
        case Kind::bad_size: return say(language, Word::picture_bad_size, {across, along});
        case Kind::no_ink:
            if (fault.specks == 0) return std::string(word(language, Word::picture_no_ink));
            return say(language, Word::picture_specks_only, {std::to_string(fault.specks)});
        case Kind::too_little_ink:
            return say(language, Word::picture_too_little_ink, {across, along});
        case Kind::cancelled: return std::string(word(language, Word::picture_cancelled));
    }
    return {};
}

}  // namespace carriageway
