#include "app/records/link_base.h"

#include <algorithm>

namespace carriageway {

bool usable_link_base(std::string_view base) {
    for (const std::string_view scheme : {"https://", "http://"})
        if (base.rfind(scheme, 0) == 0 && base.size() > scheme.size())
            return std::all_of(base.begin(), base.end(),
                               [](char c) { return c > ' ' && c < '\x7F'; });
    return false;
}

std::string link_on(std::string_view base, std::string_view fragment) {
    if (fragment.empty()) return {};
    std::string link(base.substr(0, base.find('#')));
    link += '#';
    link += fragment;
    return link;
}

} // namespace carriageway
