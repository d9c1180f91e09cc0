// What core has against a job's walk, its record or the lists of its press, at its place in a file.
#pragma once

#include <optional>

#include "app/records/exchange.h"

namespace carriageway {

/// The first entry that core doesn't accept (job_check.h) although each of its fields could be
/// read: twice where it may stand once, out of order, beyond the limits of the number that it is
/// about. Paths are those of a job file. Nothing where all are accepted.
std::optional<ReadFault> record_fault(const Job& job);

} // namespace carriageway
