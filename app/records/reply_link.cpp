#include "app/records/reply_link.h"

#include "app/records/carried_text.h"
#include "app/records/form_parts.h"

namespace carriageway {

namespace {

using Kind = ReadFault::Kind;

/// A reply as it travels.
struct Parcel {
    Job job;
    std::vector<Edit> changes;
};

void describe_parcel(Form& form, Parcel& carried) {
    form.object("job", [&] { describe_job(form, carried.job); });
    describe_list(form, "changes", carried.changes, {1, most_reply_changes}, [&](Edit& edit) {
        form.object("", [&] { describe_edit(form, edit); });
    });
}

bool may_travel(const Edit& edit) {
    return std::holds_alternative<SetNumber>(edit.what) ||
           std::holds_alternative<SetStops>(edit.what);
}

/// Takes Together apart; what may not travel stays, to be found.
void flatten(const Edit& edit, std::vector<Edit>& into) {
    if (const Together* all = std::get_if<Together>(&edit.what))
        for (const Edit& each : all->edits) flatten(each, into);
    else into.push_back(edit);
}

/// The place of the first change that may not be, or the number of them: all may.
std::size_t first_refused(const Job& before, const std::vector<Edit>& changes, Job& after) {
    after = before;
    for (std::size_t i = 0; i < changes.size(); ++i)
        if (!may_travel(changes[i]) || !apply(after, changes[i])) return i;
    return changes.size();
}

std::string change_path(std::size_t index) { return "changes[" + std::to_string(index) + "]"; }

std::optional<ReadFault> reply_of_parcel(const Parcel& carried, Reply& reply) {
    if (std::optional<ReadFault> fault = fault_of_whole(carried.job)) {
        fault->path = "job" + (fault->path.empty() ? "" : "." + fault->path);
        return fault;
    }
    reply.before = carried.job;
    reply.changes = carried.changes;
    const std::size_t refused = first_refused(reply.before, reply.changes, reply.after);
    if (refused < reply.changes.size())
        return carried_fault(Kind::not_allowed, change_path(refused), {}, {});
    if (reply.after == reply.before) return carried_fault(Kind::not_allowed, "changes", {}, {});
    return std::nullopt;
}

ReadReply read_reply(std::string_view text) {
    ReadReply read;
    Parcel carried;
    Reply reply;
    read.fault = read_document(text, reply_key, reply_format, carried, describe_parcel,
                               [&](const Parcel& all) { return reply_of_parcel(all, reply); });
    if (read.fault.kind == Kind::none) read.reply = std::move(reply);
    return read;
}

} // namespace

std::optional<Reply> reply_of(const Job& before, const std::vector<Edit>& changes) {
    Reply reply;
    reply.before = before;
    reply.before.walk.clear();
    reply.before.record = {};
    for (const Edit& edit : changes) flatten(edit, reply.changes);
    if (reply.changes.empty() || reply.changes.size() > most_reply_changes) return std::nullopt;
    if (first_refused(reply.before, reply.changes, reply.after) < reply.changes.size())
        return std::nullopt;
    if (reply.after == reply.before) return std::nullopt;
    return reply;
}

std::string reply_link_fragment(const Reply& reply) {
    std::string text = write_document(reply_key, reply_format, Parcel{reply.before, reply.changes},
                                      describe_parcel, false);
    text.pop_back(); // the line feed
    return link_fragment(reply_marker, text);
}

ReadReply read_reply_link(std::string_view text) {
    return read_from_link(text, reply_marker, read_reply);
}

} // namespace carriageway
