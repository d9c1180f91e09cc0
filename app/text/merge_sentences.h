// Two halves of a walk put together, in words: what the two are at odds about, and what each says.
#pragma once

#include <string>

#include "app/text/measure.h"
#include "core/walk_merge.h"

namespace carriageway {

/// Name of a part in the midst of a sentence. Parts that no choice is ever about: Word::count.
Word merge_part_word(JobPart part);

/// What a conflict is about: "Head 6 · navy: squeegee gauge, as set".
std::string odds_text(Language language, const WalkMerge& merge, const MergeConflict& conflict);

/// What one half says of it: "1.2 marks", "not set", "operator 233 mm, machine 729 mm".
std::string half_text(Language language, LengthUnit unit, const WalkMerge& merge,
                      const MergeConflict& conflict, bool theirs);

} // namespace carriageway
