// The people who practise on this device: what they did, and who signed for what they can do.
//
// It stays in the library of the device. A name is in no job file and in no link; it leaves the
// device only in the file that export_trainee() or group_table() makes, or in a result into which
// the person has typed it (exercise_file.h).
//
// Everything is a function of a library (library.h); what returns without a fault is durable.
// Trainee 0 is nobody in particular: whoever sits there and hasn't said who.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "app/records/library.h"
#include "core/mistakes.h"
#include "core/practice_next.h"

namespace carriageway {

enum class Language; // app/text

using TraineeId = std::int64_t; ///< above 0; never used again in its library. 0: nobody chosen
using AttemptId = std::int64_t; ///< above 0; never used again in its library

/// A person as a list shows it.
struct TraineeRow {
    TraineeId id = 0;
    std::string name; ///< or a nickname
    Timestamp created = 0;
    bool operator==(const TraineeRow&) const = default;
};

/// One exercise that was done.
struct Attempt {
    PracticeTopic topic = PracticeTopic::find_fault;
    int level = lowest_level;  ///< lowest_level to highest_level
    std::uint64_t seed = 0;    ///< 0: broken by a trainer, or no exercise
    double score = 0.0;        ///< 0 to 1, after hints
    double seconds = 0.0;      ///< it took, not negative
    int hints = 0;             ///< that were used
    Timestamp time = 0;        ///< when it was marked
    bool counts = true;        ///< for the level: false the same once more, or from a trainer
    std::vector<Mistake> mistakes;
    bool operator==(const Attempt&) const = default;
};

/// How far a trainer has signed for a person's topic.
enum class SignState {
    shown,  ///< it was shown to the person
    helped, ///< the person did it with help
    alone,  ///< and alone
    count,  ///< how many there are; not a state
};

struct SignOff {
    std::string by; ///< initials; empty: not noted
    Timestamp time = 0;
    bool operator==(const SignOff&) const = default;
};
using TopicSigns = std::array<std::optional<SignOff>, static_cast<std::size_t>(SignState::count)>;

/// What a person has done of one topic, and what was signed.
struct TopicSummary {
    TopicDone done;
    std::vector<LevelResult> results; ///< that count, the oldest first: for next_level()
    std::vector<MistakeCount> mistakes; ///< the commonest of the last 20 attempts, at most three
    TopicSigns signs;
    /// The farthest that was signed; nothing where nothing was.
    std::optional<SignState> state() const;
    bool operator==(const TopicSummary&) const;
};

/// What a person has done, by PracticeTopic.
struct TraineeSummary {
    TraineeRow who; ///< id 0 and no name: nobody chosen
    std::array<TopicSummary, topic_count> topics;
    const TopicSummary& of(PracticeTopic topic) const {
        return topics[static_cast<std::size_t>(topic)];
    }
    TopicsDone done() const; ///< for practice_next()
};

/// Limits. Ours: a class and a few years of practice are far below.
inline constexpr std::size_t most_trainees = 500;
inline constexpr std::size_t most_mistakes = 64; ///< of one attempt
inline constexpr int most_hints = 1000;           ///< likewise
inline constexpr double longest_attempt = 86'400.0; ///< s: a day

/// A name that can be stored: not blank, UTF-8, at most longest_name bytes. Spaces at its ends are
/// taken off. Nothing: it can't.
std::optional<std::string> trainee_name(const std::string& typed);

/// By name, whatever the case of its letters (of ASCII).
LibraryResult<std::vector<TraineeRow>> trainees(const Library& library);

/// Adds a person; two may have the same name. `bad_name` for one that trainee_name() refuses,
/// `io` where there are most_trainees already.
LibraryResult<TraineeId> add_trainee(Library& library, const std::string& name, Timestamp time);
/// `no_such_trainee` where there is none.
std::optional<LibraryFault> rename_trainee(Library& library, TraineeId id, const std::string& name);

/// Deletes a person with all that was done and signed, so that neither the file nor its log holds
/// the bytes any more. For good: there is no way back. Erasing one who isn't there is no fault, and
/// clears the log again. `locked`: the person is gone from the library, but another program keeps
/// the log from being cleared; erase once more when it has ended. 0 erases what nobody in
/// particular did.
std::optional<LibraryFault> erase_trainee(Library& library, TraineeId id);

/// Adds what was done. An attempt outside the limits above is brought within them; what was stored
/// already (same topic, seed, level and time) is not stored again, and its id is returned.
LibraryResult<AttemptId> add_attempt(Library& library, TraineeId who, const Attempt& attempt);
/// Of a person, the oldest first.
LibraryResult<std::vector<Attempt>> attempts(const Library& library, TraineeId who);

/// Signs for a topic, or takes a signature away. `no_such_trainee` for 0 as well: what is signed is
/// signed for somebody.
std::optional<LibraryFault> sign_topic(Library& library, TraineeId who, PracticeTopic topic,
                                       SignState state, const std::optional<SignOff>& sign);

/// What a person, or nobody in particular (0), has done.
LibraryResult<TraineeSummary> trainee_summary(const Library& library, TraineeId who);
/// Of everybody in the order of trainees(), without 0.
LibraryResult<std::vector<TraineeSummary>> group_summary(const Library& library);

/// All that is stored of a person, as JSON text: for the person, or to keep. Ends with a line feed.
LibraryResult<std::string> export_trainee(const Library& library, TraineeId id);

/// The group as a table (CSV, RFC 4180; see job_table.h for the form): a row a person and topic.
std::string group_table(const std::vector<TraineeSummary>& group, Language language);

// ---- stable keys, for files and the library ----

/// "find_fault".
const char* topic_key(PracticeTopic topic);
std::optional<PracticeTopic> topic_from(std::string_view key);
/// "shown", "helped", "alone".
const char* sign_key(SignState state);
std::optional<SignState> sign_from(std::string_view key);
/// "fault_missed both_sensors_on".
std::string mistake_key(const Mistake& mistake);
std::optional<Mistake> mistake_from(std::string_view key);

} // namespace carriageway
