#include "platform/desktop/display_scale.h"

#include <cstdlib>
#include <locale>
#include <sstream>
#include <stdexcept>
#include <string>

namespace carriageway {

double wanted_scale() {
    const char* text = std::getenv("CARRIAGEWAY_SCALE");
    if (text == nullptr || *text == '\0') return 1.0;
    std::istringstream words(text);
    words.imbue(std::locale::classic());
    double scale = 0.0;
    words >> scale;
    const bool whole = !words.fail() && words.peek() == std::istringstream::traits_type::eof();
    if (!whole || !(scale >= 0.5) || !(scale <= 4.0))
        throw std::runtime_error(std::string("CARRIAGEWAY_SCALE is \"") + text +
                                 "\": set it to a number from 0.5 to 4, or leave it out.");
    return scale;
}

} // namespace carriageway
