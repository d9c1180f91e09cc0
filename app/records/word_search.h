// Finding jobs by words: SQLite's full-text index where it is compiled in, LIKE where not.
//
// The index can always be made again from the jobs, so it isn't part of the library's version. It
// is kept up to date by triggers; that they are there says that it is up to date. A program whose
// SQLite has no FTS5 takes them away, because it could not write otherwise, and the next that has
// it builds the index anew.
#pragma once

#include <string>
#include <vector>

#include <SQLiteCpp/SQLiteCpp.h>

namespace carriageway {

/// Makes the index ready in a library that can be written, or takes its triggers away when
/// `wanted` is false or there is no FTS5. Returns whether it may be searched. Throws
/// SQLite::Exception.
bool prepare_word_index(SQLite::Database& database, bool wanted);

/// Takes a damaged index away and makes it again. Throws SQLite::Exception.
void remake_word_index(SQLite::Database& database);

/// Whether the index is there, up to date and can be read.
bool has_word_index(SQLite::Database& database);

/// Words longer or more than these are cut off. Ours.
inline constexpr int most_search_words = 16;
inline constexpr int longest_search_word = 100; // bytes

/// The words of what a person typed: parted by white space, without those made of ASCII
/// punctuation alone.
std::vector<std::string> search_words(const std::string& query);

/// An FTS5 expression that finds every word at the beginning of one.
std::string index_expression(const std::vector<std::string>& words);

/// A LIKE pattern, with ESCAPE '\\', that finds the word anywhere.
std::string like_pattern(const std::string& word);

} // namespace carriageway
