#include "app/records/call_notes.h"

#include "app/records/call_log.h"
#include "app/records/fault_book.h"
#include "core/job_check.h"
#include "tests/fuzz/inputs.h"

namespace carriageway::fuzz {

void call_notes(std::string_view bytes) {
    const FaultBook& book = fault_lore().book;
    const CallNotes notes = read_call_notes(book, bytes);
    const std::string written = write_call_notes(book, notes);
    demand(written.size() <= longest_call_notes, "notes that a call can't keep");
    // What doesn't fit is left out once, not each time anew.
    const CallNotes again = read_call_notes(book, written);
    demand(write_call_notes(book, again) == written, "notes are read as others");
    // Others are none that a call keeps (call_log.h).
    if (is_utf8(bytes)) demand(again.text == notes.text, "a person's own words are lost");
}

} // namespace carriageway::fuzz
