// A refusal has a kind, and a sentence in both languages.
#pragma once

#include "app/records/exchange.h"
#include "app/text/words.h"
#include "tests/fuzz/inputs.h"

namespace carriageway::fuzz {

inline void told(const ReadFault& fault) {
    demand(fault.kind != ReadFault::Kind::none, "refused without a reason");
    for (const Language language : {Language::english, Language::spanish})
        demand(!fault_sentence(language, fault).empty(), "a refusal without a sentence");
}

} // namespace carriageway::fuzz
