#include "core/judge.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace carriageway {
namespace {

bool same(const Stops& a, const Stops& b) {
    return std::abs(a.operator_side - b.operator_side) < least_difference &&
           std::abs(a.machine_side - b.machine_side) < least_difference;
}

bool within(const StopInterval& interval, double at) {
    return at >= interval.lo - least_difference && at <= interval.hi + least_difference;
}

bool within(const AllowedSet& allowed, const Stops& stops) {
    return within(allowed.operator_side, stops.operator_side) &&
           within(allowed.machine_side, stops.machine_side) &&
           separation(stops) >= allowed.least_gap - least_difference;
}

Remedy moved_to(const Judged& judged, const Stops& stops) {
    if (same(stops, judged.head.stops)) return {};
    Remedy remedy;
    remedy.kind = Remedy::Kind::stops;
    remedy.stops = stops;
    return remedy;
}

}  // namespace

void Judged::add(Severity severity, FindingKind kind, Part part, Side side, double value,
                 double limit, Remedy remedy) const {
    out.findings.push_back({severity, kind, head.id, part, side, value, limit, remedy});
}

Remedy stops_remedy(const Judged& judged) {
    return judged.out.advised ? moved_to(judged, *judged.out.advised) : Remedy{};
}

Remedy stop_remedy(const Judged& judged, End end) {
    if (!judged.out.advised) return {};
    const Stops& advised = *judged.out.advised;
    Stops one = judged.head.stops;
    if (end == End::operator_side) {
        one.operator_side = advised.operator_side;
    } else {
        one.machine_side = advised.machine_side;
    }
    return moved_to(judged, within(judged.out.allowed, one) ? one : advised);
}

Remedy number_remedy(Field field, double value) {
    if (!accepts(field, value)) return {};
    Remedy remedy;
    remedy.kind = Remedy::Kind::number;
    remedy.field = field;
    remedy.value = value;
    return remedy;
}

void judge(const Job& job, const Head& head, HeadAssessment& out) {
    out.findings.clear();
    out.findings.reserve(most_findings);
    const Judged judged{job, head, out};
    judge_image(judged);
    judge_parts(judged);
    judge_stops(judged);
    judge_contact(judged);
    const auto rank = [](const Finding& f) {
        return std::make_tuple(f.severity, f.kind, f.side, f.part, f.value);
    };
    std::sort(out.findings.begin(), out.findings.end(),
              [&rank](const Finding& a, const Finding& b) { return rank(a) < rank(b); });
    out.fit = std::none_of(out.findings.begin(), out.findings.end(),
                           [](const Finding& f) { return f.severity == Severity::stop; });
}

}  // namespace carriageway
