#include "platform/web/web_store.h"

#include "app/records/backups.h"
#include "app/records/library_rescue.h"
#include "app/records/store_writer.h"
#include "platform/web/page_calls.h"

namespace carriageway {

namespace {

class PageStore : public Store {
public:
    void keep() override { page::keep(); }
};

PageStore store;
StoreWriter* writer = nullptr; ///< of the session; there is one as long as the page lives
bool asked_to_persist = false;

LibraryFault fault_of(const std::string& trouble) {
    using Kind = LibraryFault::Kind;
    const std::string path = std::string(library_folder) + "/library.db";
    if (trouble == "full") return {Kind::store_full, trouble, path};
    if (trouble == "denied") return {Kind::store_denied, trouble, path};
    return {Kind::io, trouble, path};
}

} // namespace

std::unique_ptr<Autosave> platform_autosave(Library& library, std::function<void()> on_change) {
    auto made = std::make_unique<StoreWriter>(library, store, std::move(on_change));
    writer = made.get();
    return made;
}

LibraryOptions platform_library_options() {
    LibraryOptions options;
    options.journal = LibraryOptions::Journal::rollback; // there is no shared memory for a log
    return options;
}

// The browser alone knows its storage: there are no files to copy or to put aside.
std::unique_ptr<Backups> platform_backups(const Library&) { return nullptr; }

OpenedLibrary open_or_rescue(const std::string& folder, const LibraryOptions& options, Timestamp) {
    return {Library::open(folder, options), {}};
}

void library_kept(const std::string& trouble) {
    if (!writer) return;
    if (!trouble.empty()) return writer->kept(fault_of(trouble));
    writer->kept(std::nullopt);
    // Once there is something to lose: a person who only looks is not asked for anything.
    if (writer->acknowledged() > 0 && !asked_to_persist) {
        asked_to_persist = true;
        page::persist();
    }
}

void library_given_up() {
    if (writer) writer->give_up();
}

bool library_flushed() { return !writer || writer->flush(std::chrono::milliseconds(0)); }

} // namespace carriageway
