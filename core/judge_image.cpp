#include <algorithm>
#include <array>

#include "core/judge.h"

namespace carriageway {
namespace {

/// How far missed image of one kind reaches beyond each edge of the band that misses it, mm; at
/// most the missed piece's own extent, so that a strip counts once whichever blade misses more.
struct Missed {
    double operator_side = 0.0;
    double machine_side = 0.0;
    double left = 0.0;
    double right = 0.0;

    void take_in(const Rect& piece, const Rect& band) {
        operator_side = std::max(operator_side, std::min(band.lo, piece.hi) - piece.lo);
        machine_side = std::max(machine_side, piece.hi - std::max(band.hi, piece.lo));
        left = std::max(left, std::min(band.left, piece.right) - piece.left);
        right = std::max(right, piece.right - std::max(band.right, piece.left));
    }
};

/// In MissKind's order.
using MissedKinds = std::array<Missed, 3>;

MissedKinds missed_kinds(const HeadAssessment& out) {
    MissedKinds kinds;
    for (const MissedPiece& piece : out.coverage.pieces) {
        const bool unprinted = piece.kind == MissKind::unprinted;
        kinds[static_cast<std::size_t>(piece.kind)].take_in(piece.bounds,
                                                            unprinted ? out.squeegee : out.flood);
    }
    return kinds;
}

void add_missed(const Judged& judged, MissKind kind, const Missed& missed) {
    const bool unprinted = kind == MissKind::unprinted;
    const FindingKind said = unprinted                 ? FindingKind::unprinted
                             : kind == MissKind::heavy ? FindingKind::heavy
                                                       : FindingKind::starved;
    const Part part = unprinted ? Part::squeegee : Part::flood;
    const auto add = [&](Side side, double value, const Remedy& remedy) {
        if (value > least_difference) {
            judged.add(Severity::stop, said, part, side, value, 0.0, remedy);
        }
    };
    add(Side::operator_side, missed.operator_side, stop_remedy(judged, End::operator_side));
    add(Side::machine_side, missed.machine_side, stop_remedy(judged, End::machine_side));
    add(Side::left, missed.left, {});
    add(Side::right, missed.right, {});
}

/// Image that is covered, but with less to spare at an end than wanted. Where it is missed at that
/// end, that is said already.
void judge_run_past(const Judged& judged, End end, double run_past) {
    const double wish = judged.job.wishes.run_past;
    if (run_past < -least_difference || run_past >= wish - least_difference) return;
    const HeadAssessment& out = judged.out;
    const bool squeegee = end == End::operator_side ? out.squeegee.lo >= out.flood.lo
                                                    : out.squeegee.hi <= out.flood.hi;
    judged.add(Severity::mind, FindingKind::run_past_short, squeegee ? Part::squeegee : Part::flood,
               side_of(end), run_past, wish, stop_remedy(judged, end));
}

}  // namespace

void judge_image(const Judged& judged) {
    // A head with both sensors on goes nowhere: everything else about its image follows from that.
    const HeadAssessment& out = judged.out;
    if (out.both_on) return;
    const MissedKinds kinds = missed_kinds(out);
    for (const MissKind kind : {MissKind::unprinted, MissKind::starved, MissKind::heavy}) {
        add_missed(judged, kind, kinds[static_cast<std::size_t>(kind)]);
    }
    judge_run_past(judged, End::operator_side, out.operator_run_past);
    judge_run_past(judged, End::machine_side, out.machine_run_past);
    const bool covered =
        std::none_of(out.findings.begin(), out.findings.end(),
                     [](const Finding& f) { return f.severity == Severity::stop; });
    if (covered && out.chance_missed >= chance_to_mind) {
        judged.add(Severity::mind, FindingKind::miss_likely, Part::image, Side::both,
                   out.chance_missed, chance_to_mind, stops_remedy(judged));
    }
}

}  // namespace carriageway
