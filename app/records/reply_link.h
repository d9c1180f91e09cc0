// The reply to a call as a link: a press as it stands, and what to change on it.
//
//   ADDRESS#reply=1.…
//
// in the form of a job's link (job_link.h). It carries the job without walk and record, because
// they hold people's initials, and nothing of the call itself but what is to be changed.
//
// It comes from anywhere: reading is strict and limited. Only numbers and stops can be changed by
// it, at most `most_reply_changes`; apply() must accept each in turn, and something must be changed
// by all of them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/records/exchange.h"

namespace carriageway {

/// Key that opens the document and holds its version.
inline constexpr const char* reply_key = "carriageway_reply";
inline constexpr int reply_format = 1;
inline constexpr std::size_t most_reply_changes = 100;

struct Reply {
    Job before;
    std::vector<Edit> changes; ///< SetNumber and SetStops alone, one after the other
    Job after;                 ///< `before`, changed
    bool operator==(const Reply&) const = default;
};

/// The reply that changes a job so. Together is taken apart. Nothing where there is nothing to
/// change, where it is too much, or where an edit is of another kind or refused.
std::optional<Reply> reply_of(const Job& before, const std::vector<Edit>& changes);

struct ReadReply {
    std::optional<Reply> reply; ///< empty when refused
    ReadFault fault;
    explicit operator bool() const { return reply.has_value(); }
};

/// "reply=1.…"; empty where it is too large for a link.
std::string reply_link_fragment(const Reply& reply);
/// Refused as read_job_link() says.
ReadReply read_reply_link(std::string_view text);

/// What stands before a reply in a link.
inline constexpr std::string_view reply_marker = "reply=";

} // namespace carriageway
