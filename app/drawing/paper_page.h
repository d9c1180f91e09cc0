// Pages of a sheet as they are filled from top to bottom: margins, a line at the head and at the
// foot of each, paragraphs, and where a new page begins. Unit: dp; five of them are a millimetre.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "app/drawing/drawing_list.h"
#include "app/drawing/paper_type.h"

namespace carriageway {

/// How large a dp is on paper: letters of the size `small` then measure 7.4 points.
inline constexpr double paper_mm_per_dp = 0.2;

/// What stands on every page besides its contents.
struct PaperFrame {
    std::string left, right; ///< at its head, from the second page on
    std::string foot;        ///< at its foot, beside its number
};

enum class PaperSide { left, middle, right };

class PaperPages {
public:
    /// Size of the paper in mm. Begins the first page. `type` must outlive this and the lists.
    PaperPages(double width, double height, PaperFrame frame, PaperType& type);

    DrawingList& list() { return lists_.back(); }
    PaperType& type() { return type_; }
    const PaperType& type() const { return type_; }
    /// Where contents may stand on this page.
    const Box& area() const { return area_; }
    float room() const { return area_.y1 - y; }
    std::size_t count() const { return lists_.size(); }

    void new_page();
    /// A new page, unless so much is left of this one or nothing stands on it yet.
    void need(float height);
    /// Called at the top of every new page, for what is said again there; may be empty.
    std::function<void()> again;

    std::vector<std::string_view> lines(std::string_view words, TypeStyle style, float width) const;
    float height(std::string_view words, TypeStyle style, float width) const;
    /// Words in as many lines as they need, from `at` down; returns their height.
    float paragraph(Vec at, float width, std::string_view words, TypeStyle style,
                    Role role = Role::ink, PaperSide side = PaperSide::left);
    /// A paragraph at `y`, from `left` over so much of the area's width, on over the end of a page.
    void flow(float left, float width, std::string_view words, TypeStyle style,
              Role role = Role::ink, float gap = 4.0f);
    void rule(float x0, float x1, float at, float width = 1.0f);
    /// A heading with a rule under it; keeps so much of what follows with it.
    void heading(std::string_view words, float with);

    /// Writes "2 / 7" on every page and hands all of them over.
    std::vector<DrawingList> finish();

    float y = 0.0f; ///< where the next thing goes

private:
    void begin_list();
    void head_line();

    Box paper_;
    Box area_;
    PaperFrame frame_;
    PaperType& type_;
    float foot_ = 0.0f; ///< height of the foot's words
    std::vector<DrawingList> lists_;
};

} // namespace carriageway
