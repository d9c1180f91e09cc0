// The library that reads PNG checks sums that a fuzzer doesn't meet by chance, and zlib would turn
// every changed byte of packed pixels into rubbish. So a PNG is read three times: as it is; with
// its check sums put right; and with what stands in its IDAT taken as pixels that are yet to be
// packed.
#include "app/records/separation.h"

#include <zlib.h>

#include <string>
#include <vector>

#include "app/text/measure.h"
#include "core/job_check.h"
#include "tests/fuzz/inputs.h"

namespace carriageway::fuzz {
namespace {

constexpr std::size_t signature_bytes = 8;
constexpr std::size_t around_content = 12; // length, type, check sum
/// Time is not a matter here: a picture is given up after so many pixels.
constexpr std::int64_t most_pixels = 4'000'000;

std::uint32_t number_at(std::string_view bytes, std::size_t at) {
    std::uint32_t value = 0;
    for (std::size_t i = at; i < at + 4; ++i)
        value = value << 8 | static_cast<unsigned char>(bytes[i]);
    return value;
}

std::string four_bytes(std::uint32_t value) {
    std::string out;
    for (int shift = 24; shift >= 0; shift -= 8) out += static_cast<char>(value >> shift & 0xFFu);
    return out;
}

std::string chunk(const std::string& type, std::string_view content) {
    const std::string summed = type + std::string(content);
    const uLong sum = crc32(0, reinterpret_cast<const Bytef*>(summed.data()),
                            static_cast<uInt>(summed.size()));
    return four_bytes(static_cast<std::uint32_t>(content.size())) + summed +
           four_bytes(static_cast<std::uint32_t>(sum));
}

std::string packed(std::string_view content) {
    uLongf size = compressBound(static_cast<uLong>(content.size()));
    std::string out(size, '\0');
    compress2(reinterpret_cast<Bytef*>(out.data()), &size,
              reinterpret_cast<const Bytef*>(content.data()), static_cast<uLong>(content.size()),
              Z_BEST_SPEED);
    out.resize(size);
    return out;
}

/// The same chunks with right sums; the contents of all IDAT packed into one where `pack`. A last
/// chunk that is cut short is left out.
std::string mended(std::string_view png, bool pack) {
    std::string out(png.substr(0, signature_bytes));
    std::string pixels;
    std::string after;
    for (std::size_t at = signature_bytes; at + around_content <= png.size();) {
        const std::size_t length = number_at(png, at);
        if (length > png.size() - at - around_content) break;
        const std::string type(png.substr(at + 4, 4));
        const std::string_view content = png.substr(at + 8, length);
        if (pack && type == "IDAT") pixels += content;
        else (pixels.empty() ? out : after) += chunk(type, content);
        at += length + around_content;
    }
    if (pack) out += chunk("IDAT", packed(pixels));
    return out + after + (pack ? chunk("IEND", {}) : std::string{});
}

void read(std::string_view bytes, const SeparationOptions& options) {
    SeparationReading reading(picture_in(bytes), options);
    std::int64_t pixels = 0;
    constexpr std::int64_t piece = 100'000;
    while (reading.step(piece))
        if ((pixels += piece) > most_pixels) return;
    demand(reading.progress() >= 0.0 && reading.progress() <= 1.0, "progress beyond the end");
    if (const std::optional<Separation>& made = reading.separation()) {
        demand(!image_fault(made->image), "core refuses the image of a separation");
        demand(made->printed_share > 0.0 && made->printed_share <= 1.0, "a share that is none");
        return;
    }
    for (const Language language : {Language::english, Language::spanish})
        demand(!fault_sentence(language, LengthUnit::mm, reading.fault()).empty(),
               "a refusal without a sentence");
}

void read_both_ways(std::string_view bytes) {
    read(bytes, {});
    SeparationOptions typed;
    typed.width = 280.0;
    read(bytes, typed);
}

} // namespace

void separation(std::string_view bytes) {
    read_both_ways(bytes);
    if (bytes.size() < signature_bytes || !looks_like_png(bytes)) return;
    read_both_ways(mended(bytes, false));
    read_both_ways(mended(bytes, true));
}

} // namespace carriageway::fuzz
