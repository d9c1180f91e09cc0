// What a job says for or against a cause of a fault, in words.
#pragma once

#include <string>

#include "app/text/measure.h"
#include "app/text/words.h"
#include "core/fault_finding.h"

namespace carriageway {

/// A condition without its numbers, with a capital: "Mesh slack". `Evidence::count`: Word::count.
Word evidence_word(Evidence evidence);

/// What was found of a condition, and its limit, in one sentence: "Head 3 · navy. Mesh slack: 12
/// N/cm, and 20 N/cm is the limit." The head is named where the ranking was of any head and the job
/// has it. A contribution that isn't evidence: empty.
std::string evidence_text(Language language, LengthUnit unit, const Job& job,
                          const Contribution& contribution, bool name_head = true);

/// A cause's share of all scores, in whole percent; below ten with a decimal, as they are small
/// numbers that differ. Judged, not measured: no more figures than that.
std::string cause_share_text(double share);

/// What a contribution does to the score: "× 9: speaks for it"; of a weight "How usual ...: 5".
std::string factor_text(Language language, const Contribution& contribution);

} // namespace carriageway
