// What the program says of itself.
#pragma once

#include <string>
#include <vector>

#include "app/text/built_on.h"
#include "app/views/views.h"

namespace carriageway {

struct About {
    std::string version;
    std::vector<BuiltOn> built_on;
    std::string folder; ///< of the library; empty: there is none
};

/// A part of the settings that opens and closes.
void about_rows(const Model& model, Rows& rows);

} // namespace carriageway
