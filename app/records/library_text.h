// Faults of the library in words.
#pragma once

#include <string>

#include "app/records/library_fault.h"
#include "app/text/words.h"

namespace carriageway {

/// One or two sentences: what is wrong, what became of what was saved, and what to do. Of `detail`
/// it holds only what the system said about an `io` fault.
std::string fault_sentence(Language language, const LibraryFault& fault);

} // namespace carriageway
