#include "app/records/store_writer.h"

#include <utility>

namespace carriageway {

StoreWriter::StoreWriter(Library& library, Store& store, std::function<void()> on_change)
    : library_(library), store_(store), on_change_(std::move(on_change)) {}

void StoreWriter::changed() const {
    if (on_change_) on_change_();
}

/// Writes what the library has not taken yet, then asks the store, unless it is being asked.
void StoreWriter::begin() {
    if (given_up_) return;
    if (!unwritten_.empty()) {
        if (std::optional<LibraryFault> failed = library_.append_all(unwritten_)) {
            fault_ = std::move(failed);
            changed();
            return;
        }
        unwritten_.clear();
        dirty_ = true;
    }
    if (!dirty_ || keeping_) return;
    dirty_ = false;
    keeping_ = true;
    asked_ = submitted_;
    store_.keep();
}

Autosave::Ticket StoreWriter::submit(JobId job, LoggedEdit edit, Job snapshot) {
    JobEdits more{job, {}, std::move(snapshot)};
    more.edits.push_back(std::move(edit));
    unwritten_.push_back(std::move(more));
    ++submitted_;
    begin();
    return submitted_;
}

void StoreWriter::touch() {
    dirty_ = true;
    begin();
}

void StoreWriter::retry() {
    if (!all_saved()) begin();
}

bool StoreWriter::flush(std::chrono::milliseconds) {
    begin();
    return all_saved();
}

void StoreWriter::kept(const std::optional<LibraryFault>& fault) {
    keeping_ = false;
    fault_ = fault;
    if (fault) {
        dirty_ = true; // for the next edit or retry(): asking again at once would never end
    } else {
        acknowledged_ = asked_;
        begin();
    }
    changed();
}

} // namespace carriageway
