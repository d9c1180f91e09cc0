#include "app/text/rate_words.h"

#include "app/text/rate_sentences.h"

namespace carriageway {

Word kind_word(StationKind kind, bool both) {
    switch (kind) {
    case StationKind::print: return Word::head;
    case StationKind::flash: return Word::use_flash;
    case StationKind::load: return both ? Word::rate_use_both : Word::use_load;
    case StationKind::unload: return Word::use_unload;
    case StationKind::cool: return Word::use_cool;
    case StationKind::idle: break;
    }
    return Word::use_open;
}

Word sentence_word(StationKind kind, bool both) {
    switch (kind) {
    case StationKind::print: return Word::rate_the_head;
    case StationKind::flash: return Word::rate_the_flash;
    case StationKind::load: return both ? Word::rate_the_both : Word::rate_the_load;
    case StationKind::unload: return Word::rate_the_unload;
    case StationKind::cool:
    case StationKind::idle: break;
    }
    return Word::rate_the_station;
}

Word lever_word(Lever lever, StationKind kind, bool both) {
    switch (lever) {
    case Lever::stroke: return Word::rate_less_stroke;
    case Lever::print_speed: return Word::rate_faster_print;
    case Lever::flood_speed: return Word::rate_faster_flood;
    case Lever::drop: return Word::rate_less_drop;
    case Lever::dwell: return Word::rate_less_dwell;
    case Lever::lower: return Word::rate_less_lower;
    case Lever::lift: return Word::rate_less_lift;
    case Lever::index: return Word::rate_less_index;
    case Lever::seconds: break;
    }
    switch (kind) {
    case StationKind::flash: return Word::rate_less_flash;
    case StationKind::load: return both ? Word::rate_less_both : Word::rate_less_load;
    case StationKind::unload: return Word::rate_less_unload;
    default: return Word::rate_less_stay;
    }
}

Word step_word(StepKind kind, bool both) {
    switch (kind) {
    case StepKind::index: return Word::rate_step_index;
    case StepKind::lower: return Word::rate_step_lower;
    case StepKind::drop: return Word::rate_step_drop;
    case StepKind::flood: return Word::rate_step_flood;
    case StepKind::print: return Word::rate_step_print;
    case StepKind::empty: return Word::rate_step_empty;
    case StepKind::dwell: return Word::rate_step_dwell;
    case StepKind::lift: return Word::rate_step_lift;
    case StepKind::flash: return Word::rate_step_flash;
    case StepKind::load: return both ? Word::rate_step_load_both : Word::rate_step_load;
    case StepKind::unload: return Word::rate_step_unload;
    case StepKind::cool: return Word::rate_step_cool;
    case StepKind::stay: return Word::rate_step_stay;
    case StepKind::wait: break;
    }
    return Word::rate_step_wait;
}

} // namespace carriageway
