// What people did and calls as rows of the library: for the files that read and write them.
#pragma once

#include <optional>

#include "app/records/connection.h"
#include "app/records/trainees.h"

namespace carriageway {

/// Takes out of the log what it still holds of rows that were deleted, by moving all of it into the
/// file and cutting it off. Nothing to do where there is no log. `locked` where another program
/// reads it.
std::optional<LibraryFault> clear_log(const Library::Connection& connection);

/// Binds a person to a statement's place: nobody in particular (0) is NULL there.
void bind_who(SQLite::Statement& statement, int at, TraineeId who);

/// Stops with `no_such_trainee` where there is none.
void need_trainee(const Library::Connection& connection, TraineeId id);

/// Attempts of a person, the oldest first. Rows that can't be understood are left out, or stop with
/// `corrupt` where it is `strict`.
std::vector<Attempt> stored_attempts(const Library::Connection& connection, TraineeId who,
                                     bool strict = false);

/// What was signed for a person, by PracticeTopic; rows that can't be understood likewise.
std::array<TopicSigns, topic_count> stored_signs(const Library::Connection& connection,
                                                 TraineeId who, bool strict = false);

/// The first row of attempts and signatures, or of calls, that can't be understood; nothing when
/// all can. The first of them stops with `corrupt`.
std::optional<LibraryFault> fault_of_practice(const Library::Connection& connection);
std::optional<LibraryFault> fault_of_calls(const Library::Connection& connection);

} // namespace carriageway
