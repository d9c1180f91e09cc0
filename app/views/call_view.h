// What the views of calls share (practice_call.cpp puts them together).
#pragma once

#include "app/views/call_plan.h"
#include "app/views/views.h"

namespace carriageway {

/// A call that is open and what it comes to.
struct CallView {
    const Model& model;
    const FaultLore& lore;
    const CallState& call;
    CallPlan plan;
    Language language() const { return model.state->looks.language; }
    std::string text(const BookText& one) const { return text_of(language(), one); }
};

/// The calls by press, and what begins one.
void call_list(const Model& model, Rows& rows);

/// What the caller sees or hears, and at which head.
void call_symptom(const CallView& view, Rows& rows);

/// One question, large, with why it is asked.
void call_question(const CallView& view, Rows& rows);

/// The head to scale and the numbers that were read out.
void call_numbers(const CallView& view, Rows& rows);

/// Causes, the likeliest first, each with what to tell of it.
void call_causes(const CallView& view, Rows& rows);

/// What to read back, and the link that shows it.
void call_read_back(const CallView& view, Rows& rows);

/// A reply that came by link; nothing where there is none.
void reply_rows(const Model& model, Rows& rows);

/// Leads to it from the press; nothing where there is none.
void reply_button(const Model& model, Rows& rows);

/// One head from above, to scale, with its stops and what is missed: a picture to look at.
void head_picture(const Model& model, const std::string& name, std::string_view label,
                  const Job& job, const Assessment& assessment, HeadId head, Rows& rows);

/// What is changed between two jobs: a line each, its head's name before it.
void change_rows(const Model& model, const std::string& name, const Job& before, const Job& after,
                 Rows& rows);

/// The first head that differs between two jobs; 0: none does.
HeadId changed_head(const Job& before, const Job& after);

/// How a call ended, in words.
Word outcome_word(CallOutcome outcome);

} // namespace carriageway
