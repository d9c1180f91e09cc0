#include "app/version.h"

#include "app/drawing/drawing_built_on.h"
#include "app/records/records_built_on.h"

namespace carriageway {

std::string program_version() { return CARRIAGEWAY_VERSION; }

std::vector<BuiltOn> program_built_on() {
    std::vector<BuiltOn> all = records_built_on();
    for (BuiltOn& one : drawing_built_on()) all.push_back(std::move(one));
    return all;
}

} // namespace carriageway
