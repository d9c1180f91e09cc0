#include "tests/app/pdf_reader.h"

#include <cstdlib>
#include <sstream>

#include <catch2/catch_test_macros.hpp>

namespace carriageway::test {

PdfReader::PdfReader(const std::string& bytes) { write_bytes(folder_.file("sheet.pdf"), bytes); }

std::string PdfReader::run(const std::string& program, const std::string& options) const {
    const std::string out = folder_.file("out"), err = folder_.file("err");
    const std::string command =
        "LC_ALL=C " + program + " " + options + " >'" + out + "' 2>'" + err + "'";
    const int status = std::system(command.c_str());
    INFO(program << ": poppler's programs are needed (Debian: poppler-utils)");
    INFO(bytes_of(err));
    REQUIRE(status == 0);
    REQUIRE(bytes_of(err).empty());
    return bytes_of(out);
}

std::string PdfReader::text() const {
    return run("pdftotext", "-layout -enc UTF-8 '" + folder_.file("sheet.pdf") + "' -");
}

std::string PdfReader::fonts() const {
    return run("pdffonts", "'" + folder_.file("sheet.pdf") + "'");
}

std::string PdfReader::facts() const {
    return run("pdfinfo", "-enc UTF-8 -f 1 -l -1 '" + folder_.file("sheet.pdf") + "'");
}

std::vector<FoundWord> PdfReader::words() const {
    std::istringstream lines(
        run("pdftotext", "-bbox -enc UTF-8 '" + folder_.file("sheet.pdf") + "' -"));
    std::vector<FoundWord> words;
    for (std::string line; std::getline(lines, line);) {
        const std::size_t start = line.find("<word ");
        if (start == std::string::npos) continue;
        const auto number = [&](const char* name) {
            const std::string key = std::string(name) + "=\"";
            return std::stod(line.substr(line.find(key) + key.size()));
        };
        const std::size_t begin = line.find('>', start) + 1;
        words.push_back({line.substr(begin, line.find("</word>") - begin), number("xMin"),
                         number("yMin"), number("xMax"), number("yMax")});
    }
    return words;
}

Picture PdfReader::page(int number, double per_mm) const {
    const std::string n = std::to_string(number);
    const std::string bytes =
        run("pdftoppm", "-f " + n + " -l " + n + " -r " + std::to_string(25.4 * per_mm) + " '" +
                            folder_.file("sheet.pdf") + "'");
    std::istringstream header(bytes);
    std::string kind;
    int most = 0;
    Picture picture;
    header >> kind >> picture.width >> picture.height >> most;
    REQUIRE((kind == "P6" && most == 255));
    const std::size_t start = static_cast<std::size_t>(header.tellg()) + 1;
    const std::size_t pixels =
        static_cast<std::size_t>(picture.width) * static_cast<std::size_t>(picture.height);
    REQUIRE(bytes.size() == start + 3 * pixels);
    for (std::size_t i = 0; i < pixels; ++i) {
        for (std::size_t c = 0; c < 3; ++c)
            picture.rgba.push_back(static_cast<std::uint8_t>(bytes[start + 3 * i + c]));
        picture.rgba.push_back(255);
    }
    return picture;
}

PdfFile made_pdf(const std::vector<PdfPage>& pages, const PdfOptions& options) {
    const PdfFile file = paint_pdf(pages, options);
    INFO("libharu's code " << file.code);
    REQUIRE(file.trouble == PdfTrouble::none);
    REQUIRE_FALSE(file.bytes.empty());
    return file;
}

} // namespace carriageway::test
