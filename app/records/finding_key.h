// Findings by name, as files and reports for programs have them.
#pragma once

#include <optional>
#include <string_view>

#include "core/findings.h"

namespace carriageway {

/// "both_sensors_on".
const char* finding_key(FindingKind kind);
std::optional<FindingKind> finding_from(std::string_view key);

} // namespace carriageway
