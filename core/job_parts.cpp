#include "core/job_parts.h"

#include <utility>

namespace carriageway {
namespace {

bool same_of_head(const Head& a, const Head& b, JobPart part) {
    switch (part) {
        case JobPart::colour: return a.colour == b.colour;
        case JobPart::ink: return a.ink == b.ink;
        case JobPart::print_stroke: return a.print_stroke == b.print_stroke;
        case JobPart::winged: return a.flood.winged == b.flood.winged;
        case JobPart::height_stop:
            return a.pressure.on_height_stop == b.pressure.on_height_stop;
        case JobPart::blade_edge: return a.squeegee.edge == b.squeegee.edge;
        case JobPart::image: return a.image == b.image;
        case JobPart::outline: return a.image.outline == b.image.outline;
        case JobPart::stops: return a.stops == b.stops;
        case JobPart::wish: return a.wish == b.wish;
        case JobPart::flash_after: return a.wish.flash_after == b.wish.flash_after;
        case JobPart::flash_together: return a.wish.flash_together == b.wish.flash_together;
        case JobPart::wet_on_wet: return a.wish.wet_on_wet == b.wish.wet_on_wet;
        case JobPart::pinned: return a.wish.pinned == b.wish.pinned;
        case JobPart::ink_note: return a.notes.ink == b.notes.ink;
        case JobPart::stencil_note: return a.notes.stencil == b.notes.stencil;
        case JobPart::rounds: return a.rounds == b.rounds;
        default: return true;
    }
}

std::optional<Edit> edit_of_head_part(const Head& from, JobPart part) {
    const HeadId id = from.id;
    switch (part) {
        case JobPart::colour: return Edit{SetName{id, from.colour}};
        case JobPart::ink: return Edit{SetInk{id, from.ink}};
        case JobPart::print_stroke: return Edit{SetPrintStroke{id, from.print_stroke}};
        case JobPart::winged: return Edit{SetWinged{id, from.flood.winged}};
        case JobPart::height_stop: return Edit{SetHeightStop{id, from.pressure.on_height_stop}};
        case JobPart::blade_edge: return Edit{SetBladeEdge{id, from.squeegee.edge}};
        case JobPart::image: return Edit{SetImage{id, from.image}};
        case JobPart::stops: return Edit{SetStops{id, from.stops}};
        case JobPart::wish: return Edit{SetColourWish{id, from.wish}};
        case JobPart::ink_note: return Edit{SetNote{id, Note::ink, from.notes.ink}};
        case JobPart::stencil_note: return Edit{SetNote{id, Note::stencil, from.notes.stencil}};
        case JobPart::rounds: return Edit{SetRounds{id, from.rounds}};
        default: return std::nullopt;
    }
}

Edit edit_of_uses(const Job& from, const Job& to) {
    Together together;
    for (std::size_t i = 0; i < from.uses.size(); ++i) {
        if (i < to.uses.size() && from.uses[i] == to.uses[i]) continue;
        together.edits.push_back({SetUse{static_cast<int>(i) + 1, from.uses[i]}});
    }
    return {std::move(together)};
}

Edit edit_of_approval(const Job& from, const Job& to) {
    SetRecord edit{to.record};
    edit.record.approval = from.record.approval;
    return {std::move(edit)};
}

} // namespace

bool same_part(const Job& a, const Head* head_a, const Job& b, const Head* head_b, JobPart part) {
    if (is_of_head(part)) {
        return head_a == nullptr || head_b == nullptr || same_of_head(*head_a, *head_b, part);
    }
    switch (part) {
        case JobPart::name: return a.name == b.name;
        case JobPart::garment_kind: return a.garment.kind == b.garment.kind;
        case JobPart::garment_name: return a.garment.name == b.garment.name;
        case JobPart::base_head: return a.registration.base == b.registration.base;
        case JobPart::uses: return a.uses == b.uses;
        case JobPart::press: return a.press == b.press;
        case JobPart::height_readings: return a.height_readings == b.height_readings;
        case JobPart::approval: return a.record.approval == b.record.approval;
        case JobPart::run_notes: return a.record.notes == b.record.notes;
        default: return true;
    }
}

bool is_noted(const Job& job, const Head* head, JobPart part) {
    if (is_of_head(part) && head == nullptr) return false;
    switch (part) {
        case JobPart::colour: return !head->colour.empty();
        case JobPart::blade_edge: return head->squeegee.edge != BladeEdge::not_noted;
        case JobPart::ink_note: return !head->notes.ink.empty();
        case JobPart::stencil_note: return !head->notes.stencil.empty();
        case JobPart::rounds: return !head->rounds.empty();
        case JobPart::name: return !job.name.empty();
        case JobPart::garment_name: return !job.garment.name.empty();
        case JobPart::height_readings: return !job.height_readings.empty();
        case JobPart::approval: return job.record.approval != Approval{};
        case JobPart::run_notes: return !job.record.notes.empty();
        default: return true;
    }
}

std::optional<Edit> edit_of_part(const Job& from, const Job& to, HeadId head, JobPart part) {
    if (is_of_head(part)) {
        const Head* found = find_head(from, head);
        return found != nullptr ? edit_of_head_part(*found, part) : std::nullopt;
    }
    switch (part) {
        case JobPart::name: return Edit{SetName{0, from.name}};
        case JobPart::garment_kind: return Edit{SetGarment{from.garment.kind}};
        case JobPart::garment_name: return Edit{SetNote{0, Note::garment, from.garment.name}};
        case JobPart::base_head: return Edit{SetBaseHead{from.registration.base}};
        case JobPart::uses: return edit_of_uses(from, to);
        case JobPart::press: return Edit{SetPress{from.press, {}}};
        case JobPart::height_readings: return Edit{SetHeightReadings{from.height_readings}};
        case JobPart::approval: return edit_of_approval(from, to);
        case JobPart::run_notes: return Edit{SetNote{0, Note::run, from.record.notes}};
        default: return std::nullopt;
    }
}

} // namespace carriageway
