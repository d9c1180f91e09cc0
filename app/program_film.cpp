// Films as images of heads: opened by a file, read a piece in each frame, put in by one edit.
#include "app/program.h"
#include "app/text/sentences.h"

namespace carriageway {

void Program::open_film(const std::string& name, std::string bytes) {
    const Language language = state_.looks.language;
    const Head* head = find_head(session_.job(), state_.head);
    if (!head) {
        notice(say(language, Word::film_choose_head, {name}), true);
        return;
    }
    Outline placed;
    place_image(head->image, placed);
    film_ = std::make_unique<Film>(head->id, name, std::move(bytes), bounds_of(placed).width());
    read_film();
}

/// Ids of heads are a job's own: with another job, the film's would be any head.
void Program::drop_film() {
    if (!film_) return;
    film_.reset();
    state_.notice.reset();
}

/// Called once a frame while a film is being read.
void Program::read_film() {
    if (!film_) return;
    const Language language = state_.looks.language;
    // A head that has gone takes no film; nor does one that is added later under its id.
    if (!find_head(session_.job(), film_->head())) {
        const std::string name = film_->name();
        drop_film();
        notice(say(language, Word::film_choose_head, {name}), true);
        return;
    }
    if (film_->step()) {
        // Stands while it is read; closing it is the way to cancel.
        state_.notice = Notice{};
        state_.notice->text = say(language, Word::film_reading, {film_->name(), format_share(film_->progress())});
        state_.notice->until = now_ + 60.0;
        return;
    }
    const std::unique_ptr<Film> film = std::move(film_);
    state_.notice.reset();
    if (!film->separation()) {
        notice(say(language, Word::not_opened,
                   {film->name(), fault_sentence(language, state_.looks.units, film->fault())}),
               true);
        return;
    }
    // Another window may have taken over while it was read.
    if (only_to_look()) return;
    const Head* head = find_head(session_.job(), film->head());
    if (!head) return;
    if (const std::optional<Applied> refused = session_.commit(separation_edit(*head, *film->separation())))
        return refuse(*refused);
    const Rect extent = film->separation()->extent;
    notice(say(language, film->assumed_width() ? Word::film_in_assumed : Word::film_in,
               {film->name(), format_length(extent.width(), state_.looks.units),
                format_length(extent.length(), state_.looks.units),
                format_share(film->separation()->printed_share)}));
}

} // namespace carriageway
