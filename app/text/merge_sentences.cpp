#include "app/text/merge_sentences.h"

#include <algorithm>
#include <cstdio>

#include "app/text/list_sentences.h"
#include "app/text/recipe_sentences.h"
#include "app/text/sentences.h"
#include "app/text/walk_sentences.h"

namespace carriageway {

namespace {

/// one half of a merge, and what is needed to say something of it.
struct Half {
    Language language;
    LengthUnit unit;
    const Job& job;
    bool theirs;
    std::string text(Word key) const { return std::string(word(language, key)); }
};

std::string hex_of(std::uint32_t ink) {
    char text[16];
    std::snprintf(text, sizeof text, "#%06X", static_cast<unsigned>(ink & 0xFFFFFFu));
    return text;
}

std::string value_of(const Half& half, Field field, double value) {
    return walk_value(half.language, half.unit, half.job.press.ruler, field, value);
}

/// What can't be said in a line.
std::string as_it_is(const Half& half) {
    return half.text(half.theirs ? Word::merge_as_there : Word::merge_as_here);
}

std::string image_text(const Half& half, const Image& image) {
    double width = image.width, length = image.length;
    if (!image.outline.empty()) {
        const Rect bounds = bounds_of(image.outline);
        width = bounds.width();
        length = bounds.length();
    }
    return say(half.language, Word::merge_image_size,
               {format_length(width, half.unit), format_length(length, half.unit)});
}

std::string part_of_head(const Half& half, const Head& head, JobPart part) {
    switch (part) {
    case JobPart::ink: return hex_of(head.ink);
    case JobPart::print_stroke: return half.text(direction_word(head.print_stroke));
    case JobPart::winged:
        return half.text(head.flood.winged ? Word::with_wings : Word::without_wings);
    case JobPart::height_stop:
        return half.text(head.pressure.on_height_stop ? Word::merge_rests : Word::merge_rests_not);
    case JobPart::blade_edge: return half.text(edge_word(head.squeegee.edge));
    case JobPart::image: return image_text(half, head.image);
    case JobPart::stops:
        return say(half.language, Word::merge_two_stops,
                   {value_of(half, Field::operator_stop, head.stops.operator_side),
                    value_of(half, Field::machine_stop, head.stops.machine_side)});
    case JobPart::ink_note: return head.notes.ink;
    case JobPart::stencil_note: return head.notes.stencil;
    case JobPart::rounds:
        return say(half.language, Word::merge_rounds, {std::to_string(head.rounds.size())});
    default: return as_it_is(half);
    }
}

std::string part_of_job(const Half& half, JobPart part) {
    const Job& job = half.job;
    switch (part) {
    case JobPart::name: return job.name;
    case JobPart::garment_kind:
        return half.text(job.garment.kind == GarmentKind::fleece ? Word::garment_fleece
                                                                 : Word::garment_t_shirt);
    case JobPart::garment_name: return job.garment.name;
    case JobPart::base_head:
        if (const Head* base = find_head(job, job.registration.base))
            return head_title(half.language, *base);
        return half.text(Word::merge_first_head);
    case JobPart::press: return job.press.name.empty() ? as_it_is(half) : job.press.name;
    case JobPart::approval: return job.record.approval.by;
    case JobPart::run_notes: return job.record.notes;
    default: return as_it_is(half);
    }
}

std::string mark_text(const Half& half, const MergeConflict& conflict) {
    const std::optional<double>& value = half.theirs ? conflict.theirs : conflict.mine;
    const bool done = half.theirs ? conflict.theirs_done : conflict.mine_done;
    if (!value) return half.text(Word::merge_not_set);
    const std::string shown = value_of(half, conflict.field, *value);
    return done ? shown : say(half.language, Word::merge_tick_back, {shown});
}

/// A conflict gives only the pieces printed: how many of them are spoiled stands in the record.
std::string counted_text(const Half& half, double printed, const Stamp& stamp) {
    for (const PieceCount& count : half.job.record.counts)
        if (count.stamp == stamp && count.printed == printed)
            return count_text(half.language, count);
    return format_number(printed, 0);
}

std::string stood_text(const Half& half, double minutes, const Stamp& stamp) {
    for (const Stoppage& stoppage : half.job.record.stoppages) {
        if (!(stoppage.stamp == stamp) || stoppage.minutes != minutes) continue;
        const std::string text = stoppage_text(half.language, stoppage);
        return stoppage.note.empty() ? text : text + " · " + stoppage.note;
    }
    return format_number(minutes, 1);
}

/// What of a place a conflict is about.
std::string what_text(Language language, const MergeConflict& conflict) {
    switch (conflict.kind) {
    case MergeKind::mark:
        return say(language, Word::merge_what_set, {word(language, walk_word(conflict.field))});
    case MergeKind::number:
        return say(language, Word::merge_what_planned,
                   {word(language, walk_word(conflict.field))});
    case MergeKind::part: return std::string(word(language, merge_part_word(conflict.part)));
    case MergeKind::head: return std::string(word(language, Word::merge_whole_head));
    case MergeKind::count: return std::string(word(language, Word::merge_count));
    case MergeKind::stoppage: return std::string(word(language, Word::merge_stoppage));
    }
    return {};
}

} // namespace

Word merge_part_word(JobPart part) {
    switch (part) {
    case JobPart::ink: return Word::merge_part_ink;
    case JobPart::print_stroke: return Word::print_stroke;
    case JobPart::winged: return Word::flood_bar;
    case JobPart::height_stop: return Word::merge_part_height_stop;
    case JobPart::blade_edge: return Word::item_blade_edge;
    case JobPart::image: return Word::merge_part_image;
    case JobPart::stops: return Word::merge_part_stops;
    case JobPart::wish: return Word::merge_part_wish;
    case JobPart::ink_note: return Word::item_ink_note;
    case JobPart::stencil_note: return Word::item_stencil_note;
    case JobPart::rounds: return Word::merge_part_rounds;
    case JobPart::name: return Word::merge_part_name;
    case JobPart::garment_kind: return Word::merge_part_garment_kind;
    case JobPart::garment_name: return Word::item_garment_name;
    case JobPart::base_head: return Word::merge_part_base;
    case JobPart::uses: return Word::merge_part_uses;
    case JobPart::press: return Word::merge_part_press;
    case JobPart::approval: return Word::merge_part_approval;
    case JobPart::run_notes: return Word::merge_part_notes;
    default: return Word::count;
    }
}

std::string odds_text(Language language, const WalkMerge& merge,
                          const MergeConflict& conflict) {
    std::string place(word(language, Word::merge_of_job));
    if (conflict.head != 0) {
        const bool mine = find_head(merge.mine, conflict.head) != nullptr;
        place = walk_place(language, mine ? merge.mine : merge.theirs, conflict.head);
        if (place.empty()) place = word(language, Word::merge_head_unknown);
    }
    return place + ": " + what_text(language, conflict);
}

std::string half_text(Language language, LengthUnit unit, const WalkMerge& merge,
                      const MergeConflict& conflict, bool theirs) {
    const Half half{language, unit, theirs ? merge.theirs : merge.mine, theirs};
    const std::optional<double>& value = theirs ? conflict.theirs : conflict.mine;
    const Stamp& stamp = theirs ? conflict.theirs_stamp : conflict.mine_stamp;
    const bool there = theirs ? conflict.theirs_done : conflict.mine_done;
    switch (conflict.kind) {
    case MergeKind::mark: return mark_text(half, conflict);
    case MergeKind::number: return value ? value_of(half, conflict.field, *value) : std::string();
    case MergeKind::part:
        if (!is_of_head(conflict.part)) return part_of_job(half, conflict.part);
        if (const Head* head = find_head(half.job, conflict.head))
            return part_of_head(half, *head, conflict.part);
        return as_it_is(half);
    case MergeKind::head:
        return half.text(there ? Word::merge_head_there : Word::merge_head_missing);
    case MergeKind::count: return counted_text(half, value.value_or(0.0), stamp);
    case MergeKind::stoppage: return stood_text(half, value.value_or(0.0), stamp);
    }
    return {};
}

} // namespace carriageway
