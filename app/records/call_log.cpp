#include "app/records/call_log.h"

#include <algorithm>
#include <array>

#include "app/records/stored_practice.h"
#include "core/job_check.h"

namespace carriageway {

using Kind = LibraryFault::Kind;

namespace {

constexpr std::array outcome_keys{"open", "solved", "not_solved", "passed_on"};
static_assert(outcome_keys.size() == static_cast<std::size_t>(CallOutcome::count));

constexpr const char* call_columns = "id, time, press, symptom, notes, found, outcome";

std::optional<CallOutcome> outcome_from(const std::string& key) {
    for (std::size_t i = 0; i < outcome_keys.size(); ++i)
        if (key == outcome_keys[i]) return static_cast<CallOutcome>(i);
    return std::nullopt;
}

/// Stops with `bad_name` where a text can't be stored.
void need_texts(const Library::Connection& connection, const CallRecord& call) {
    const auto fits = [](const std::string& text, std::size_t most) {
        return text.size() <= most && is_utf8(text);
    };
    if (fits(call.notes, longest_call_notes) && fits(call.press, longest_call_text) &&
        fits(call.symptom, longest_call_text) && fits(call.found, longest_call_text))
        return;
    throw LibraryStop{connection.fault(Kind::bad_name, "a text of a call")};
}

void bind_call(SQLite::Statement& statement, const CallRecord& call) {
    statement.bind(1, call.time);
    statement.bind(2, call.press);
    statement.bind(3, call.symptom);
    statement.bind(4, call.notes);
    statement.bind(5, call.found);
    statement.bind(6, outcome_key(call.outcome));
}

/// The outcome of a row that names none we know is open: a call is not lost over it.
CallRow row_of(SQLite::Statement& row) {
    return {row.getColumn(0).getInt64(),
            {row.getColumn(1).getInt64(), row.getColumn(2).getString(),
             row.getColumn(3).getString(), row.getColumn(4).getString(),
             row.getColumn(5).getString(),
             outcome_from(row.getColumn(6).getString()).value_or(CallOutcome::open)}};
}

[[noreturn]] void stop_at_none(const Library::Connection& connection, CallId id) {
    throw LibraryStop{connection.fault(Kind::no_such_call, "call " + std::to_string(id))};
}

} // namespace

const char* outcome_key(CallOutcome outcome) {
    return outcome_keys[static_cast<std::size_t>(outcome)];
}

LibraryResult<CallId> add_call(Library& library, const CallRecord& call) {
    Library::Connection& connection = library.connection();
    return connection.changing([&]() -> LibraryResult<CallId> {
        need_texts(connection, call);
        SQLite::Statement insert(*connection.database,
                                 "INSERT INTO calls (time, press, symptom, notes, found, outcome) "
                                 "VALUES (?, ?, ?, ?, ?, ?)");
        bind_call(insert, call);
        insert.exec();
        return CallId{connection.database->getLastInsertRowid()};
    });
}

std::optional<LibraryFault> change_call(Library& library, CallId id, const CallRecord& call) {
    Library::Connection& connection = library.connection();
    return connection.changing([&]() -> std::optional<LibraryFault> {
        need_texts(connection, call);
        SQLite::Statement update(*connection.database,
                                 "UPDATE calls SET time = ?, press = ?, symptom = ?, notes = ?, "
                                 "found = ?, outcome = ? WHERE id = ?");
        bind_call(update, call);
        update.bind(7, id);
        if (update.exec() == 0) stop_at_none(connection, id);
        return std::nullopt;
    });
}

std::optional<LibraryFault> erase_call(Library& library, CallId id) {
    Library::Connection& connection = library.connection();
    const std::optional<LibraryFault> fault =
        connection.changing([&]() -> std::optional<LibraryFault> {
            SQLite::Statement erase(*connection.database, "DELETE FROM calls WHERE id = ?");
            erase.bind(1, id);
            erase.exec();
            return std::nullopt;
        });
    return fault ? fault : clear_log(connection);
}

LibraryResult<std::vector<CallRow>> calls(const Library& library, int limit, int offset) {
    const Library::Connection& connection = library.connection();
    return connection.guarded([&]() -> LibraryResult<std::vector<CallRow>> {
        SQLite::Statement found(*connection.database,
                                std::string("SELECT ") + call_columns +
                                    " FROM calls ORDER BY time DESC, id DESC LIMIT ? OFFSET ?");
        found.bind(1, std::max(limit, 0));
        found.bind(2, std::max(offset, 0));
        std::vector<CallRow> rows;
        while (found.executeStep()) rows.push_back(row_of(found));
        return rows;
    });
}

LibraryResult<CallRecord> open_call(const Library& library, CallId id) {
    const Library::Connection& connection = library.connection();
    return connection.guarded([&]() -> LibraryResult<CallRecord> {
        SQLite::Statement found(*connection.database,
                                std::string("SELECT ") + call_columns +
                                    " FROM calls WHERE id = ?");
        found.bind(1, id);
        if (!found.executeStep()) stop_at_none(connection, id);
        return row_of(found).call;
    });
}

std::optional<LibraryFault> fault_of_calls(const Library::Connection& connection) {
    SQLite::Statement found(*connection.database, "SELECT id, outcome FROM calls ORDER BY id");
    while (found.executeStep())
        if (!outcome_from(found.getColumn(1).getString()))
            return connection.fault(Kind::corrupt, "call " + found.getColumn(0).getString() +
                                                       " can't be understood");
    return std::nullopt;
}

} // namespace carriageway
