// The texts of a sheet's pages, and the kinds of sheet that are tried.
#pragma once

#include <algorithm>
#include <sstream>
#include <string>
#include <vector>

#include "tests/app/paper_jobs.h"

namespace carriageway::test {

struct PlacedText {
    std::string words;
    Box box, clip;
};

inline std::vector<PlacedText> texts_of(const DrawingList& page) {
    std::vector<PlacedText> texts;
    for (const Mark& mark : page.marks()) {
        if (mark.kind != MarkKind::text) continue;
        const Vec at = page.points(mark)[0];
        texts.push_back({std::string(page.words(mark)),
                         {at.x, at.y, at.x + mark.extent.x, at.y + mark.extent.y},
                         page.clip_box(mark.clip)});
    }
    return texts;
}

inline std::string all_texts(const JobSheet& sheet) {
    std::string all;
    for (const DrawingList& page : sheet.pages)
        for (const PlacedText& text : texts_of(page)) all += text.words + " ";
    return all;
}

/// Whether a text stands in another as it is, but for where its lines and long words were broken.
inline bool whole_in(std::string all, std::string wanted) {
    std::erase(all, ' ');
    std::erase(wanted, ' ');
    return all.find(wanted) != std::string::npos;
}

/// Whether words stand one after the other in a text, whatever stands between them.
inline bool in_order(const std::string& text, const std::string& wanted) {
    std::istringstream words(wanted);
    std::size_t at = 0;
    for (std::string each; words >> each;) {
        at = text.find(each, at);
        if (at == std::string::npos) return false;
        at += each.size();
    }
    return true;
}

template <class Visit>
void for_every_kind(const Visit& visit) {
    for (const Language language : {Language::english, Language::spanish, Language::pseudo})
        for (const bool letter : {false, true})
            for (const bool heads : {true, false}) {
                SheetRequest request = sheet_request(language, letter, heads);
                INFO((language == Language::english ? "English"
                      : language == Language::spanish ? "Spanish"
                                                      : "pseudo")
                     << (letter ? ", letter" : ", A4") << (heads ? ", heads" : ", tables"));
                visit(request);
            }
}

} // namespace carriageway::test
