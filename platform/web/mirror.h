// The things of each frame, told to the page, which keeps a real element for each: what a screen
// reader reads and the keyboard walks through. Only what has changed is told.
#pragma once

#include <string>
#include <vector>

#include "app/drawing/drawing_list.h"

namespace carriageway {

class Mirror {
public:
    /// What has changed since the last call, as JSON for page.mirror(); empty when nothing has.
    /// A name that occurs twice gets a number behind it.
    std::string changes(const DrawingList& list);

    /// All things of the last call as a JSON array, for tests.
    std::string all() const;

    /// The things' own name of a name that was told: the number taken off again.
    static std::string own_name(const std::string& told) { return told.substr(0, told.find('\x1f')); }

private:
    struct Told {
        std::string name;
        std::string json; ///< without its place in the order
        Box target;       ///< for tests
    };
    std::vector<Told> told_;
    std::string live_;
};

} // namespace carriageway
