#include "app/records/stored_practice.h"

#include <string>
#include <string_view>

namespace carriageway {

using Kind = LibraryFault::Kind;

namespace {

/// Keys, one a line; nothing where one of them isn't known.
std::optional<std::vector<Mistake>> mistakes_from(std::string_view lines) {
    std::vector<Mistake> out;
    while (!lines.empty()) {
        const std::size_t end = std::min(lines.find('\n'), lines.size());
        const std::optional<Mistake> mistake = mistake_from(lines.substr(0, end));
        if (!mistake) return std::nullopt;
        out.push_back(*mistake);
        lines.remove_prefix(std::min(end + 1, lines.size()));
    }
    return out;
}

bool is_possible(const Attempt& attempt) {
    return attempt.level >= lowest_level && attempt.level <= highest_level &&
           attempt.score >= 0.0 && attempt.score <= 1.0 && attempt.seconds >= 0.0 &&
           attempt.seconds <= longest_attempt && attempt.hints >= 0;
}

std::optional<Attempt> attempt_of(SQLite::Statement& row) {
    const std::optional<PracticeTopic> topic = topic_from(row.getColumn(0).getString());
    const std::optional<std::vector<Mistake>> mistakes =
        mistakes_from(row.getColumn(8).getString());
    if (!topic || !mistakes) return std::nullopt;
    Attempt attempt;
    attempt.topic = *topic;
    attempt.level = row.getColumn(1).getInt();
    attempt.seed = static_cast<std::uint64_t>(row.getColumn(2).getInt64());
    attempt.score = row.getColumn(3).getDouble();
    attempt.seconds = row.getColumn(4).getDouble();
    attempt.hints = row.getColumn(5).getInt();
    attempt.time = row.getColumn(6).getInt64();
    attempt.counts = row.getColumn(7).getInt() != 0;
    attempt.mistakes = *mistakes;
    if (!is_possible(attempt)) return std::nullopt;
    return attempt;
}

[[noreturn]] void stop_at(const Library::Connection& connection, const std::string& what) {
    throw LibraryStop{connection.fault(Kind::corrupt, what + " can't be understood")};
}

} // namespace

void bind_who(SQLite::Statement& statement, int at, TraineeId who) {
    if (who == 0) statement.bind(at);
    else statement.bind(at, who);
}

std::optional<LibraryFault> clear_log(const Library::Connection& connection) {
    return connection.guarded([&]() -> std::optional<LibraryFault> {
        SQLite::Statement cut(*connection.database, "PRAGMA wal_checkpoint(TRUNCATE)");
        if (cut.executeStep() && cut.getColumn(0).getInt() != 0)
            return connection.fault(Kind::locked, "another program reads the log");
        return std::nullopt;
    });
}

void need_trainee(const Library::Connection& connection, TraineeId id) {
    SQLite::Statement found(*connection.database, "SELECT 1 FROM trainees WHERE id = ?");
    found.bind(1, id);
    if (!found.executeStep())
        throw LibraryStop{
            connection.fault(Kind::no_such_trainee, "trainee " + std::to_string(id))};
}

std::vector<Attempt> stored_attempts(const Library::Connection& connection, TraineeId who,
                                     bool strict) {
    SQLite::Statement found(*connection.database,
                            "SELECT topic, level, seed, score, seconds, hints, time, counts, "
                            "mistakes FROM attempts WHERE trainee IS ? ORDER BY time, id");
    bind_who(found, 1, who);
    std::vector<Attempt> out;
    while (found.executeStep()) {
        std::optional<Attempt> attempt = attempt_of(found);
        if (attempt) out.push_back(std::move(*attempt));
        else if (strict) stop_at(connection, "an attempt of trainee " + std::to_string(who));
    }
    return out;
}

std::array<TopicSigns, topic_count> stored_signs(const Library::Connection& connection,
                                                 TraineeId who, bool strict) {
    std::array<TopicSigns, topic_count> out{};
    SQLite::Statement found(*connection.database,
                            "SELECT topic, state, by, time FROM sign_offs WHERE trainee = ?");
    found.bind(1, who);
    while (found.executeStep()) {
        const std::optional<PracticeTopic> topic = topic_from(found.getColumn(0).getString());
        const std::optional<SignState> state = sign_from(found.getColumn(1).getString());
        if (topic && state)
            out[static_cast<std::size_t>(*topic)][static_cast<std::size_t>(*state)] =
                SignOff{found.getColumn(2).getString(), found.getColumn(3).getInt64()};
        else if (strict) stop_at(connection, "a signature for trainee " + std::to_string(who));
    }
    return out;
}

std::optional<LibraryFault> fault_of_practice(const Library::Connection& connection) {
    stored_attempts(connection, 0, true);
    SQLite::Statement found(*connection.database, "SELECT id FROM trainees ORDER BY id");
    while (found.executeStep()) {
        stored_attempts(connection, found.getColumn(0).getInt64(), true);
        stored_signs(connection, found.getColumn(0).getInt64(), true);
    }
    return std::nullopt;
}

} // namespace carriageway
