// Where words may go on a drawing: each label takes the first of its places that is free.
#pragma once

#include <vector>

#include "app/drawing/box.h"

namespace carriageway {

class LabelPlacer {
public:
    explicit LabelPlacer(Box within) : within_(within) {}

    /// Begins anew, keeping its storage.
    void begin(Box within) {
        within_ = within;
        taken_.clear();
    }

    /// Marks a box as taken.
    void take(Box box) { taken_.push_back(box); }

    /// Whether a box lies within the view and clear of all that is taken.
    bool is_free(Box box) const {
        if (box.x0 < within_.x0 || box.x1 > within_.x1 || box.y0 < within_.y0 ||
            box.y1 > within_.y1)
            return false;
        for (const Box& other : taken_)
            if (box.x0 < other.x1 && other.x0 < box.x1 && box.y0 < other.y1 && other.y0 < box.y1)
                return false;
        return true;
    }

    /// Takes a box if it is free.
    bool place(Box box) {
        if (!is_free(box)) return false;
        take(box);
        return true;
    }

    Box within() const { return within_; }

private:
    Box within_;
    std::vector<Box> taken_;
};

} // namespace carriageway
