#include "app/records/console.h"

#include <ostream>

#include "app/records/json_text.h"

namespace carriageway {
namespace {

bool steers(unsigned char first, unsigned char second) {
    if (first < 0x20U || first == 0x7FU) return true;
    return first == 0xC2U && second >= 0x80U && second < 0xA0U;  // the second set of controls
}

std::string program_name(const Console& console) {
    return console.command.empty() ? "carriageway" : "carriageway " + console.command;
}

}  // namespace

std::string printable(std::string_view text) {
    std::string out;
    out.reserve(text.size());
    while (!text.empty()) {
        const std::size_t good = utf8_length(text);
        for (std::size_t at = 0; at < good; ++at) {
            const unsigned char byte = static_cast<unsigned char>(text[at]);
            const unsigned char next =
                at + 1 < good ? static_cast<unsigned char>(text[at + 1]) : 0U;
            if (!steers(byte, next)) {
                out += text[at];
                continue;
            }
            out += '?';
            if (byte == 0xC2U) ++at;
        }
        text.remove_prefix(good);
        if (text.empty()) break;
        out += '?';
        text.remove_prefix(1);
    }
    return out;
}

std::size_t characters_in(std::string_view text) {
    std::size_t count = 0;
    for (const char byte : text) {
        if ((static_cast<unsigned char>(byte) & 0xC0U) != 0x80U) ++count;
    }
    return count;
}

int Console::complain(std::string_view subject, std::string_view message) const {
    services.out.flush();
    services.err << "carriageway: ";
    if (!subject.empty()) services.err << printable(subject) << ": ";
    services.err << printable(message) << '\n';
    return exit_trouble;
}

int Console::misuse(std::string_view message) const {
    complain({}, message);
    services.err << say(language, Word::try_help, {program_name(*this)}) << '\n';
    return exit_trouble;
}

void write_out(const Console& console, std::string_view bytes) {
    console.services.out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
}

}  // namespace carriageway
