// What a session has to do with the library's backups, and says of them.
#include "app/session.h"

#include "app/records/library_text.h"

namespace carriageway {

/// `locked` where they can't be changed, whatever the reason: what was erased is gone otherwise.
std::optional<LibraryFault> Session::forget_in_backups(const ErasedRow& erased) {
    std::optional<LibraryFault> fault = backups_ ? backups_->forget(erased) : std::nullopt;
    if (fault) fault->kind = LibraryFault::Kind::locked;
    return fault;
}

std::string Session::backup_trouble() {
    const std::optional<LibraryFault> fault = backups_ ? backups_->fault() : std::nullopt;
    const bool told = backup_trouble_told_;
    backup_trouble_told_ = fault.has_value();
    if (!fault || told) return {};
    return say(looks_.language, Word::backup_failed, {fault_sentence(looks_.language, *fault)});
}

} // namespace carriageway
