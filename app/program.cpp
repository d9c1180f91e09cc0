#include "app/program.h"

#include "app/opened_file.h"
#include "app/records/exchange.h"
#include "app/version.h"

namespace carriageway {

namespace {

double eased(double share) { return share * share * (3.0 - 2.0 * share); }

constexpr double notice_seconds = 6.0;
constexpr std::size_t megabyte = 1024u * 1024u;

/// Why a file was not read.
std::string open_fault_sentence(Language language, const OpenedFile& file) {
    switch (file.fault) {
    case OpenedFile::Fault::none: return {};
    case OpenedFile::Fault::not_readable: return std::string(word(language, Word::file_not_readable));
    case OpenedFile::Fault::job_too_large: {
        ReadFault fault;
        fault.kind = ReadFault::Kind::too_large;
        fault.found = std::to_string(file.size);
        fault.expected = std::to_string(largest_text);
        return fault_sentence(language, fault);
    }
    case OpenedFile::Fault::film_too_large:
        return say(language, Word::film_too_large, {std::to_string(largest_film / megabyte)});
    }
    return {};
}

} // namespace

Program::Program(Session& session)
    : session_(session), about_{program_version(), program_built_on(), session.folder()} {
    state_.looks = session.looks();
    state_.habits = session.habits();
    state_.open[static_cast<std::size_t>(Section::plot)] = true;
    take_person();
    const bool shows = session.first_start() && !state_.habits.first_steps;
    if (shows && session.current() != 0 && session.job() == demo_job()) begin_first_steps(false);
}

void Program::built_on(const std::vector<BuiltOn>& more) {
    about_.built_on.insert(about_.built_on.end(), more.begin(), more.end());
}

Model Program::model() const {
    Model model;
    model.job = &session_.shown();
    model.assessment = &session_.assessment();
    model.state = &state_;
    model.can_undo = session_.can_undo();
    model.can_redo = session_.can_redo();
    model.save = session_.save_state();
    model.save_trouble = session_.trouble();
    model.rows = &session_.rows();
    model.presses = &session_.presses();
    model.runs = &session_.runs();
    const DayPart* part = state_.day.open ? &state_.day.part : nullptr;
    if (part && *part == DayPart::walk) model.last_run = session_.last_run();
    if (part && (*part == DayPart::walk || *part == DayPart::compare)) {
        model.job_as_set = session_.job_as_set();
        model.as_set = session_.assessment_as_set();
    }
    model.current = session_.current();
    model.visiting = session_.visiting();
    model.moves = session_.practised().size();
    model.practised_by = &session_.practised_by();
    model.group = &session_.group();
    model.time = session_.time();
    if (examined(state_.practice.exercise)) model.assessment = &kept_back_;
    if (const std::string* left = session_.left_visit()) model.left_visit = left->empty() ? "…" : *left;
    model.window = window_;
    model.pixels_per_dp = pixels_per_dp_;
    model.abilities = &abilities_;
    model.about = &about_;
    return model;
}

Camera Program::home_camera() const {
    const Head* head = find_head(session_.shown(), state_.head);
    if (head) return camera_for_head(session_.shown(), *head, layout_.diagram, rail_room);
    const float words = 20.0f * state_.looks.text_scale;
    const float room = layout_.compact ? 12.0f + words : 24.0f + words;
    return camera_for_press(session_.shown().press, layout_.diagram, room);
}

void Program::move_camera(const Camera& to) {
    if (state_.camera == to) return;
    state_.move = CameraMove{state_.camera, to, now_, 0.28};
}

/// Carries a move on, and keeps a camera that nobody moved by hand fitted to its view.
void Program::settle_camera() {
    if (state_.move) {
        const double share = (now_ - state_.move->start) / state_.move->seconds;
        state_.camera = between(state_.move->from, state_.move->to, eased(std::clamp(share, 0.0, 1.0)));
        if (share >= 1.0) state_.move.reset();
    } else if (!state_.own_camera && !state_.held) {
        state_.camera = home_camera();
    }
}

void Program::choose_head(HeadId head) {
    state_.head = head;
    state_.own_camera = false;
    state_.panel_scroll = 0.0f;
    state_.pad.reset();
    state_.typing.reset();
    state_.share.reset();
    state_.measuring.open = false;
    state_.day.open = false;
    state_.place = Place::press;
    // The stop that wants attention is the one at hand.
    if (const HeadAssessment* assessed = find_head(*model().assessment, head))
        for (const Finding& finding : assessed->findings) {
            if (finding.side == Side::operator_side) state_.stop = End::operator_side;
            if (finding.side == Side::machine_side) state_.stop = End::machine_side;
            break;
        }
    if (window_.empty()) return; // before the first frame there is nothing to move from
    Canvas canvas(frame_, state_.looks.language);
    layout_ = lay_out(model(), canvas);
    move_camera(home_camera());
}

const Frame& Program::build(const Surface& surface, double now, bool system_dark,
                            const TypeMeasure& type) {
    now_ = now;
    pixels_per_dp_ = std::max(0.1f, surface.pixels_per_dp);
    const float k = 1.0f / pixels_per_dp_;
    const Box all{0.0f, 0.0f, static_cast<float>(surface.width) * k, static_cast<float>(surface.height) * k};
    window_ = {all.x0 + surface.inset_left, all.y0 + surface.inset_top, all.x1 - surface.inset_right,
               all.y1 - surface.inset_bottom};
    state_.dark = state_.looks.theme == ThemeChoice::dark ||
                  (state_.looks.theme == ThemeChoice::system && system_dark);
    if (state_.notice && now > state_.notice->until) state_.notice.reset();
    if (const std::string text = session_.backup_trouble(); !text.empty()) notice(text, true);
    if (!find_head(session_.shown(), state_.head)) state_.head = 0;
    gestures_.advance(now, gestured_);
    take_gestures();
    mind_exercise();
    mind_first_steps();
    keep_answers_back();
    frame_.begin(all, type);
    Canvas canvas(frame_, state_.looks.language);
    layout_ = lay_out(model(), canvas);
    settle_camera();
    run_fling();
    read_film();
    run_search();
    run_cycle();
    run_trail();
    follow_exercise();
    draw_frame(model(), frame_);
    // Scrolling stays within what there is; a shorter list pulls it back, in the same frame.
    bool again = false;
    for (const ScrollArea& area : frame_.scrolls) {
        const float most = std::max(0.0f, area.content - area.box.height());
        float& offset = state_.*area.offset;
        const float kept = std::clamp(offset, 0.0f, most);
        again = again || kept != offset;
        offset = kept;
        if (again && fling_ && fling_->offset == area.offset) fling_.reset(); // at an end
    }
    if (again) {
        frame_.begin(all, type);
        draw_frame(model(), frame_);
    }
    if (state_.show_focus)
        if (const Thing* thing = focused()) {
            frame_.list.set_layer(3);
            const Box ring = thing->box.inset(-2.0f);
            frame_.list.ring(ring, 12.0f, paint(Role::focus), 3.0f);
            frame_.list.set_layer(0);
        }
    return frame_;
}

double Program::next_frame(double now) const {
    double when = -1.0;
    const auto sooner = [&](double at) { when = when < 0.0 ? at : std::min(when, at); };
    if (state_.move || fling_ || film_ || searching() || cycle_runs()) sooner(now);
    if (first_pulses_run() || !state_.class_view.trail.empty()) sooner(now);
    if (state_.notice) sooner(state_.notice->until + 0.01);
    if (const std::optional<double> due = gestures_.due()) sooner(*due + 0.005);
    return when;
}

void Program::notice(const std::string& text, bool trouble, JobId restore) {
    state_.notice = Notice{text, restore, now_ + notice_seconds, trouble};
}

void Program::open_file(const std::string& path) {
    if (only_to_look()) return;
    OpenedFile file = open_to_read(path);
    const std::string name = path.substr(path.find_last_of("/\\") + 1);
    const Language language = state_.looks.language;
    if (file.fault != OpenedFile::Fault::none) {
        notice(say(language, Word::not_opened, {name, open_fault_sentence(language, file)}), true);
        return;
    }
    if (file.film) return open_film(name, std::move(file.bytes));
    const ReadJob read = read_job(file.bytes);
    if (!read.job) {
        if (receive_document(file.bytes, read.fault.found, name)) return;
        notice(say(language, Word::not_opened, {name, fault_sentence(language, read.fault)}), true);
        return;
    }
    if (offer_merge(*read.job)) return;
    const bool was_visiting = session_.visiting();
    if (!session_.open_new(*read.job)) {
        notice(say(language, Word::not_opened, {name, session_.trouble()}), true);
        return;
    }
    arrive(was_visiting);
}

} // namespace carriageway
