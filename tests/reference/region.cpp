#include "tests/reference/region.h"

#include <geos_c.h>

#include <algorithm>
#include <stdexcept>

namespace carriageway::reference {

namespace {

GEOSContextHandle_t context() {
    static const GEOSContextHandle_t handle = GEOS_init_r();
    return handle;
}

/// What GEOS returned, or an exception where it returned nothing.
GEOSGeometry* got(GEOSGeometry* geometry, const char* what) {
    if (geometry == nullptr) throw std::runtime_error(std::string("GEOS failed: ") + what);
    return geometry;
}

GEOSGeometry* polygon(const Point* corners, std::size_t count) {
    std::vector<double> ring;
    for (std::size_t i = 0; i <= count; ++i) {
        ring.push_back(corners[i % count].x);
        ring.push_back(corners[i % count].y);
    }
    GEOSCoordSequence* sequence = GEOSCoordSeq_copyFromBuffer_r(
        context(), ring.data(), static_cast<unsigned>(count + 1), 0, 0);
    GEOSGeometry* shell = got(GEOSGeom_createLinearRing_r(context(), sequence), "ring");
    return got(GEOSGeom_createPolygon_r(context(), shell, nullptr, 0), "polygon");
}

void collect_rings(const GEOSGeometry* geometry, std::vector<Outline>& rings);

void collect_ring(const GEOSGeometry* ring, std::vector<Outline>& rings) {
    const GEOSCoordSequence* sequence = GEOSGeom_getCoordSeq_r(context(), ring);
    unsigned size = 0;
    GEOSCoordSeq_getSize_r(context(), sequence, &size);
    Outline corners(size);
    for (unsigned i = 0; i < size; ++i)
        GEOSCoordSeq_getXY_r(context(), sequence, i, &corners[i].x, &corners[i].y);
    rings.push_back(std::move(corners));
}

void collect_rings(const GEOSGeometry* geometry, std::vector<Outline>& rings) {
    if (GEOSGeomTypeId_r(context(), geometry) == GEOS_POLYGON) {
        collect_ring(GEOSGetExteriorRing_r(context(), geometry), rings);
        const int holes = GEOSGetNumInteriorRings_r(context(), geometry);
        for (int i = 0; i < holes; ++i)
            collect_ring(GEOSGetInteriorRingN_r(context(), geometry, i), rings);
    } else {
        const int count = GEOSGetNumGeometries_r(context(), geometry);
        for (int i = 0; i < count; ++i)
            collect_rings(GEOSGetGeometryN_r(context(), geometry, i), rings);
    }
}

void collect_parts(const GEOSGeometry* geometry, std::vector<Region::Part>& parts) {
    const int type = GEOSGeomTypeId_r(context(), geometry);
    if (type == GEOS_POLYGON) {
        if (GEOSisEmpty_r(context(), geometry) == 1) return;
        Region::Part part;
        GEOSArea_r(context(), geometry, &part.area);
        GEOSGeom_getXMin_r(context(), geometry, &part.bounds.left);
        GEOSGeom_getXMax_r(context(), geometry, &part.bounds.right);
        GEOSGeom_getYMin_r(context(), geometry, &part.bounds.lo);
        GEOSGeom_getYMax_r(context(), geometry, &part.bounds.hi);
        part.has_hole = GEOSGetNumInteriorRings_r(context(), geometry) > 0;
        parts.push_back(part);
    } else if (type == GEOS_MULTIPOLYGON || type == GEOS_GEOMETRYCOLLECTION) {
        const int count = GEOSGetNumGeometries_r(context(), geometry);
        for (int i = 0; i < count; ++i)
            collect_parts(GEOSGetGeometryN_r(context(), geometry, i), parts);
    }
}

constexpr double far_away = 1e5;

Rect overlap(const Rect& a, const Rect& b) {
    return {std::max(a.left, b.left), std::min(a.right, b.right), std::max(a.lo, b.lo),
            std::min(a.hi, b.hi)};
}

} // namespace

void Region::Destroy::operator()(GEOSGeom_t* geometry) const {
    GEOSGeom_destroy_r(context(), geometry);
}

Region::Region(GEOSGeom_t* owned) : geometry_(owned) {}

Region::Region(const Outline& outline) : geometry_(polygon(outline.data(), outline.size())) {}

Region::Region(const Rect& rect) {
    const Point corners[] = {
        {rect.left, rect.lo}, {rect.right, rect.lo}, {rect.right, rect.hi}, {rect.left, rect.hi}};
    geometry_.reset(rect.empty() ? got(GEOSGeom_createEmptyPolygon_r(context()), "empty polygon")
                                 : polygon(corners, 4));
}

Region Region::swept_along(double distance) const {
    std::vector<Outline> rings;
    collect_rings(geometry_.get(), rings);
    std::vector<GEOSGeometry*> members{
        got(GEOSGeom_clone_r(context(), geometry_.get()), "clone")};
    for (const Outline& ring : rings)
        for (std::size_t i = 0; i + 1 < ring.size(); ++i) {
            const Point a = ring[i], b = ring[i + 1];
            if (a.x == b.x || distance == 0.0) continue; // sweeps a line along itself
            const Point corners[] = {{a.x, a.y - distance},
                                     {b.x, b.y - distance},
                                     {b.x, b.y + distance},
                                     {a.x, a.y + distance}};
            members.push_back(polygon(corners, 4));
        }
    // An upright edge sweeps no area, but what lies above and below it is swept by no other edge
    // than its neighbours: they share its corners, so nothing is missing.
    const Region all(got(GEOSGeom_createCollection_r(context(), GEOS_GEOMETRYCOLLECTION,
                                                     members.data(),
                                                     static_cast<unsigned>(members.size())),
                         "collection"));
    return Region(got(GEOSUnaryUnion_r(context(), all.geometry_.get()), "union"));
}

Region Region::offset(double distance) const {
    return Region(got(GEOSBufferWithStyle_r(context(), geometry_.get(), distance, 1, GEOSBUF_CAP_FLAT,
                                            GEOSBUF_JOIN_MITRE, 2.0),
                      "buffer"));
}

Region Region::common(const Region& other) const {
    return Region(got(
        GEOSIntersection_r(context(), geometry_.get(), other.geometry_.get()), "intersection"));
}

Region Region::without(const Region& other) const {
    return Region(
        got(GEOSDifference_r(context(), geometry_.get(), other.geometry_.get()), "difference"));
}

bool Region::valid() const { return GEOSisValid_r(context(), geometry_.get()) == 1; }

double Region::area() const {
    double area = 0.0;
    if (GEOSArea_r(context(), geometry_.get(), &area) != 1)
        throw std::runtime_error("GEOS failed: area");
    return area;
}

std::vector<Region::Part> Region::parts() const {
    std::vector<Part> parts;
    collect_parts(geometry_.get(), parts);
    return parts;
}

RegionCoverage region_coverage(const Region& image, const Bands& bands) {
    const Rect squeegee = bands.moves ? bands.squeegee : Rect{};
    const Rect flood = bands.moves ? bands.flood : Rect{};
    // Beyond the end where the flood finishes; a flood that passes nowhere leaves no bead.
    Rect beyond;
    if (!flood.empty() && bands.flood_finish == End::machine_side)
        beyond = {-far_away, far_away, flood.hi, far_away};
    if (!flood.empty() && bands.flood_finish == End::operator_side)
        beyond = {-far_away, far_away, -far_away, flood.lo};
    const Rect heavy = beyond.empty() ? Rect{} : overlap(squeegee, beyond);

    RegionCoverage result;
    result.image_area = image.area();
    result.covered_area = image.common(Region(overlap(squeegee, flood))).area();
    const Region unflooded = Region(squeegee).without(Region(flood)).without(Region(heavy));
    const auto parts_of = [&result](MissKind kind) -> std::vector<Region::Part>& {
        return result.pieces[static_cast<std::size_t>(kind)];
    };
    parts_of(MissKind::unprinted) = image.without(Region(squeegee)).parts();
    parts_of(MissKind::starved) = image.common(unflooded).parts();
    parts_of(MissKind::heavy) = image.common(Region(heavy)).parts();
    return result;
}

} // namespace carriageway::reference
