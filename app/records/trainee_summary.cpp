// What a person has done, topic by topic.
#include <numeric>

#include "app/records/stored_practice.h"

namespace carriageway {

using Kind = LibraryFault::Kind;

namespace {

constexpr std::size_t mistakes_of_last = 20; ///< attempts of which mistakes are counted
constexpr std::size_t mistakes_told = 3;

/// Mean score of the last ones that count, or, where none does, of the last at all.
double mean_of_last(const std::vector<const Attempt*>& made) {
    double sum = 0.0;
    std::size_t count = 0;
    for (const bool all : {false, true}) {
        for (std::size_t i = made.size(); i > 0 && count < mean_of; --i) {
            if (!all && !made[i - 1]->counts) continue;
            sum += made[i - 1]->score;
            ++count;
        }
        if (count > 0) break;
    }
    return count > 0 ? sum / static_cast<double>(count) : 0.0;
}

TopicSummary summary_of(const std::vector<const Attempt*>& made) {
    TopicSummary out;
    std::vector<std::vector<Mistake>> mistakes;
    for (std::size_t i = 0; i < made.size(); ++i) {
        const Attempt& attempt = *made[i];
        out.done.seconds += attempt.seconds;
        if (attempt.counts) out.results.push_back({attempt.level, attempt.score});
        if (i + mistakes_of_last >= made.size()) mistakes.push_back(attempt.mistakes);
    }
    out.done.attempts = static_cast<int>(made.size());
    out.done.level = made.empty() ? 0 : next_level(out.results);
    out.done.mean_of_last = mean_of_last(made);
    out.done.last = made.empty() ? 0 : made.back()->time;
    out.mistakes = commonest(mistakes, mistakes_told);
    return out;
}

TraineeSummary summary_of(const Library::Connection& connection, const TraineeRow& who) {
    TraineeSummary out;
    out.who = who;
    const std::vector<Attempt> all = stored_attempts(connection, who.id);
    std::array<std::vector<const Attempt*>, topic_count> made;
    for (const Attempt& attempt : all)
        made[static_cast<std::size_t>(attempt.topic)].push_back(&attempt);
    const std::array<TopicSigns, topic_count> signs = stored_signs(connection, who.id);
    for (std::size_t i = 0; i < topic_count; ++i) {
        out.topics[i] = summary_of(made[i]);
        out.topics[i].signs = signs[i];
    }
    return out;
}

} // namespace

bool TopicSummary::operator==(const TopicSummary& other) const {
    const auto same = [](const LevelResult& a, const LevelResult& b) {
        return a.level == b.level && a.score == b.score;
    };
    return done == other.done && mistakes == other.mistakes && signs == other.signs &&
           std::equal(results.begin(), results.end(), other.results.begin(), other.results.end(),
                      same);
}

std::optional<SignState> TopicSummary::state() const {
    for (std::size_t i = signs.size(); i > 0; --i)
        if (signs[i - 1]) return static_cast<SignState>(i - 1);
    return std::nullopt;
}

TopicsDone TraineeSummary::done() const {
    TopicsDone out{};
    for (std::size_t i = 0; i < topic_count; ++i) out[i] = topics[i].done;
    return out;
}

LibraryResult<TraineeSummary> trainee_summary(const Library& library, TraineeId who) {
    const Library::Connection& connection = library.connection();
    return connection.guarded([&]() -> LibraryResult<TraineeSummary> {
        if (who == 0) return summary_of(connection, TraineeRow{});
        SQLite::Statement found(*connection.database,
                                "SELECT id, name, created FROM trainees WHERE id = ?");
        found.bind(1, who);
        if (!found.executeStep())
            throw LibraryStop{
                connection.fault(Kind::no_such_trainee, "trainee " + std::to_string(who))};
        return summary_of(connection, {who, found.getColumn(1).getString(),
                                       found.getColumn(2).getInt64()});
    });
}

LibraryResult<std::vector<TraineeSummary>> group_summary(const Library& library) {
    const LibraryResult<std::vector<TraineeRow>> rows = trainees(library);
    if (!rows) return rows.fault();
    const Library::Connection& connection = library.connection();
    return connection.guarded([&]() -> LibraryResult<std::vector<TraineeSummary>> {
        std::vector<TraineeSummary> group;
        for (const TraineeRow& row : *rows) group.push_back(summary_of(connection, row));
        return group;
    });
}

} // namespace carriageway
