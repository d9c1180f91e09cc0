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

    /// A thing as it was told: what the page makes something of, and where it can be touched.
    struct Told {
        std::string name, label, value, hint;
        std::string parent; ///< the region that it lies in; empty: none
        ThingRole role = ThingRole::text;
        Box box, target;
        Box clip;           ///< of what scrolls; empty: the window
        bool enabled = true, chosen = false, acts = false;
        double now = 0.0, least = 0.0, most = 0.0;
        bool operator==(const Told&) const = default;
    };

private:
    std::vector<Told> told_;
    std::string live_;
};

} // namespace carriageway
