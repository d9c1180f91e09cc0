// People and what they did, in the library.
#include "app/records/trainees.h"

#include <algorithm>
#include <cmath>

#include "app/records/stored_practice.h"
#include "core/job_check.h"

namespace carriageway {

using Kind = LibraryFault::Kind;

namespace {

/// What a person typed, within the limits; stops with `bad_name`.
std::string needed_name(const Library::Connection& connection, const std::string& typed) {
    std::optional<std::string> name = trainee_name(typed);
    if (!name) throw LibraryStop{connection.fault(Kind::bad_name, {})};
    return std::move(*name);
}

double within(double value, double most) {
    return std::isfinite(value) ? std::clamp(value, 0.0, most) : 0.0;
}

Attempt within_limits(Attempt attempt) {
    attempt.level = std::clamp(attempt.level, lowest_level, highest_level);
    attempt.score = within(attempt.score, 1.0);
    attempt.seconds = within(attempt.seconds, longest_attempt);
    attempt.hints = std::clamp(attempt.hints, 0, most_hints);
    std::erase_if(attempt.mistakes, [](const Mistake& m) { return !mistake_from(mistake_key(m)); });
    if (attempt.mistakes.size() > most_mistakes) attempt.mistakes.resize(most_mistakes);
    return attempt;
}

std::string lines_of(const std::vector<Mistake>& mistakes) {
    std::string lines;
    for (const Mistake& mistake : mistakes)
        lines += (lines.empty() ? "" : "\n") + mistake_key(mistake);
    return lines;
}

/// The attempt that is there already, as when a result is read in twice.
std::optional<AttemptId> same_attempt(const Library::Connection& connection, TraineeId who,
                                      const Attempt& attempt) {
    SQLite::Statement found(*connection.database,
                            "SELECT id FROM attempts WHERE trainee IS ? AND topic = ? AND "
                            "time = ? AND seed = ? AND level = ?");
    bind_who(found, 1, who);
    found.bind(2, topic_key(attempt.topic));
    found.bind(3, attempt.time);
    found.bind(4, static_cast<std::int64_t>(attempt.seed));
    found.bind(5, attempt.level);
    if (!found.executeStep()) return std::nullopt;
    return found.getColumn(0).getInt64();
}

AttemptId insert_attempt(const Library::Connection& connection, TraineeId who,
                         const Attempt& attempt) {
    SQLite::Statement insert(*connection.database,
                             "INSERT INTO attempts (trainee, topic, level, seed, score, "
                             "seconds, hints, time, counts, mistakes) "
                             "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
    bind_who(insert, 1, who);
    insert.bind(2, topic_key(attempt.topic));
    insert.bind(3, attempt.level);
    insert.bind(4, static_cast<std::int64_t>(attempt.seed));
    insert.bind(5, attempt.score);
    insert.bind(6, attempt.seconds);
    insert.bind(7, attempt.hints);
    insert.bind(8, attempt.time);
    insert.bind(9, attempt.counts ? 1 : 0);
    insert.bind(10, lines_of(attempt.mistakes));
    insert.exec();
    return connection.database->getLastInsertRowid();
}

} // namespace

std::optional<std::string> trainee_name(const std::string& typed) {
    constexpr const char* blank = " \t\r\n";
    const std::size_t first = typed.find_first_not_of(blank);
    if (first == std::string::npos) return std::nullopt;
    std::string name = typed.substr(first, typed.find_last_not_of(blank) - first + 1);
    if (!is_name(name)) return std::nullopt;
    return name;
}

LibraryResult<std::vector<TraineeRow>> trainees(const Library& library) {
    const Library::Connection& connection = library.connection();
    return connection.guarded([&]() -> LibraryResult<std::vector<TraineeRow>> {
        SQLite::Statement found(*connection.database,
                                "SELECT id, name, created FROM trainees "
                                "ORDER BY name COLLATE NOCASE, id");
        std::vector<TraineeRow> rows;
        while (found.executeStep())
            rows.push_back({found.getColumn(0).getInt64(), found.getColumn(1).getString(),
                            found.getColumn(2).getInt64()});
        return rows;
    });
}

LibraryResult<TraineeId> add_trainee(Library& library, const std::string& typed, Timestamp time) {
    Library::Connection& connection = library.connection();
    return connection.changing([&]() -> LibraryResult<TraineeId> {
        const std::string name = needed_name(connection, typed);
        SQLite::Statement count(*connection.database, "SELECT count(*) FROM trainees");
        count.executeStep();
        if (count.getColumn(0).getInt64() >= static_cast<std::int64_t>(most_trainees))
            throw LibraryStop{connection.fault(Kind::io, "too many people")};
        SQLite::Statement insert(*connection.database,
                                 "INSERT INTO trainees (name, created) VALUES (?, ?)");
        insert.bind(1, name);
        insert.bind(2, time);
        insert.exec();
        return TraineeId{connection.database->getLastInsertRowid()};
    });
}

std::optional<LibraryFault> rename_trainee(Library& library, TraineeId id,
                                           const std::string& typed) {
    Library::Connection& connection = library.connection();
    return connection.changing([&]() -> std::optional<LibraryFault> {
        const std::string name = needed_name(connection, typed);
        need_trainee(connection, id);
        SQLite::Statement update(*connection.database,
                                 "UPDATE trainees SET name = ? WHERE id = ?");
        update.bind(1, name);
        update.bind(2, id);
        update.exec();
        return std::nullopt;
    });
}

std::optional<LibraryFault> erase_trainee(Library& library, TraineeId id) {
    Library::Connection& connection = library.connection();
    const std::optional<LibraryFault> fault =
        connection.changing([&]() -> std::optional<LibraryFault> {
            const char* sql = id == 0 ? "DELETE FROM attempts WHERE trainee IS NULL"
                                      : "DELETE FROM trainees WHERE id = ?";
            SQLite::Statement erase(*connection.database, sql);
            if (id != 0) erase.bind(1, id);
            erase.exec();
            return std::nullopt;
        });
    return fault ? fault : clear_log(connection);
}

LibraryResult<AttemptId> add_attempt(Library& library, TraineeId who, const Attempt& made) {
    Library::Connection& connection = library.connection();
    return connection.changing([&]() -> LibraryResult<AttemptId> {
        if (who != 0) need_trainee(connection, who);
        const Attempt attempt = within_limits(made);
        if (const std::optional<AttemptId> same = same_attempt(connection, who, attempt))
            return *same;
        return insert_attempt(connection, who, attempt);
    });
}

LibraryResult<std::vector<Attempt>> attempts(const Library& library, TraineeId who) {
    const Library::Connection& connection = library.connection();
    return connection.guarded([&]() -> LibraryResult<std::vector<Attempt>> {
        if (who != 0) need_trainee(connection, who);
        return stored_attempts(connection, who);
    });
}

std::optional<LibraryFault> sign_topic(Library& library, TraineeId who, PracticeTopic topic,
                                       SignState state, const std::optional<SignOff>& sign) {
    Library::Connection& connection = library.connection();
    return connection.changing([&]() -> std::optional<LibraryFault> {
        need_trainee(connection, who);
        const char* sql = sign ? "INSERT INTO sign_offs (trainee, topic, state, by, time) "
                                 "VALUES (?, ?, ?, ?, ?) ON CONFLICT (trainee, topic, state) "
                                 "DO UPDATE SET by = excluded.by, time = excluded.time"
                               : "DELETE FROM sign_offs WHERE trainee = ? AND topic = ? AND "
                                 "state = ?";
        SQLite::Statement change(*connection.database, sql);
        change.bind(1, who);
        change.bind(2, topic_key(topic));
        change.bind(3, sign_key(state));
        if (sign) {
            change.bind(4, sign->by);
            change.bind(5, sign->time);
        }
        change.exec();
        return std::nullopt;
    });
}

} // namespace carriageway
