#include "core/edit.h"

#include <algorithm>
#include <utility>

#include "core/job_check.h"
#include "core/measured_press.h"

namespace carriageway {
namespace {

Applied refused(Refusal refusal, Field field = Field::count) {
    return {std::nullopt, refusal, field};
}
Applied refused(const JobFault& fault) {
    return refused(fault.refusal, fault.field);
}
Applied undone_by(Edit inverse) {
    return {std::move(inverse), std::nullopt, Field::count};
}

/// Gives a part of a job a new value; `inverse` restores it.
template <typename Value>
Applied put(Value& place, const Value& value, Edit inverse) {
    place = value;
    return undone_by(std::move(inverse));
}

void order_by_station(std::vector<Head>& heads) {
    std::sort(heads.begin(), heads.end(),
              [](const Head& a, const Head& b) { return a.station < b.station; });
}

/// What speaks against a number that is within its own limits, beside the job's other numbers.
std::optional<JobFault> fault_beside(const Job& job, const Head* head, Field field) {
    if (is_stop(field)) return stops_fault(head->stops);
    if (info_of(field).owner == FieldOwner::press) return press_contradiction(job.press);
    return std::nullopt;
}

/// Whether typing a number also changes what kind of number it is: a spread that was measured
/// becomes a typed one, a least separation that is typed is used instead of the formula.
bool changes_what_is_measured(PressProfile& press, Field field) {
    if (field == Field::measured_separation) return !press.sensors.separation_measured;
    const Spread* spread = spread_of(press, field);
    return spread != nullptr && spread->measured;
}

void count_as_typed(PressProfile& press, Field field) {
    if (field == Field::measured_separation) press.sensors.separation_measured = true;
    if (Spread* spread = spread_of(press, field)) spread->measured = false;
}

/// Carries out one kind of edit each; every one checks before it changes anything.
struct Applier {
    Job& job;
    int depth;  ///< of Together around this edit

    Applied operator()(const SetNumber& edit) const {
        if (edit.field < Field{} || edit.field >= Field::count) {
            return refused(Refusal::out_of_range, Field::count);
        }
        const bool of_head = info_of(edit.field).owner == FieldOwner::head;
        Head* head = find_head(job, edit.head);
        if (of_head ? head == nullptr : edit.head != 0) return refused(Refusal::no_such_head);
        if (!accepts(edit.field, edit.value)) return refused(Refusal::out_of_range, edit.field);
        const bool of_rectangle =
            edit.field == Field::image_width || edit.field == Field::image_length;
        if (of_rectangle && !head->image.outline.empty()) {
            return refused(Refusal::out_of_range, edit.field);
        }
        if (changes_what_is_measured(job.press, edit.field)) {
            // The profile whole, because what kind of number it was goes with it.
            SetPress typed{job.press, {}};
            number_of(typed.press, edit.field) = edit.value;
            count_as_typed(typed.press, edit.field);
            return (*this)(typed);
        }
        double& number = number_of(job, head, edit.field);
        const double before = number;
        number = edit.value;
        if (const auto fault = fault_beside(job, head, edit.field)) {
            number = before;
            return refused(fault->refusal, edit.field);
        }
        return undone_by({SetNumber{edit.head, edit.field, before}});
    }

    Applied operator()(const SetStops& edit) const {
        Head* head = find_head(job, edit.head);
        if (head == nullptr) return refused(Refusal::no_such_head);
        if (const auto fault = stops_fault(edit.stops)) return refused(*fault);
        return put(head->stops, edit.stops, {SetStops{edit.head, head->stops}});
    }

    Applied operator()(const SetName& edit) const {
        Head* head = find_head(job, edit.head);
        if (edit.head != 0 && head == nullptr) return refused(Refusal::no_such_head);
        if (!is_name(edit.name)) return refused(Refusal::name_too_long);
        std::string& name = head != nullptr ? head->colour : job.name;
        return put(name, edit.name, {SetName{edit.head, name}});
    }

    Applied operator()(const SetInk& edit) const {
        Head* head = find_head(job, edit.head);
        if (head == nullptr) return refused(Refusal::no_such_head);
        if (edit.ink > 0xFFFFFF) return refused(Refusal::out_of_range);
        return put(head->ink, edit.ink, {SetInk{edit.head, head->ink}});
    }

    Applied operator()(const SetPrintStroke& edit) const {
        Head* head = find_head(job, edit.head);
        if (head == nullptr) return refused(Refusal::no_such_head);
        return put(head->print_stroke, edit.direction,
                   {SetPrintStroke{edit.head, head->print_stroke}});
    }

    Applied operator()(const SetWinged& edit) const {
        Head* head = find_head(job, edit.head);
        if (head == nullptr) return refused(Refusal::no_such_head);
        return put(head->flood.winged, edit.winged, {SetWinged{edit.head, head->flood.winged}});
    }

    Applied operator()(const SetImage& edit) const {
        Head* head = find_head(job, edit.head);
        if (head == nullptr) return refused(Refusal::no_such_head);
        if (const auto fault = image_fault(edit.image)) return refused(*fault);
        return put(head->image, edit.image, {SetImage{edit.head, head->image}});
    }

    Applied operator()(const AddHead& edit) const {
        const Head& head = edit.head;
        if (head.id == 0 || find_head(job, head.id) != nullptr) return refused(Refusal::id_taken);
        if (!has_station(job, head.station)) return refused(Refusal::no_such_station);
        if (head_on(job, head.station) != nullptr ||
            use_of(job, head.station) != StationUse::open) {
            return refused(Refusal::station_taken);
        }
        if (const auto fault = head_fault(head)) return refused(*fault);
        const auto beyond = std::find_if(job.heads.begin(), job.heads.end(),
                                         [&](const Head& h) { return h.station > head.station; });
        job.heads.insert(beyond, head);
        return undone_by({RemoveHead{head.id}});
    }

    Applied operator()(const RemoveHead& edit) const {
        const auto at = std::find_if(job.heads.begin(), job.heads.end(),
                                     [&](const Head& h) { return h.id == edit.head; });
        if (at == job.heads.end()) return refused(Refusal::no_such_head);
        Edit inverse{AddHead{*at}};
        job.heads.erase(at);
        return undone_by(std::move(inverse));
    }

    Applied operator()(const MoveHead& edit) const {
        Head* head = find_head(job, edit.head);
        if (head == nullptr) return refused(Refusal::no_such_head);
        if (!has_station(job, edit.station)) return refused(Refusal::no_such_station);
        if (use_of(job, edit.station) != StationUse::open) return refused(Refusal::station_taken);
        const int before = head->station;
        for (Head& other : job.heads) {
            if (other.station == edit.station) other.station = before;
        }
        head->station = edit.station;
        order_by_station(job.heads);
        return undone_by({MoveHead{edit.head, before}});
    }

    Applied operator()(const SetUse& edit) const {
        if (!has_station(job, edit.station)) return refused(Refusal::no_such_station);
        if (edit.use != StationUse::open && head_on(job, edit.station) != nullptr) {
            return refused(Refusal::station_taken);
        }
        StationUse& use = job.uses[static_cast<std::size_t>(edit.station - 1)];
        return put(use, edit.use, {SetUse{edit.station, use}});
    }

    Applied operator()(const SetPress& edit) const {
        if (const auto fault = fault_of(edit.press)) return refused(*fault);
        std::vector<StationUse> uses = edit.uses.empty() ? job.uses : edit.uses;
        uses.resize(static_cast<std::size_t>(edit.press.stations), StationUse::open);
        for (const Head& head : job.heads) {
            if (head.station < 1 || head.station > edit.press.stations) {
                return refused(Refusal::no_such_station);
            }
            if (uses[static_cast<std::size_t>(head.station - 1)] != StationUse::open) {
                return refused(Refusal::station_taken);
            }
        }
        PressProfile press = edit.press;
        std::swap(job.press, press);
        std::swap(job.uses, uses);
        return undone_by({SetPress{std::move(press), std::move(uses)}});
    }

    Applied operator()(const SetGarment& edit) const {
        return put(job.garment.kind, edit.kind, {SetGarment{job.garment.kind}});
    }

    Applied operator()(const SetBaseHead& edit) const {
        return put(job.registration.base, edit.head, {SetBaseHead{job.registration.base}});
    }

    Applied operator()(const SetHeightStop& edit) const {
        Head* head = find_head(job, edit.head);
        if (head == nullptr) return refused(Refusal::no_such_head);
        bool& on = head->pressure.on_height_stop;
        return put(on, edit.on, {SetHeightStop{edit.head, on}});
    }

    Applied operator()(const SetRounds& edit) const {
        Head* head = find_head(job, edit.head);
        if (head == nullptr) return refused(Refusal::no_such_head);
        if (!are_rounds(edit.rounds)) return refused(Refusal::not_readings);
        return put(head->rounds, edit.rounds, {SetRounds{edit.head, head->rounds}});
    }

    Applied operator()(const SetHeightReadings& edit) const {
        if (!are_height_readings(edit.readings)) return refused(Refusal::not_readings);
        return put(job.height_readings, edit.readings, {SetHeightReadings{job.height_readings}});
    }

    Applied operator()(const SetColourWish& edit) const {
        Head* head = find_head(job, edit.head);
        if (head == nullptr) return refused(Refusal::no_such_head);
        const std::pair<Field, double> numbers[] = {{Field::print_order, edit.wish.order},
                                                    {Field::cool_after, edit.wish.cool_after},
                                                    {Field::screen_on, edit.wish.screen_on}};
        for (const auto& [field, value] : numbers) {
            if (!accepts(field, value)) return refused(Refusal::out_of_range, field);
        }
        return put(head->wish, edit.wish, {SetColourWish{edit.head, head->wish}});
    }

    Applied operator()(const SetBladeEdge& edit) const {
        Head* head = find_head(job, edit.head);
        if (head == nullptr) return refused(Refusal::no_such_head);
        BladeEdge& edge = head->squeegee.edge;
        return put(edge, edit.edge, {SetBladeEdge{edit.head, edge}});
    }

    Applied operator()(const SetNote& edit) const {
        const bool of_head = edit.note == Note::ink || edit.note == Note::stencil;
        Head* head = find_head(job, edit.head);
        if (of_head ? head == nullptr : edit.head != 0) return refused(Refusal::no_such_head);
        if (!is_name(edit.text)) return refused(Refusal::name_too_long);
        std::string& text = edit.note == Note::ink       ? head->notes.ink
                            : edit.note == Note::stencil ? head->notes.stencil
                            : edit.note == Note::garment ? job.garment.name
                                                         : job.record.notes;
        return put(text, edit.text, {SetNote{edit.head, edit.note, text}});
    }

    Applied operator()(const SetWalkMark& edit) const {
        if (!is_walk_mark(edit.mark)) return refused(Refusal::not_a_record);
        const auto at =
            std::lower_bound(job.walk.begin(), job.walk.end(), edit.mark, walk_before);
        const bool found = at != job.walk.end() && !walk_before(edit.mark, *at);
        const SetWalkMark inverse = found ? SetWalkMark{*at, true} : SetWalkMark{edit.mark, false};
        if (!edit.there) {
            if (found) job.walk.erase(at);
        } else if (found) {
            *at = edit.mark;
        } else if (job.walk.size() >= most_walk_marks) {
            return refused(Refusal::not_a_record);
        } else {
            job.walk.insert(at, edit.mark);
        }
        return undone_by({inverse});
    }

    Applied operator()(const SetWalk& edit) const {
        if (!is_walk(edit.marks)) return refused(Refusal::not_a_record);
        return put(job.walk, edit.marks, {SetWalk{job.walk}});
    }

    Applied operator()(const SetRecord& edit) const {
        if (!is_record(edit.record)) return refused(Refusal::not_a_record);
        return put(job.record, edit.record, {SetRecord{job.record}});
    }

    Applied operator()(const Together& edit) const {
        if (depth >= deepest_together) return refused(Refusal::too_deep);
        Job before = job;
        Together inverse;
        inverse.edits.reserve(edit.edits.size());
        for (const Edit& part : edit.edits) {
            Applied applied = std::visit(Applier{job, depth + 1}, part.what);
            if (!applied) {
                std::swap(job, before);
                return applied;
            }
            inverse.edits.push_back(std::move(*applied.inverse));
        }
        std::reverse(inverse.edits.begin(), inverse.edits.end());
        return undone_by({std::move(inverse)});
    }
};

}  // namespace

Applied apply(Job& job, const Edit& edit) {
    return std::visit(Applier{job, 0}, edit.what);
}

}  // namespace carriageway
