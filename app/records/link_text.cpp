#include "app/records/link_text.h"

#include <zlib.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <new>
#include <optional>

namespace carriageway {
namespace {

using Kind = ReadFault::Kind;

/// What zlib takes as if it stood before the text of every link of version 1: the keys of a job
/// file and values that are often met, what is most alike last. Frozen: with one letter changed, no
/// link that was ever sent can be read.
constexpr std::string_view dictionary_1 =
    R"("counter_clockwise""rotation_rad":"angle_rad":"least_rad":"most_rad":"wings_flat_rad":"m)"
    R"(easured":true"inches":true"unload","load","open","flash","cool","open","open","open","op)"
    R"(en","open","open","open","open",Black","ink":"#000000"{"id":1,"station":2,"colour":"Whit)"
    R"(e","ink":"#FFFFFF","screen":{"across_mm":584,"along_mm":787,"profile_width_mm":38,"mesh_)"
    R"(per_cm":43,"thread_um":80,"tension_along_n_per_cm":28,"tension_across_n_per_cm":28},"ima)"
    R"(ge":{"outline_mm":[[-150.5,-200],[150.5,200]],"set_aside":{"width_mm":300,"length_mm":40)"
    R"(0},"offset_x_mm":0,"offset_y_mm":8,"rotation_deg":0},"squeegee":{"width_mm":381,"angle_d)"
    R"(eg":20,"gauge_marks":0.8},"flood":{"width_mm":381,"angle_deg":15,"gauge_marks":1,"winged)"
    R"(":false},"print_stroke":"toward_machine","print_speed_mm_per_s":450,"flood_speed_mm_per_)"
    R"(s":650,"stops":{"operator_mm":-255,"machine_mm":249}},{"carriageway_job":1,"name":"","pr)"
    R"(ess":{"name":"Demonstration press, ten stations","stations":10,"turning":"clockwise","ar)"
    R"(m_radius_mm":1450,"ruler":{"zero_mm":-500,"counts":"toward_machine","graduation_mm":1,"i)"
    R"(nches":false},"sensors":{"operator_offset_mm":-30,"machine_offset_mm":30,"bar_length_mm")"
    R"(:60,"reach_mm":4,"hysteresis_mm":2,"latency_s":0.015,"separation_margin_mm":5,"separatio)"
    R"(n_measured":false,"measured_separation_mm":70,"separation_spread":{"value_mm":1,"measure)"
    R"(d":false}},"carriage":{"range_lo_mm":-380,"range_hi_mm":380,"acceleration_mm_per_s2":800)"
    R"(0,"fastest_mm_per_s":1200,"drop_time_s":0.15,"drop_dwell_s":0.2},"squeegee_holder":{"piv)"
    R"(ot_offset_mm":15,"pivot_height_mm":65,"half_depth_mm":15},"flood_holder":{"pivot_offset_)"
    R"(mm":15,"pivot_height_mm":65,"half_depth_mm":15},"squeegee_gauge":{"mm_per_mark":6,"lowes)"
    R"(t_marks":0,"highest_marks":2,"graduation_marks":0.1},"flood_gauge":{"mm_per_mark":6,"low)"
    R"(est_marks":0,"highest_marks":2,"graduation_marks":0.1},"angles":{"least_deg":5,"most_deg)"
    R"(":25,"wings_flat_deg":25,"wing_length_mm":30},"allowances":{"frame_clearance_mm":50,"pla)"
    R"(ten_inset_mm":10,"least_bead_mm":40,"stop_spread":{"value_mm":1,"measured":false},"scree)"
    R"(n_spread":{"value_mm":1,"measured":false},"image_spread":{"value_mm":1,"measured":false})"
    R"(,"overtravel_spread":{"value_mm":2,"measured":false}},"adjusters":[{"name":"Left","side")"
    R"(:"left","x_mm":-230,"y_mm":370,"mm_per_turn":1.25,"graduations":12,"clockwise_positive":)"
    R"(true},{"name":"Right","side":"right","x_mm":230,"y_mm":370,"mm_per_turn":1.25,"graduatio)"
    R"(ns":12,"clockwise_positive":true},{"name":"Across","side":"across","x_mm":0,"y_mm":-370,)"
    R"("mm_per_turn":1.25,"graduations":12,"clockwise_positive":false}]},"platen":{"width_mm":4)"
    R"(06,"length_mm":559,"offset_x_mm":0,"offset_y_mm":30},"wishes":{"run_past_mm":25,"side_ov)"
    R"(erlap_mm":12},"stations":["load","open","flash","cool","open","open","open","open","open)"
    R"(","unload"],"heads":[{"id":6,"station":9,"colour":"","ink":"#1E2126","screen":{"across_m)"
    R"(m":584,"along_mm":787,"profile_width_mm":38,"mesh_per_cm":77,"thread_um":55,"tension_alo)"
    R"(ng_n_per_cm":25,"tension_across_n_per_cm":25},"image":{"width_mm":296,"length_mm":364,"o)"
    R"(ffset_x_mm":1.5,"offset_y_mm":9,"rotation_deg":-0.4},"squeegee":{"width_mm":356,"angle_d)"
    R"(eg":12,"gauge_marks":1.1},"flood":{"width_mm":381,"angle_deg":15,"gauge_marks":1,"winged)"
    R"(":true},"print_stroke":"toward_operator","print_speed_mm_per_s":650,"flood_speed_mm_per_)"
    R"(s":700,"stops":{"operator_mm":-226,"machine_mm":242}}]})";

// ---- base64url (RFC 4648, section 5), without padding ----

constexpr std::string_view alphabet =
    "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

std::string base64url(std::string_view bytes) {
    std::string out;
    std::uint32_t bits = 0;
    int count = 0;
    for (const char byte : bytes) {
        bits = (bits << 8 | static_cast<unsigned char>(byte)) & 0xFFFFu;
        for (count += 8; count >= 6; count -= 6) out += alphabet[bits >> (count - 6) & 63u];
    }
    if (count > 0) out += alphabet[bits << (6 - count) & 63u];
    return out;
}

/// Nothing where a character is foreign, or bits are left over that no writer would leave.
std::optional<std::string> from_base64url(std::string_view text) {
    std::string out;
    std::uint32_t bits = 0;
    int count = 0;
    for (const char c : text) {
        const std::size_t value = alphabet.find(c);
        if (value == std::string_view::npos) return std::nullopt;
        bits = (bits << 6 | static_cast<std::uint32_t>(value)) & 0xFFFu;
        if ((count += 6) < 8) continue;
        count -= 8;
        out += static_cast<char>(bits >> count & 0xFFu);
    }
    if (count >= 6 || (bits & ((1u << count) - 1u)) != 0) return std::nullopt;
    return out;
}

// ---- raw deflate (RFC 1951) with the dictionary ----

constexpr int raw_deflate = -MAX_WBITS;

const Bytef* bytes_of(std::string_view text) { return reinterpret_cast<const Bytef*>(text.data()); }

/// zlib's stream takes what it reads as changeable, and changes nothing.
void feed(z_stream& stream, std::string_view text) {
    stream.next_in = const_cast<Bytef*>(bytes_of(text));
    stream.avail_in = static_cast<uInt>(text.size());
}

std::string deflated(std::string_view text) {
    z_stream stream{};
    if (deflateInit2(&stream, Z_BEST_COMPRESSION, Z_DEFLATED, raw_deflate, 9,
                     Z_DEFAULT_STRATEGY) != Z_OK)
        throw std::bad_alloc();
    deflateSetDictionary(&stream, bytes_of(dictionary_1), static_cast<uInt>(dictionary_1.size()));
    std::string out(deflateBound(&stream, static_cast<uLong>(text.size())), '\0');
    feed(stream, text);
    stream.next_out = reinterpret_cast<Bytef*>(out.data());
    stream.avail_out = static_cast<uInt>(out.size());
    deflate(&stream, Z_FINISH); // ends in one call: deflateBound is enough
    out.resize(stream.total_out);
    deflateEnd(&stream);
    return out;
}

struct Inflated {
    std::string text;
    Kind fault = Kind::none;
};

/// Stops at the limit: what would become larger is never made.
Inflated inflated(std::string_view bytes) {
    z_stream stream{};
    if (inflateInit2(&stream, raw_deflate) != Z_OK) throw std::bad_alloc();
    inflateSetDictionary(&stream, bytes_of(dictionary_1), static_cast<uInt>(dictionary_1.size()));
    feed(stream, bytes);
    Inflated result;
    std::array<char, 16384> part;
    int status = Z_OK;
    while (status == Z_OK && result.fault == Kind::none) {
        stream.next_out = reinterpret_cast<Bytef*>(part.data());
        stream.avail_out = static_cast<uInt>(part.size());
        status = inflate(&stream, Z_NO_FLUSH);
        const std::size_t made = part.size() - stream.avail_out;
        if (result.text.size() + made > largest_linked_job) result.fault = Kind::link_too_large;
        else result.text.append(part.data(), made);
    }
    // Cut short, foreign, or with something behind its end.
    const bool whole = status == Z_STREAM_END && stream.avail_in == 0;
    if (result.fault == Kind::none && !whole) result.fault = Kind::damaged_link;
    inflateEnd(&stream);
    return result;
}

// ---- the checksum that stands before what is deflated ----

constexpr std::size_t checksum_bytes = 4;

/// CRC-32 of the text, as zlib computes it, the most significant byte first.
std::string checksum(std::string_view text) {
    const uLong sum = crc32(crc32(0, nullptr, 0), bytes_of(text), static_cast<uInt>(text.size()));
    std::string out;
    for (int shift = 24; shift >= 0; shift -= 8) out += static_cast<char>(sum >> shift & 0xFFu);
    return out;
}

// ---- the text of a link, as it comes out of messages ----

int hex_digit(char c) {
    if (c >= '0' && c <= '9') return c - '0';
    if (c >= 'a' && c <= 'f') return c - 'a' + 10;
    return c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
}

/// Without white space, control characters and all beyond ASCII: mail programs break long lines,
/// and some put invisible signs where a line may break. A link has none of these.
std::string visible(std::string_view text) {
    std::string out;
    for (const char c : text)
        if (c > ' ' && c < '\x7F') out += c;
    return out;
}

std::string percent_decoded(std::string_view text) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool coded = text[i] == '%' && i + 2 < text.size();
        const int high = coded ? hex_digit(text[i + 1]) : -1;
        const int low = coded ? hex_digit(text[i + 2]) : -1;
        if (high < 0 || low < 0) {
            out += text[i];
            continue;
        }
        out += static_cast<char>(high * 16 + low);
        i += 2;
    }
    return out;
}

/// What stands behind the marker, without what else a fragment may hold and the signs that a
/// sentence or a mail program puts behind an address. Nothing where it isn't there.
std::optional<std::string> payload_of(std::string_view text, std::string_view marker) {
    std::string link = visible(percent_decoded(visible(text)));
    std::size_t at = link.starts_with(marker) ? 0 : std::string::npos;
    for (const char before : {'#', '&'})
        if (at == std::string::npos) {
            at = link.find(before + std::string(marker));
            if (at != std::string::npos) ++at;
        }
    if (at == std::string::npos) return std::nullopt;
    link.erase(0, at + marker.size());
    link.resize(std::min(link.find_first_of("&#"), link.size()));
    link.resize(link.find_last_not_of(".,;:!?)]}>\"'") + 1);
    return link;
}

LinkText refused(Kind kind, std::string found = {}, std::string expected = {}) {
    LinkText read;
    read.fault.kind = kind;
    read.fault.found = std::move(found);
    read.fault.expected = std::move(expected);
    return read;
}

} // namespace

std::string link_fragment(std::string_view marker, std::string_view text) {
    if (text.size() > largest_linked_job) return {};
    std::string link = std::string(marker) + std::to_string(job_link_version) + "." +
                       base64url(checksum(text) + deflated(text));
    if (link.size() > longest_job_fragment) link.clear();
    return link;
}

bool has_marker(std::string_view link, std::string_view marker) {
    return link.size() <= longest_job_link && payload_of(link, marker).has_value();
}

LinkText read_link_text(std::string_view text, std::string_view marker) {
    if (text.size() > longest_job_link)
        return refused(Kind::link_too_large, std::to_string(text.size()),
                       std::to_string(longest_job_link));
    const std::optional<std::string> payload = payload_of(text, marker);
    if (!payload) return refused(Kind::not_a_link);
    const std::size_t digits = std::min(payload->find_first_not_of("0123456789"), payload->size());
    const std::string version = payload->substr(0, digits);
    if (version.empty() || digits == payload->size() || (*payload)[digits] != '.' ||
        version[0] == '0')
        return refused(Kind::damaged_link);
    if (version != std::to_string(job_link_version))
        return refused(Kind::newer_link, version.substr(0, 9), std::to_string(job_link_version));
    const std::optional<std::string> bytes =
        from_base64url(std::string_view(*payload).substr(digits + 1));
    if (!bytes || bytes->size() <= checksum_bytes) return refused(Kind::damaged_link);
    const Inflated made = inflated(std::string_view(*bytes).substr(checksum_bytes));
    if (made.fault != Kind::none)
        return refused(made.fault, {}, std::to_string(largest_linked_job));
    if (checksum(made.text) != bytes->substr(0, checksum_bytes)) return refused(Kind::damaged_link);
    LinkText read;
    read.text = made.text;
    return read;
}

} // namespace carriageway
