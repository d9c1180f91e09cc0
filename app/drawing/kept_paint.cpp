#include "app/drawing/kept_paint.h"

#include <imgui.h>

#include <algorithm>
#include <string>

namespace carriageway {

/// A run as it was, and its triangles; indices count from the run's first corner.
struct KeptPaint::Kept {
    std::vector<Mark> marks;
    std::vector<Vec> points;
    std::string words;
    Box clip;
    std::vector<ImDrawVert> corners;
    std::vector<ImDrawIdx> indices;
    bool painted = false; ///< corners and indices are those of the marks

    bool same(const MarkRun& run) const;
    void take(const MarkRun& run);
};

namespace {

/// Room for a little more than was needed, so that a mark more in the next frame takes no memory.
template <class Item>
void make_room(std::vector<Item>& items, std::size_t count) {
    if (items.capacity() < count) items.reserve(count + count / 2);
}

struct Span {
    const Mark* begin;
    const Mark* end;
    const Vec* points;
    std::size_t point_count;
};

/// A run's marks follow each other, and so do their points.
Span span_of(const MarkRun& run) {
    const Mark* marks = run.list->marks().data();
    const Mark &first = marks[run.first], &last = marks[run.last - 1];
    return {&first, &last + 1, run.list->points(first), last.first + last.count - first.first};
}

/// Where a mark's points, words and clip lie in their list, and which part it is of, say nothing about
/// how it looks; the clip itself is compared for the run.
bool looks_same(Mark mark, const Mark& kept) {
    mark.first = kept.first;
    mark.text = kept.text;
    mark.clip = kept.clip;
    mark.part = kept.part;
    return mark == kept;
}

} // namespace

bool KeptPaint::Kept::same(const MarkRun& run) const {
    const Span span = span_of(run);
    if (marks.size() != run.last - run.first || points.size() != span.point_count || !(clip == run.clip))
        return false;
    if (!std::equal(span.begin, span.end, marks.begin(), looks_same)) return false;
    if (!std::equal(points.begin(), points.end(), span.points)) return false;
    std::size_t at = 0;
    for (const Mark* mark = span.begin; mark != span.end; ++mark) {
        if (mark->text_length == 0) continue;
        if (words.compare(at, mark->text_length, run.list->words(*mark)) != 0) return false;
        at += mark->text_length;
    }
    return true;
}

void KeptPaint::Kept::take(const MarkRun& run) {
    const Span span = span_of(run);
    make_room(marks, run.last - run.first);
    make_room(points, span.point_count);
    marks.assign(span.begin, span.end);
    points.assign(span.points, span.points + span.point_count);
    words.clear();
    for (const Mark& mark : marks)
        if (mark.text_length > 0) words += run.list->words(mark);
    clip = run.clip;
}

KeptPaint::KeptPaint() = default;
KeptPaint::~KeptPaint() = default;

void KeptPaint::begin(const PaintedWith& with) {
    if (!(with == with_)) kept_.clear();
    with_ = with;
    next_ = 0;
    repeated_ = 0;
}

bool KeptPaint::repeat(const MarkRun& run, ImDrawList& draw) {
    if (next_ == kept_.size()) kept_.emplace_back();
    const Kept& kept = kept_[next_++];
    if (kept.painted && kept.same(run)) {
        ++repeated_;
        const int corners = static_cast<int>(kept.corners.size());
        const int indices = static_cast<int>(kept.indices.size());
        if (indices == 0) return true;
        draw.PrimReserve(indices, corners);
        std::copy(kept.corners.begin(), kept.corners.end(), draw._VtxWritePtr);
        const unsigned base = draw._VtxCurrentIdx;
        std::transform(kept.indices.begin(), kept.indices.end(), draw._IdxWritePtr,
                       [base](ImDrawIdx index) { return static_cast<ImDrawIdx>(base + index); });
        draw._VtxWritePtr += corners;
        draw._IdxWritePtr += indices;
        draw._VtxCurrentIdx += static_cast<unsigned>(corners);
        return true;
    }
    before_ = {draw.VtxBuffer.Size, draw.IdxBuffer.Size, draw.CmdBuffer.Size, draw._VtxCurrentIdx,
               draw._CmdHeader.VtxOffset};
    return false;
}

void KeptPaint::keep(const MarkRun& run, const ImDrawList& draw) {
    Kept& kept = kept_[next_ - 1];
    kept.take(run);
    // A run during which Dear ImGui began a new command for lack of indices is in two pieces: it is
    // painted anew each time.
    kept.painted = draw._CmdHeader.VtxOffset == before_.offset && draw.CmdBuffer.Size == before_.commands;
    if (!kept.painted) return;
    const auto indices = static_cast<std::size_t>(draw.IdxBuffer.Size - before_.indices);
    make_room(kept.corners, static_cast<std::size_t>(draw.VtxBuffer.Size - before_.corners));
    make_room(kept.indices, indices);
    kept.corners.assign(draw.VtxBuffer.begin() + before_.corners, draw.VtxBuffer.end());
    kept.indices.resize(indices);
    std::transform(draw.IdxBuffer.begin() + before_.indices, draw.IdxBuffer.end(), kept.indices.begin(),
                   [base = before_.base](ImDrawIdx index) { return static_cast<ImDrawIdx>(index - base); });
}

} // namespace carriageway
