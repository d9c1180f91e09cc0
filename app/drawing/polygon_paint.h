// Convex polygons and hatching as triangles, where Dear ImGui's own polygons would leave seams.
//
// Unit: pixels. A polygon may run either way round; fewer than three distinct corners paint nothing.
#pragma once

#include <cstdint>
#include <vector>

#include "app/drawing/box.h"

struct ImDrawList;

namespace carriageway {

/// Parallel lines. Line k lies where the distance from the screen's origin along the normal
/// (-sin angle, cos angle) is k·spacing + phase, so that hatching runs on through neighbours.
struct Hatch {
    float angle = 0.0f; ///< rad, of the lines; from x toward y, which is clockwise on screen
    float spacing = 8.0f;
    float width = 1.0f;
    float phase = 0.0f;
};

/// Paints polygons into a draw list; keeps its working storage from one to the next. Colours are
/// Dear ImGui's packed ones.
class PolygonPaint {
public:
    /// Begins to paint into `draw`; `white` is where its texture is white.
    void begin(ImDrawList& draw, Vec white);

    /// An opaque polygon whose soft edge lies outside it, so that two with a common side hide that
    /// side wholly.
    void fill_soft(const Vec* corners, int count, std::uint32_t colour);

    /// A polygon of which each pixel is painted once or not at all: for see-through colours, where
    /// neighbours may neither overlap nor leave a gap.
    void fill_hard(const Vec* corners, int count, std::uint32_t colour);

    /// Hatching that ends exactly at the polygon's sides; only what may show in `shown` is made.
    /// Lines closer than two pixels, or as wide as their spacing, become an even tint. A hatch
    /// without a width or spacing above 0, or with a number that is not finite, paints nothing.
    void hatch(const Vec* corners, int count, std::uint32_t colour, const Hatch& hatch,
               const Box& shown);

private:
    /// Across a hatch: where the lines' opacity is 0 or full, and how full.
    struct Profile {
        std::uint32_t colour;
        Vec normal;
        float core, outer, peak;
    };
    /// A point, and how far along the hatch's normal it lies.
    struct Reached {
        Vec at;
        float by;
    };
    /// One of the two ways round the polygon from its lowest corner along the normal to its highest.
    struct Side {
        std::vector<Reached> corners;
        std::size_t at = 0; ///< the corner last passed
        void pass(float level);         ///< moves on, or back, to the corner before this level
        Vec point(float level) const;   ///< at a level between that corner and the next
        /// Adds to `out` what this side has from `lo` to `hi`, both ends included.
        void take(float lo, float hi, std::vector<Reached>& out);
    };

    class Writer;

    void take_distinct(const Vec* corners, int count);
    void take_sides(Vec normal);
    void line(const Profile& profile, float level);
    bool plain_line(const Profile& profile, float level);
    void band(const Profile& profile, float level, float from, float to);

    ImDrawList* draw_ = nullptr;
    Vec white_;
    std::vector<Vec> corners_; ///< of the polygon being painted
    std::vector<Vec> normals_; ///< of its sides, outward
    std::vector<Reached> reached_; ///< all corners of the polygon being hatched
    Side one_, other_;
    std::vector<Reached> up_, down_; ///< of the band being painted, one side and the other
};

} // namespace carriageway
