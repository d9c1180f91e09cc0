// Regions of the plane, worked out by GEOS.
#pragma once

#include <memory>
#include <vector>

#include "core/coverage.h"

struct GEOSGeom_t;

namespace carriageway::reference {

/// A set of polygons in the hands of GEOS; may be empty.
class Region {
  public:
    explicit Region(const Outline& outline);
    explicit Region(const Rect& rect); ///< an empty rectangle gives an empty region

    /// The region grown by everything it passes over when it moves by up to ±distance along y: the
    /// union with the parallelogram that each edge sweeps.
    Region swept_along(double distance) const;

    /// Every side moved outward by `distance`, or inward where it is negative; corners stay corners.
    Region offset(double distance) const;

    Region common(const Region& other) const;
    Region without(const Region& other) const;

    bool valid() const; ///< whether GEOS takes it for a simple polygon
    double area() const;

    /// One connected part.
    struct Part {
        double area = 0.0;
        Rect bounds;
        bool has_hole = false;
    };
    /// The connected parts; parts that meet in a point only are two.
    std::vector<Part> parts() const;

  private:
    struct Destroy {
        void operator()(GEOSGeom_t* geometry) const;
    };
    explicit Region(GEOSGeom_t* owned);
    std::unique_ptr<GEOSGeom_t, Destroy> geometry_;
};

/// What the bands cover of an image, by GEOS.
struct RegionCoverage {
    double image_area = 0.0;
    double covered_area = 0.0;
    std::vector<Region::Part> pieces[3]; ///< by MissKind, all of them however small
};
RegionCoverage region_coverage(const Region& image, const Bands& bands);

} // namespace carriageway::reference
