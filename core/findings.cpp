#include "core/findings.h"

namespace carriageway {

std::optional<Edit> remedy_edit(const Finding& finding) {
    const Remedy& remedy = finding.remedy;
    switch (remedy.kind) {
        case Remedy::Kind::none:
            return std::nullopt;
        case Remedy::Kind::stops:
            return Edit{SetStops{finding.head, remedy.stops}};
        case Remedy::Kind::number:
            return Edit{SetNumber{finding.head, remedy.field, remedy.value}};
    }
    return std::nullopt;
}

}  // namespace carriageway
