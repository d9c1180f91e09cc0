#include "app/film.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace carriageway {

namespace {

/// Pixels a step: some ten milliseconds on a phone. Ours.
constexpr std::int64_t pixels_a_step = 2'000'000;

} // namespace

bool looks_like_film(std::string_view beginning) {
    using namespace std::string_view_literals;
    return beginning.starts_with("\x89PNG\r\n\x1a\n"sv) || beginning.starts_with("II*\0"sv) ||
           beginning.starts_with("MM\0*"sv) || beginning.starts_with("II+\0"sv) ||
           beginning.starts_with("MM\0+"sv);
}

Film::Film(HeadId head, std::string name, std::string bytes, double width)
    : head_(head), name_(std::move(name)), bytes_(std::move(bytes)), width_(width),
      reading_(std::make_unique<SeparationReading>(picture_in(bytes_))) {}

bool Film::step() {
    if (reading_->step(pixels_a_step)) return true;
    if (assumed_ || reading_->fault().kind != PictureFault::Kind::no_size) return false;
    // Without a size of its own the film is taken to be as wide as the image that it replaces; the
    // person is told and can type it.
    assumed_ = true;
    SeparationOptions options;
    options.width = width_;
    reading_ = std::make_unique<SeparationReading>(picture_in(bytes_), options);
    return true;
}

Image resized(const Image& image, bool across, double wanted) {
    Image out = image;
    const Rect bounds = bounds_of(image.outline);
    const double size = across ? bounds.width() : bounds.length();
    if (image.outline.empty() || !(size > 0.0)) return out;
    for (Point& corner : out.outline) {
        corner.x *= wanted / size;
        corner.y *= wanted / size;
    }
    return out;
}

Edit rectangle_edit(const Head& head) {
    const Rect bounds = bounds_of(head.image.outline);
    const double rectangle = bounds.width() * bounds.length();
    const double filled =
        rectangle > 0.0 ? std::abs(signed_area(head.image.outline)) / rectangle : 1.0;
    Image image = head.image;
    image.outline.clear();
    image.width = bounds.width();
    image.length = bounds.length();
    // A rectangle lies about its own middle, an outline about the middle of its film.
    const double x = 0.5 * (bounds.left + bounds.right), y = 0.5 * (bounds.lo + bounds.hi);
    const double cosine = std::cos(image.rotation), sine = std::sin(image.rotation);
    image.offset_x += x * cosine - y * sine;
    image.offset_y += x * sine + y * cosine;
    const double share = std::min(1.0, head.deposit.printed_share * filled);
    return Edit{Together{{Edit{SetImage{head.id, image}},
                          Edit{SetNumber{head.id, Field::printed_share, share}}}}};
}

} // namespace carriageway
