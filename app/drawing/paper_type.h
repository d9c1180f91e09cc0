// How wide text runs on paper, without a window: read from the embedded faces themselves.
//
// A letter is as wide as the PDF shows it (pdf_letters.h): one that the face lacks as its plain
// letter, or else a question mark. Pages use more sizes than the screen: set_scale() holds for what
// is measured and written from then on.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "app/drawing/type.h"

namespace carriageway {

class PaperType : public TypeMeasure {
public:
    float width(TypeStyle style, std::string_view text) const override;
    float height(TypeStyle style) const override;
    float scale() const override { return scale_; }

    /// Above 0; anything else counts as 1.
    void set_scale(float scale);

private:
    float scale_ = 1.0f;
};

/// Writes in another size for as long as it lives.
class PaperScale {
public:
    PaperScale(PaperType& type, float scale) : type_(type), before_(type.scale()) {
        type_.set_scale(before_ * scale);
    }
    ~PaperScale() { type_.set_scale(before_); }
    PaperScale(const PaperScale&) = delete;
    PaperScale& operator=(const PaperScale&) = delete;

private:
    PaperType& type_;
    float before_;
};

/// Letters of a text that the faces lack, each once, in UTF-8, in the order of their code points;
/// added to those that `found` holds.
void add_unprintable(std::string_view text, std::vector<std::string>& found);

} // namespace carriageway
