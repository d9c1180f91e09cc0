// What the fuzzers do with one input each. The same functions are run on the kept corpora by the
// ordinary tests (tests/records/test_fuzz_corpora.cpp), with any compiler.
//
// Each takes bytes that may come from anywhere, hands them to what reads them, and demands what must
// hold whatever they are. A crash, a sanitizer's report, or Broken is a find.
#pragma once

#include <stdexcept>
#include <string>
#include <string_view>

namespace carriageway::fuzz {

/// Something that must hold doesn't.
class Broken : public std::logic_error {
  public:
    using std::logic_error::logic_error;
};

/// Throws Broken with `what` unless `kept`.
inline void demand(bool kept, const char* what) {
    if (!kept) throw Broken(what);
}

// One function a file of this folder, named as its file and as its corpus.

/// A job file or a press profile: what is accepted is written and read again as the same, assessed,
/// told in both languages, put into a link and a table.
void job_file(std::string_view bytes);
/// An edit: what is read is written as the same; applied to a job it leaves one that core accepts,
/// and its inverse takes it back.
void edit_file(std::string_view bytes);
/// Links of every kind: read as they are, and made of the bytes as a document.
void link(std::string_view bytes);
/// Exercises and results.
void exercise_file(std::string_view bytes);
/// A file of registration marks.
void mark_file(std::string_view bytes);
/// Separations, PNG and TIFF; a PNG also with its check sums put right and with its pixels taken as
/// they would be before they are compressed.
void separation(std::string_view bytes);
/// Numbers as people type them, in each quantity and unit.
void measure(std::string_view bytes);
/// Names, notes and words to search for.
void typed_text(std::string_view bytes);
/// A library: bytes as they are, or a sound one that is changed (see library_file.cpp).
void library_file(std::string_view bytes);
/// The book of faults.
void fault_book(std::string_view bytes);
/// Notes of a call.
void call_notes(std::string_view bytes);

struct Fuzzed {
    const char* name;
    void (*one_input)(std::string_view bytes);
};

inline constexpr Fuzzed all_fuzzed[] = {
    {"job_file", job_file},           {"edit_file", edit_file},   {"link", link},
    {"exercise_file", exercise_file}, {"mark_file", mark_file},   {"separation", separation},
    {"measure", measure},             {"typed_text", typed_text}, {"library_file", library_file},
    {"fault_book", fault_book},       {"call_notes", call_notes},
};

} // namespace carriageway::fuzz
