// The lists of a run and what is noted in it, in words: for the screen and the printed sheet alike.
#pragma once

#include <string>

#include "app/text/words.h"
#include "core/run_record.h"
#include "core/check_list.h"

namespace carriageway {

/// Name of a list. Values outside the enum: Word::count, which has no text; so below.
Word list_word(CheckList list);

/// A usual step. `own`: Word::count.
Word step_word(CheckStep step);

/// An item as it stands in a list: the usual step's words, or the own step's text.
std::string step_text(Language language, const CheckItem& item);

/// Why a press stood still, in the midst of a sentence.
Word reason_word(StopReason reason);

/// A stoppage on one line: "12.5 min: ink".
std::string stoppage_text(Language language, const Stoppage& stoppage);

/// A count on one line: "840 printed, 12 of them spoiled"; without the latter where none is.
std::string count_text(Language language, const PieceCount& count);

/// The few words beside a step that stand for its caution (core/caution.h). `none`: Word::count.
Word sign_word(Caution caution);

} // namespace carriageway
