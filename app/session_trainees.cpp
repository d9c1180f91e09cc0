// The people who practise on this device, and calls: what is kept of them, in the library.
#include "app/session.h"

namespace carriageway {

void Session::read_trainee() {
    practised_by_ = {};
    const LibraryResult<std::optional<std::string>> kept =
        library_->setting(setting_key::trainee);
    const TraineeId id = kept && *kept ? std::atoll((*kept)->c_str()) : 0;
    LibraryResult<TraineeSummary> summary = trainee_summary(*library_, id);
    if (!summary && id != 0) summary = trainee_summary(*library_, 0); // erased meanwhile
    if (summary) practised_by_ = std::move(*summary);
}

bool Session::read_group() {
    LibraryResult<std::vector<TraineeSummary>> group = group_summary(*library_);
    if (!group) {
        note(group.fault());
        return false;
    }
    group_ = std::move(*group);
    // Another window may have erased or renamed the one who practises here.
    read_trainee();
    return true;
}

/// After a change of the people: what is shown of them, and what a store is to keep.
bool Session::people_changed(const std::optional<LibraryFault>& fault) {
    if (fault) note(*fault);
    else fault_.reset();
    writer_->touch();
    read_group();
    return !fault;
}

/// The same where only what one of them did has changed: the others are not read again.
bool Session::person_changed(TraineeId id, const std::optional<LibraryFault>& fault) {
    if (fault) note(*fault);
    else fault_.reset();
    writer_->touch();
    const LibraryResult<TraineeSummary> summary = trainee_summary(*library_, id);
    if (!summary) return people_changed(summary.fault());
    for (TraineeSummary& person : group_)
        if (person.who.id == id) person = *summary;
    if (practised_by_.who.id == id) practised_by_ = *summary;
    return !fault;
}

bool Session::choose_trainee(TraineeId id) {
    LibraryResult<TraineeSummary> summary = trainee_summary(*library_, id);
    if (!summary) {
        note(summary.fault());
        read_group();
        return false;
    }
    practised_by_ = std::move(*summary);
    if (const std::optional<LibraryFault> fault =
            library_->set_setting(setting_key::trainee, std::to_string(id)))
        note(*fault); // chosen for as long as the program runs
    writer_->touch();
    return true;
}

bool Session::add_trainee(const std::string& name) {
    const LibraryResult<TraineeId> id = carriageway::add_trainee(*library_, name, now_());
    if (!id) {
        note(id.fault());
        return false;
    }
    fault_.reset();
    const bool chosen = choose_trainee(*id);
    return read_group() && chosen;
}

bool Session::rename_trainee(TraineeId id, const std::string& name) {
    return people_changed(carriageway::rename_trainee(*library_, id, name));
}

std::optional<LibraryFault> Session::erase_trainee(TraineeId id) {
    ErasedRow erased{id == 0 ? ErasedRow::Kind::of_nobody : ErasedRow::Kind::person, id, {}};
    if (const LibraryResult<std::vector<TraineeRow>> people = trainees(*library_))
        for (const TraineeRow& row : *people)
            if (row.id == id) erased.time = row.created;
    std::optional<LibraryFault> fault = carriageway::erase_trainee(*library_, id);
    if (!fault) fault = forget_in_backups(erased);
    const bool chosen = practised_by_.who.id == id;
    people_changed(fault);
    if (chosen && practised_by_.who.id == 0) choose_trainee(0);
    return fault;
}

bool Session::sign_topic(TraineeId who, PracticeTopic topic, SignState state, bool there) {
    std::optional<SignOff> sign;
    if (there) sign = SignOff{habits_.initials, now_()};
    return person_changed(who, carriageway::sign_topic(*library_, who, topic, state, sign));
}

bool Session::note_attempt(const Attempt& attempt, std::optional<TraineeId> who) {
    const TraineeId by = who.value_or(practised_by_.who.id);
    const LibraryResult<AttemptId> id = add_attempt(*library_, by, attempt);
    if (id) return person_changed(by, std::nullopt);
    return person_changed(by, id.fault());
}

std::optional<std::string> Session::export_trainee(TraineeId id) {
    const LibraryResult<std::string> text = carriageway::export_trainee(*library_, id);
    if (!text) {
        note(text.fault());
        return std::nullopt;
    }
    // Not under the person's name: the file may lie about, and its name is seen by everybody.
    return export_bytes("practice-" + std::to_string(id), ".json", *text);
}

std::optional<std::string> Session::export_group() {
    if (!read_group()) return std::nullopt;
    return export_bytes("practice", ".csv", group_table(group_, looks_.language));
}

std::vector<CallRow> Session::recent_calls(int limit) {
    LibraryResult<std::vector<CallRow>> found = calls(*library_, limit);
    if (found) return std::move(*found);
    note(found.fault());
    return {};
}

std::optional<CallId> Session::keep_call(CallId id, const CallRecord& call) {
    std::optional<LibraryFault> fault;
    if (id != 0) {
        fault = change_call(*library_, id, call);
    } else {
        const LibraryResult<CallId> added = add_call(*library_, call);
        if (added) id = *added;
        else fault = added.fault();
    }
    writer_->touch();
    if (!fault) return id;
    note(*fault);
    return std::nullopt;
}

bool Session::erase_call(CallId id) {
    const LibraryResult<CallRecord> call = open_call(*library_, id);
    std::optional<LibraryFault> fault = carriageway::erase_call(*library_, id);
    ErasedRow erased{ErasedRow::Kind::call, id, {}};
    if (call) erased.time = call->time;
    if (!fault) fault = forget_in_backups(erased);
    if (fault) note(*fault);
    writer_->touch();
    return !fault;
}

} // namespace carriageway
