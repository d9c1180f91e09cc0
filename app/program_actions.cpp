// Carrying out actions: one function a kind.
#include "app/program.h"
#include "app/text/sentences.h"

namespace carriageway {

namespace {

/// Calls `use` with the action as its own kind.
template <class Use, class... Kinds> void with_kind(const Action& action, KindList<Kinds...>, Use use) {
    const auto as_one = [&]<class Kind>(const Kind* kind) {
        if (kind) use(*kind);
        return kind != nullptr;
    };
    (void)(as_one(action.as<Kinds>()) || ...);
}

using ChangesLibrary = KindList<
    DoEdit, Undo, Redo, StepStop, StepNumber, SetEveryStop, OpenPad, PadPress, NewJob, DuplicateJob,
    RemoveJob, RestoreJob, AddHeadAt, KeepPress, UsePress, KeepVisit, UseMeasured, RegisterEdit,
    AddMarkAt, OpenRegisterPad, OpenDayPad, UsePlacement, TickWalk, TickHead, AsPlanned, WalkAgain,
    TickStep, RemoveCount, RemoveStoppage, ApproveFirstPiece, FinishRun, RemoveRun, RestoreRun,
    RunAgain, CarryToPress, AcceptMerge, OpenTheirs, SignTopic, EraseTrainee, NoteResult,
    BeginCall, ChooseCallSymptom, ChooseCallHead, AnswerCall, SkipQuestion, TellFix, FixesAreSet,
    EndCallAs, EraseCall, SetReply,
    BeginFirstSteps>;

/// Whether an action of this kind can change what the library keeps.
template <class Kind> bool changes_library(const Kind&) { return ChangesLibrary::has<Kind>; }

bool changes_library(const EditText& a) {
    return a.target != TextTarget::search && a.target != TextTarget::initials;
}

} // namespace

bool Program::only_to_look() {
    if (!session_.read_only()) return false;
    notice(std::string(word(state_.looks.language, Word::elsewhere_explained)), true);
    return true;
}

void Program::act(const Action& action) {
    with_kind(action, ActionKinds{}, [this](const auto& a) {
        if (!changes_library(a) || !only_to_look()) carry_out(a);
    });
}

void Program::say_trouble() { notice(session_.trouble(), true); }

void Program::carry_out(const DoEdit& a) { apply_edit(a.edit); }

void Program::carry_out(const Undo&) { session_.undo(); }

void Program::carry_out(const Redo&) { session_.redo(); }

void Program::carry_out(const GoTo& a) {
    state_.place = a.place;
    state_.typing.reset();
    state_.pad.reset();
    state_.panel_scroll = 0.0f;
    if (a.place == Place::jobs) session_.search(state_.search);
}

void Program::carry_out(const ChooseHead& a) { choose_head(a.head); }

void Program::carry_out(const ChooseStop& a) {
    if (state_.head != a.head) choose_head(a.head);
    state_.stop = a.end;
}

void Program::carry_out(const StepNumber& a) {
    const Head* head = find_head(session_.job(), a.head);
    if (!head || !(a.step > 0.0)) return;
    const double steps = std::round((number_of(session_.job(), head, a.field) - a.from) / a.step) + a.by;
    apply_edit(Edit{SetNumber{a.head, a.field, std::clamp(a.from + steps * a.step, a.least, a.most)}});
}
void Program::carry_out(const StepStop& a) { step_stop(a); }

void Program::carry_out(const SetEveryStop&) {
    if (const std::optional<Edit> edit = set_every_stop(session_.job(), session_.assessment()))
        apply_edit(*edit);
}

void Program::carry_out(const Zoom& a) {
    state_.own_camera = true;
    move_camera(zoomed({state_.move ? state_.move->to : state_.camera, layout_.diagram}, a.factor,
                       layout_.diagram.centre()));
}

void Program::carry_out(const ShowAll&) {
    state_.own_camera = false;
    move_camera(home_camera());
}

void Program::carry_out(const ToggleSheet&) { state_.tall_sheet = !state_.tall_sheet; }

void Program::carry_out(const ToggleSection& a) {
    bool& open = state_.open[static_cast<std::size_t>(a.section)];
    open = !open;
}

void Program::carry_out(const OpenPad& a) {
    Pad pad;
    pad.head = a.head;
    pad.field = a.field;
    const double value = number_of(session_.job(), find_head(session_.job(), a.head), a.field);
    const bool stop = is_stop(a.field);
    pad.text = stop ? plain_ruler(session_.job().press.ruler, value)
                    : plain_quantity(value, info_of(a.field).quantity, state_.looks.units);
    state_.pad = pad;
}

void Program::carry_out(const PadPress& a) { press_pad(a.key); }

void Program::carry_out(const EditText& a) { edit_text(a); }

void Program::carry_out(const AcceptText&) { accept_text(); }

void Program::carry_out(const CancelText&) { cancel_text(); }

void Program::carry_out(const ChooseTheme& a) {
    Looks looks = state_.looks;
    looks.theme = a.theme;
    set_looks(looks);
}

void Program::carry_out(const ChooseLanguage& a) {
    Looks looks = state_.looks;
    looks.language = a.language;
    set_looks(looks);
}

void Program::carry_out(const ChooseUnits& a) {
    Looks looks = state_.looks;
    looks.units = a.units;
    set_looks(looks);
}

void Program::carry_out(const ChooseTextScale& a) {
    Looks looks = state_.looks;
    looks.text_scale = std::clamp(a.scale, least_text_scale, most_text_scale);
    set_looks(looks);
}

void Program::carry_out(const OpenJob& a) {
    const bool was_visiting = session_.visiting();
    if (session_.open(a.job)) arrive(was_visiting);
    else say_trouble();
}

void Program::carry_out(const ChooseJob& a) {
    state_.chosen_job = state_.chosen_job == a.job ? 0 : a.job;
    state_.typing.reset();
}

void Program::carry_out(const NewJob&) {
    const bool was_visiting = session_.visiting();
    if (session_.open_new(empty_job(std::string(word(state_.looks.language, Word::untitled))))) arrive(was_visiting);
    else say_trouble();
}

void Program::carry_out(const DuplicateJob& a) {
    std::string name;
    for (const JobRow& row : session_.rows())
        if (row.id == a.job) name = row.name;
    if (!session_.duplicate(a.job, say(state_.looks.language, Word::copy_of, {name}))) say_trouble();
}

void Program::carry_out(const RemoveJob& a) {
    std::string name;
    for (const JobRow& row : session_.rows())
        if (row.id == a.job) name = row.name;
    const JobId open = session_.current();
    const bool removed = session_.remove(a.job);
    if (session_.current() != open) { // another job took its place
        drop_film();
        state_.day = {};
    }
    if (removed) notice(say(state_.looks.language, Word::deleted_job, {name}), false, a.job);
    else say_trouble();
}

void Program::carry_out(const RestoreJob& a) {
    if (session_.restore(a.job)) state_.notice.reset();
    else say_trouble();
}

void Program::carry_out(const ExportJob& a) {
    const std::optional<std::string> path = session_.export_job(a.job);
    if (path && abilities_.give_file) errands_.push_back({ErrandKind::give_file, *path});
    else if (path) notice(say(state_.looks.language, Word::exported_to, {*path}));
    else say_trouble();
}

void Program::carry_out(const RetrySaving&) { session_.retry(); }

void Program::carry_out(const CloseNotice&) {
    film_.reset(); // its progress stands in the notice
    if (!state_.notice) state_.newer_ready = false; // until the next start
    state_.notice.reset();
}

void Program::carry_out(const TakeOver&) { errands_.push_back({ErrandKind::take_over, {}}); }

void Program::carry_out(const StartNewer&) { errands_.push_back({ErrandKind::update, {}}); }

void Program::carry_out(const AddHeadAt& a) { add_head(a.station); }

void Program::carry_out(const KeepPress&) {
    if (session_.keep_press()) notice(say(state_.looks.language, Word::press_kept, {session_.job().press.name}));
    else say_trouble();
}

void Program::carry_out(const UsePress& a) {
    if (const std::optional<Applied> refused = session_.use_press(a.press)) refuse(*refused);
}

} // namespace carriageway
