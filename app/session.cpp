#include "app/session.h"

#include <algorithm>

#include "app/records/embedded_demo.h"
#include "app/records/exchange.h"
#include "app/records/library_rescue.h"
#include "app/records/library_text.h"

namespace carriageway {

namespace {

/// Most edits that can be undone; older ones stay in the library's history. Ours.
constexpr std::size_t most_undo = 500;
constexpr int rows_shown = 200;

std::string text_of(ThemeChoice theme) {
    return theme == ThemeChoice::light ? "light" : theme == ThemeChoice::dark ? "dark" : "system";
}

} // namespace

Job demo_job() {
    const std::string_view text(reinterpret_cast<const char*>(embedded::demo_job),
                                embedded::demo_job_size);
    ReadJob read = read_job(text);
    return read.job ? *read.job : Job{};
}

Job empty_job(const std::string& name) {
    Job job;
    job.name = name;
    job.press = demo_job().press;
    job.uses.assign(static_cast<std::size_t>(job.press.stations), StationUse::open);
    job.uses.front() = StationUse::load;
    job.uses.back() = StationUse::unload;
    return job;
}

Head new_head(const Job& job, int station, const std::string& colour) {
    Head head;
    if (!job.heads.empty()) head = job.heads.back(); // most heads of a job are alike
    for (const Head& other : job.heads) head.id = std::max(head.id, other.id);
    ++head.id;
    head.station = station;
    head.colour = colour;
    head.ink = 0x7A7A7A;
    return head;
}

Session::Session(const std::string& folder, std::function<void()> on_change,
                 std::function<Timestamp()> now, Language language)
    : now_(std::move(now)), folder_(folder) {
    looks_.language = language;
    OpenedLibrary opened = folder.empty()
                               ? OpenedLibrary{Library::in_memory(), {}}
                               : open_or_rescue(folder, platform_library_options(), now_());
    if (opened.library) {
        library_.emplace(std::move(*opened.library));
    } else {
        open_fault_ = opened.library.fault();
        library_.emplace(Library::in_memory());
    }
    writer_ = platform_autosave(*library_, std::move(on_change));
    backups_ = platform_backups(*library_);
    read_looks();
    if (opened.rescue) rescued_ = rescue_sentence(looks_.language, *opened.rescue);
    read_habits();
    read_trainee();
    reload_rows();
    LibraryResult<std::optional<std::string>> last = library_->setting(setting_key::last_job);
    if (last && *last && open(std::atoll((*last)->c_str()))) return;
    if (!rows_.empty() && open(rows_.front().id)) return;
    first_start_ = true;
    if (!open_new(demo_job())) adopt(demo_job(), 0);
}

Session::Session(const Job& job, Language language) : now_([] { return Timestamp{0}; }) {
    looks_.language = language;
    library_.emplace(Library::in_memory());
    writer_ = platform_autosave(*library_, {});
    if (!open_new(job)) adopt(job, 0);
}

Session::~Session() { flush(); }

void Session::read_looks() {
    const auto value = [&](const char* key) {
        LibraryResult<std::optional<std::string>> found = library_->setting(key);
        return found && *found ? **found : std::string();
    };
    const std::string theme = value(setting_key::theme);
    if (theme == "light") looks_.theme = ThemeChoice::light;
    if (theme == "dark") looks_.theme = ThemeChoice::dark;
    const std::string language = value(setting_key::language);
    if (language == "en") looks_.language = Language::english;
    if (language == "es") looks_.language = Language::spanish;
    if (value(setting_key::units) == "in") looks_.units = LengthUnit::inch;
    const std::optional<double> scale = read_number(value(setting_key::text_scale));
    if (scale)
        looks_.text_scale = std::clamp(static_cast<float>(*scale), least_text_scale, most_text_scale);
}

void Session::set_looks(const Looks& looks) {
    looks_ = looks;
    const auto put = [&](const char* key, const std::string& value) {
        if (const std::optional<LibraryFault> fault = library_->set_setting(key, value)) note(*fault);
    };
    put(setting_key::theme, text_of(looks.theme));
    put(setting_key::language, looks.language == Language::spanish ? "es" : "en");
    put(setting_key::units, looks.units == LengthUnit::inch ? "in" : "mm");
    put(setting_key::text_scale, format_number(looks.text_scale, 2));
    writer_->touch();
}

void Session::adopt(Job job, JobId id) {
    end_practice();
    put_visit_aside();
    job_ = std::move(job);
    current_ = id;
    preview_.reset();
    undo_.clear();
    redo_.clear();
    reload_runs();
    assess(job_, assessment_);
}

void Session::record(const Edit& edit, const Edit& inverse) {
    assess(job_, assessment_);
    if (current_ == 0) return;
    const Timestamp now = now_();
    writer_->submit(current_, LoggedEdit{edit, inverse, now}, job_);
    if (backups_) backups_->used(now);
}

std::optional<Applied> Session::commit(const Edit& edit) {
    drop_preview();
    Applied applied = apply(job_, edit);
    if (!applied) return applied;
    undo_.push_back(*applied.inverse);
    if (undo_.size() > most_undo) undo_.erase(undo_.begin());
    redo_.clear();
    note_practised(Practised::made, &edit);
    record(edit, *applied.inverse);
    return std::nullopt;
}

bool Session::undo() {
    drop_preview();
    if (undo_.empty()) return false;
    const Edit edit = std::move(undo_.back());
    undo_.pop_back();
    const Applied applied = apply(job_, edit);
    if (!applied) return false;
    redo_.push_back(*applied.inverse);
    note_practised(Practised::undone);
    record(edit, *applied.inverse);
    return true;
}

bool Session::redo() {
    drop_preview();
    if (redo_.empty()) return false;
    const Edit edit = std::move(redo_.back());
    redo_.pop_back();
    const Applied applied = apply(job_, edit);
    if (!applied) return false;
    undo_.push_back(*applied.inverse);
    note_practised(Practised::redone);
    record(edit, *applied.inverse);
    return true;
}

void Session::preview(HeadId head, const Edit& edit) {
    if (!preview_) shown_ = job_;
    if (!apply(shown_, edit)) return;
    preview_ = Preview{head, edit};
    for (std::size_t i = 0; i < shown_.heads.size(); ++i)
        if (shown_.heads[i].id == head) assess_head(shown_, i, assessment_);
}

void Session::keep_preview() {
    if (!preview_) return;
    const Preview kept = *preview_;
    const Head* head = find_head(job_, kept.head);
    const bool moved = head && !(*head == *find_head(shown_, kept.head));
    preview_.reset();
    if (moved) commit(kept.edit);
    else assess(job_, assessment_);
}

void Session::drop_preview() {
    if (!preview_) return;
    preview_.reset();
    assess(job_, assessment_);
}

void Session::note(const LibraryFault& fault) { fault_ = fault; }

/// After a change of the library itself: what lists show, and what a store is to keep.
void Session::library_changed() {
    writer_->touch();
    reload_rows();
    reload_runs();
}

void Session::reload_rows() {
    LibraryResult<std::vector<JobRow>> found = library_->list(query_, rows_shown);
    if (found) rows_ = std::move(*found);
    else note(found.fault());
    LibraryResult<std::vector<PressRow>> presses = library_->presses();
    if (presses) presses_ = std::move(*presses);
}

void Session::search(const std::string& words) {
    query_ = words;
    reload_rows();
}

bool Session::open(JobId id) {
    writer_->flush(std::chrono::milliseconds(2000));
    LibraryResult<Job> job = library_->open(id);
    if (!job) {
        note(job.fault());
        return false;
    }
    fault_.reset();
    adopt(std::move(*job), id);
    remember(id);
    return true;
}

/// Opens this job at the next start. What stands there already is not written again: a start that
/// changes nothing costs no write.
void Session::remember(JobId id) {
    if (!library_->can_write()) return;
    const LibraryResult<std::optional<std::string>> last = library_->setting(setting_key::last_job);
    const std::string value = std::to_string(id);
    if (last && *last == value) return;
    library_->set_setting(setting_key::last_job, value);
    writer_->touch();
}

bool Session::open_new(const Job& job) {
    const LibraryResult<JobId> id = library_->create(job, now_());
    if (!id) {
        note(id.fault());
        return false;
    }
    library_changed();
    return open(*id);
}

bool Session::duplicate(JobId id, const std::string& name) {
    writer_->flush(std::chrono::milliseconds(2000));
    const LibraryResult<JobId> copy = library_->duplicate(id, name, now_());
    if (!copy) note(copy.fault());
    library_changed();
    return static_cast<bool>(copy);
}

bool Session::rename(JobId id, const std::string& name) {
    if (practice_ && practice_->current == id) end_practice();
    if (id == current_) {
        const bool done = !commit(Edit{SetName{0, name}});
        writer_->flush(std::chrono::milliseconds(2000));
        library_changed();
        return done;
    }
    const std::optional<LibraryFault> fault = library_->rename(id, name, now_());
    if (fault) note(*fault);
    library_changed();
    return !fault;
}

bool Session::remove(JobId id) {
    if (practice_ && practice_->current == id) end_practice();
    writer_->flush(std::chrono::milliseconds(2000));
    const std::optional<LibraryFault> fault = library_->remove(id, now_());
    if (fault) {
        note(*fault);
        return false;
    }
    library_changed();
    if (id != current_) return true;
    // The open job has gone: the next one takes its place, or the demonstration.
    if (!rows_.empty() && open(rows_.front().id)) return true;
    return open_new(demo_job());
}

bool Session::restore(JobId id) {
    const std::optional<LibraryFault> fault = library_->restore(id);
    if (fault) note(*fault);
    library_changed();
    return !fault;
}

std::optional<Job> Session::read(JobId id) {
    if (practice_ ? practice_->current == id : current_ == id)
        return practice_ ? practice_->own : job_;
    LibraryResult<Job> job = library_->open(id);
    if (job) return std::move(*job);
    note(job.fault());
    return std::nullopt;
}

std::optional<std::string> Session::export_job(JobId id) {
    const std::optional<Job> job = read(id);
    if (!job) return std::nullopt;
    return export_bytes(job->name, ".json", write_job(*job));
}

bool Session::keep_press() {
    std::optional<LibraryFault> fault;
    const auto same = std::find_if(presses_.begin(), presses_.end(), [&](const PressRow& row) {
        return row.name == job_.press.name;
    });
    if (same != presses_.end()) fault = library_->change_press(same->id, job_.press, now_());
    else if (const LibraryResult<PressId> id = library_->add_press(job_.press, now_()); !id) fault = id.fault();
    if (fault) note(*fault);
    library_changed();
    return !fault;
}

std::optional<PressProfile> Session::kept_press(PressId id) {
    LibraryResult<PressProfile> press = library_->open_press(id);
    if (press) return std::move(*press);
    note(press.fault());
    return std::nullopt;
}

std::optional<Applied> Session::use_press(PressId id) {
    if (const std::optional<PressProfile> press = kept_press(id))
        return commit(Edit{SetPress{*press, {}}});
    Applied refused;
    refused.refusal = Refusal::not_a_press;
    return refused;
}

SaveState Session::save_state() const {
    if (practice_ && !writer_->fault() && !writer_->elsewhere()) return SaveState::none;
    if (visit_ && !writer_->fault() && !writer_->elsewhere()) return SaveState::visiting;
    if (folder_.empty()) return SaveState::none;
    if (!library_->kept()) return SaveState::not_kept;
    if (writer_->elsewhere()) return SaveState::elsewhere;
    if (writer_->fault()) return SaveState::failed;
    return writer_->all_saved() ? SaveState::saved : SaveState::waiting;
}

std::string Session::trouble() const {
    if (open_fault_) return fault_sentence(looks_.language, *open_fault_);
    if (const std::optional<LibraryFault> fault = writer_->fault())
        return fault_sentence(looks_.language, *fault);
    return fault_ ? fault_sentence(looks_.language, *fault_) : std::string();
}

void Session::retry() {
    fault_.reset();
    writer_->retry();
}

bool Session::flush() { return writer_->flush(std::chrono::milliseconds(5000)); }

} // namespace carriageway
