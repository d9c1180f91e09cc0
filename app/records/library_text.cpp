#include "app/records/library_text.h"

#include "app/records/library_rescue.h"
#include "core/job.h"

namespace carriageway {

std::string fault_sentence(Language language, const LibraryFault& fault) {
    using Kind = LibraryFault::Kind;
    const auto at_path = [&](Word word) { return say(language, word, {fault.path}); };
    switch (fault.kind) {
    case Kind::no_folder:
        if (fault.path.empty())
            return say(language, Word::library_folder_unknown, {fault.detail});
        return at_path(Word::library_no_folder);
    case Kind::read_only: return at_path(Word::library_read_only);
    case Kind::locked: return at_path(Word::library_locked);
    case Kind::corrupt: return at_path(Word::library_corrupt);
    case Kind::newer_version: return at_path(Word::library_newer);
    case Kind::disk_full: return at_path(Word::library_disk_full);
    case Kind::store_full: return std::string(word(language, Word::store_full));
    case Kind::store_denied: return std::string(word(language, Word::store_denied));
    case Kind::no_such_job: return std::string(word(language, Word::library_no_such_job));
    case Kind::no_such_press: return std::string(word(language, Word::library_no_such_press));
    case Kind::no_such_run: return std::string(word(language, Word::library_no_such_run));
    case Kind::no_such_trainee: return std::string(word(language, Word::library_no_such_trainee));
    case Kind::no_such_call: return std::string(word(language, Word::library_no_such_call));
    case Kind::unreadable_job: return std::string(word(language, Word::library_unreadable));
    case Kind::bad_name:
        return say(language, Word::library_bad_name, {std::to_string(longest_name)});
    case Kind::io: break;
    }
    return say(language, Word::library_failed, {fault.path, fault.detail});
}

std::string rescue_sentence(Language language, const Rescue& rescue) {
    return say(language, Word::library_rescued, {rescue.damaged, rescue.day});
}

} // namespace carriageway
