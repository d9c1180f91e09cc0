#include "core/job_changes.h"

#include <algorithm>
#include <tuple>
#include <utility>

#include "core/head_contact.h"
#include "core/walk.h"

namespace carriageway {
namespace {

constexpr JobPart texts_of_head[] = {JobPart::colour, JobPart::ink_note, JobPart::stencil_note};
constexpr JobPart choices_of_head[] = {
    JobPart::ink,         JobPart::print_stroke,   JobPart::winged,     JobPart::height_stop,
    JobPart::blade_edge,  JobPart::flash_after,    JobPart::flash_together,
    JobPart::wet_on_wet,  JobPart::pinned};

const std::string& text_of(const Job& job, const Head* head, JobPart part) {
    switch (part) {
        case JobPart::colour: return head->colour;
        case JobPart::ink_note: return head->notes.ink;
        case JobPart::stencil_note: return head->notes.stencil;
        case JobPart::garment_name: return job.garment.name;
        default: return job.name;
    }
}

double choice_of(const Job& job, const Head* head, JobPart part) {
    switch (part) {
        case JobPart::ink: return head->ink;
        case JobPart::print_stroke: return static_cast<double>(head->print_stroke);
        case JobPart::winged: return head->flood.winged;
        case JobPart::height_stop: return head->pressure.on_height_stop;
        case JobPart::blade_edge: return static_cast<double>(head->squeegee.edge);
        case JobPart::flash_after: return head->wish.flash_after;
        case JobPart::flash_together: return head->wish.flash_together;
        case JobPart::wet_on_wet: return head->wish.wet_on_wet;
        case JobPart::pinned: return head->wish.pinned;
        default: return static_cast<double>(job.garment.kind);
    }
}

/// Whether a text or choice decides how a print comes out.
bool decides_the_print(JobPart part) {
    switch (part) {
        case JobPart::print_stroke:
        case JobPart::winged:
        case JobPart::height_stop:
        case JobPart::blade_edge:
        case JobPart::outline:
        case JobPart::garment_kind:
            return true;
        default:
            return false;
    }
}

/// Compares two jobs, or two heads of them, and gathers what differs.
struct Comparer {
    const Job& a;
    const Job& b;
    const CompareBy& by;
    std::vector<JobDifference>& out;
    const Head* head_a = nullptr; ///< none: the jobs themselves
    const Head* head_b = nullptr;

    JobDifference difference(DifferenceKind kind) const {
        JobDifference one;
        one.kind = kind;
        if (head_b != nullptr) {
            one.head_b = head_b->id;
            one.station = head_b->station;
        }
        if (head_a != nullptr) {
            one.head_a = head_a->id;
            one.station = head_a->station;
        }
        return one;
    }

    bool is_wanted(JobPart part) const { return !by.what_matters || decides_the_print(part); }

    void add_text(JobPart part) const {
        if (!is_wanted(part)) return;
        JobDifference one = difference(DifferenceKind::text);
        one.part = part;
        one.text_a = text_of(a, head_a, part);
        one.text_b = text_of(b, head_b, part);
        if (one.text_a != one.text_b) out.push_back(std::move(one));
    }

    void add_choice(JobPart part) const {
        if (!is_wanted(part)) return;
        JobDifference one = difference(DifferenceKind::choice);
        one.part = part;
        one.a = choice_of(a, head_a, part);
        one.b = choice_of(b, head_b, part);
        if (one.a != one.b) out.push_back(std::move(one));
    }

    void add_numbers(FieldOwner owner) const {
        const bool outlines = head_a != nullptr && !head_a->image.outline.empty() &&
                              !head_b->image.outline.empty();
        for (int i = 0; i < static_cast<int>(Field::count); ++i) {
            const auto field = static_cast<Field>(i);
            if (info_of(field).owner != owner) continue;
            if (by.what_matters && !carriageway::decides_the_print(field)) continue;
            // The rectangle's numbers mean nothing where both have an outline.
            const bool of_rectangle = field == Field::image_width || field == Field::image_length;
            if (outlines && of_rectangle) continue;
            JobDifference one = difference(DifferenceKind::number);
            one.field = field;
            one.a = number_of(a, head_a, field);
            one.b = number_of(b, head_b, field);
            if (one.a != one.b) out.push_back(std::move(one));
        }
    }

    void add_station() const {
        JobDifference one = difference(DifferenceKind::station);
        one.a = head_a->station;
        one.b = head_b->station;
        if (one.a != one.b) out.push_back(std::move(one));
    }

    void add_outline() const {
        if (same_part(a, head_a, b, head_b, JobPart::outline)) return;
        JobDifference one = difference(DifferenceKind::outline);
        one.part = JobPart::outline;
        out.push_back(std::move(one));
    }

    void add_head() const {
        if (head_a == nullptr || head_b == nullptr) {
            out.push_back(difference(head_b == nullptr ? DifferenceKind::head_only_in_a
                                                       : DifferenceKind::head_only_in_b));
            return;
        }
        add_station();
        for (const JobPart part : texts_of_head)
            add_text(part);
        for (const JobPart part : choices_of_head)
            add_choice(part);
        add_outline();
        add_numbers(FieldOwner::head);
    }

    /// Stations beyond the smaller press's are used for nothing there, as if they were open.
    void add_uses() const {
        for (std::size_t i = 0; i < std::max(a.uses.size(), b.uses.size()); ++i) {
            const auto use_in = [i](const Job& job) {
                return i < job.uses.size() ? job.uses[i] : StationUse::open;
            };
            if (use_in(a) == use_in(b)) continue;
            JobDifference one = difference(DifferenceKind::use);
            one.station = static_cast<int>(i) + 1;
            one.a = static_cast<double>(use_in(a));
            one.b = static_cast<double>(use_in(b));
            out.push_back(std::move(one));
        }
    }

    /// The head that the others are set by, as it goes together with one of the other job.
    void add_base(const std::vector<HeadPair>& pairs) const {
        if (!is_wanted(JobPart::base_head)) return;
        const Head* base_a = base_head(a);
        const Head* base_b = base_head(b);
        JobDifference one = difference(DifferenceKind::choice);
        one.part = JobPart::base_head;
        one.a = base_a != nullptr ? base_a->id : 0;
        one.b = base_b != nullptr ? base_b->id : 0;
        const bool together = std::any_of(pairs.begin(), pairs.end(), [&](const HeadPair& pair) {
            return pair.a == *one.a && pair.b == *one.b;
        });
        const bool none = base_a == nullptr && base_b == nullptr;
        if (!together && !none) out.push_back(std::move(one));
    }

    void add_job(const std::vector<HeadPair>& pairs) const {
        add_uses();
        add_text(JobPart::name);
        add_text(JobPart::garment_name);
        add_choice(JobPart::garment_kind);
        add_base(pairs);
        add_numbers(FieldOwner::job);
    }
};

std::vector<JobDifference> compare(const Job& a, const Job& b, const CompareBy& by) {
    std::vector<JobDifference> out;
    std::vector<HeadPair> pairs = match_heads(a, b);
    const auto place = [&](const HeadPair& pair) {
        const Head* head = pair.a != 0 ? find_head(a, pair.a) : find_head(b, pair.b);
        // Of two on one station, a's comes before one that only b has.
        return std::tuple(head != nullptr ? head->station : 0, pair.a == 0);
    };
    std::stable_sort(pairs.begin(), pairs.end(), [&](const HeadPair& one, const HeadPair& other) {
        return place(one) < place(other);
    });
    for (const HeadPair& pair : pairs) {
        Comparer{a, b, by, out, find_head(a, pair.a), find_head(b, pair.b)}.add_head();
    }
    Comparer{a, b, by, out}.add_job(pairs);
    return out;
}

} // namespace

bool decides_the_print(Field field) {
    switch (field) {
        case Field::print_order:
        case Field::cool_after:
        case Field::screen_on:
        case Field::run_past:
        case Field::side_overlap:
        case Field::registration_tolerance:
        case Field::pieces:
        case Field::load_time:
        case Field::unload_time:
        case Field::friction:
        case Field::mesh_stiffness:
        case Field::transfer_share:
        case Field::second_stroke_share:
        case Field::ink_in_screen:
        case Field::waste_share:
            return false;
        default:
            return field >= Field{} && field < Field::count &&
                   info_of(field).owner != FieldOwner::press;
    }
}

std::vector<JobDifference> job_changes(const Job& a, const Job& b, const CompareBy& by) {
    return by.as_set ? compare(as_set(a), as_set(b), by) : compare(a, b, by);
}

} // namespace carriageway
