// How single conditions are looked up. Serves fault_evidence.cpp.
#pragma once

#include <span>

#include "core/fault_evidence.h"

namespace carriageway {

/// A head looked at.
struct LookedAt {
    const Job& job;
    const Head& head;
    const HeadAssessment& worked;
};

/// A condition that is seen where `value` lies above `limit`, or below it, by more than rounding.
Sighting seen_above(double value, double limit);
Sighting seen_below(double value, double limit);

/// A condition without a number.
inline Sighting seen_if(bool seen) { return {seen ? Sight::seen : Sight::not_seen}; }

/// Of the stroke, the stops and what is covered; not_known for other conditions, as below.
Sighting stroke_sighting(Evidence evidence, const LookedAt& at);

/// Of blades, pressure, screen and mesh.
Sighting contact_sighting(Evidence evidence, const LookedAt& at);

/// Of what was read on the prints of a head.
Sighting print_sighting(Evidence evidence, const LookedAt& at);

/// Of flashes and the order of the heads.
Sighting order_sighting(Evidence evidence, const LookedAt& at);

/// Of the run, its record and the walk, of one head (0: of any).
Sighting run_sighting(Evidence evidence, const Job& job, HeadId head);

/// The one that speaks loudest: seen before not known before not seen; of several the farthest
/// beyond its limit, or nearest to it. None: not known.
Sighting loudest(std::span<const Sighting> sightings);

} // namespace carriageway
