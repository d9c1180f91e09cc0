// What people practise, in words: topics, signatures, mistakes, and what comes next.
#pragma once

#include <string>

#include "app/text/words.h"
#include "core/mistakes.h"
#include "core/practice_next.h"

namespace carriageway {

/// "The shortest good stroke".
std::string topic_text(Language language, PracticeTopic topic);

/// "Stroke longer than it need be", "Not ticked: …".
std::string mistake_text(Language language, const Mistake& mistake);

/// Why a topic comes next, as a clause: "not tried yet". `done` is that topic's.
std::string next_reason_text(Language language, const NextTopic& next, const TopicDone& done);

} // namespace carriageway
