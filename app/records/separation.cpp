#include "app/records/separation.h"

#include <algorithm>
#include <cmath>

#include "core/fields.h"
#include "core/job_check.h"

namespace carriageway {
namespace {

using Kind = PictureFault::Kind;

PictureFault sized_fault(Kind kind, const PictureHeader& header) {
    PictureFault fault{kind};
    fault.width = header.width;
    fault.height = header.height;
    return fault;
}

/// A side of a picture, or of its ink, that an image may have.
bool is_size(double mm) { return accepts(Field::image_width, mm); }

ReadSeparation read_all(SeparationReading& reading, const SeparationProgress& progress) {
    double told = 0.0;
    constexpr std::int64_t piece = 1 << 18;
    while (reading.step(piece)) {
        if (!progress || reading.progress() - told < 0.01) continue;
        told = reading.progress();
        if (!progress(told)) return {std::nullopt, {Kind::cancelled}};
    }
    return {reading.separation(), reading.fault()};
}

}  // namespace

SeparationReading::SeparationReading(PictureBytes bytes, const SeparationOptions& options)
    : bytes_(std::move(bytes)), options_(options), rows_(rows_of(bytes_)) {
    fault_ = rows_->fault();
    if (fault_.kind == Kind::none) start();
}

SeparationReading::~SeparationReading() = default;

void SeparationReading::start() {
    const PictureHeader& header = rows_->header();
    grid_ = {header.width, header.height, header.across, header.along};
    if (options_.width) {
        grid_.across = *options_.width / header.width;
        grid_.along = grid_.across * header.aspect;
    } else if (!(header.across > 0.0)) {
        fault_ = sized_fault(Kind::no_size, header);
        return;
    }
    const double across = grid_.across * header.width;
    const double along = grid_.along * header.height;
    if (!is_size(across) || !is_size(along)) {
        fault_ = sized_fault(Kind::bad_size, header);
        fault_.across = across;
        fault_.along = along;
        return;
    }
    shape_.emplace(grid_, options_.rules);
}

bool SeparationReading::step(std::int64_t pixels) {
    if (!shape_ || fault_.kind != Kind::none || separation_) return false;
    while (pixels > 0) {
        const std::optional<PictureRow> row = rows_->next();
        if (!row) {
            fault_ = rows_->fault();
            if (fault_.kind == Kind::none) finish();
            return false;
        }
        shape_->add(row->y, row->first, row->step, row->darkness);
        const auto count = static_cast<std::int64_t>(row->darkness.size());
        pixels_read_ += count;
        pixels -= count;
    }
    return true;
}

double SeparationReading::progress() const {
    const double all = static_cast<double>(grid_.width) * grid_.height;
    return all > 0.0 ? std::min(1.0, static_cast<double>(pixels_read_) / all) : 0.0;
}

void SeparationReading::finish() {
    const InkFound found = shape_->found();
    if (found.outline.empty()) {
        fault_.kind = Kind::no_ink;
        fault_.specks = found.specks;
        return;
    }
    Separation made;
    made.image.outline = found.outline;
    // A side below what an image's own fields take is written as the least that they do; with an
    // outline neither is used.
    const FieldInfo& side = info_of(Field::image_width);
    made.image.width = std::max(side.least, found.extent.width());
    made.image.length = std::max(side.least, found.extent.length());
    if (image_fault(made.image)) {
        fault_.kind = Kind::too_little_ink;
        fault_.across = found.extent.width();
        fault_.along = found.extent.length();
        return;
    }
    made.printed_share = found.printed_share;
    made.ink_area = found.ink_area;
    made.extent = found.extent;
    made.width = grid_.width;
    made.height = grid_.height;
    made.across = grid_.across * grid_.width;
    made.along = grid_.along * grid_.height;
    made.typed_width = options_.width.has_value();
    made.specks = found.specks;
    made.speck = options_.rules.speck;
    made.slack = found.slack;
    separation_ = std::move(made);
}

ReadSeparation read_separation_file(const std::string& path, const SeparationOptions& options,
                                    const SeparationProgress& progress) {
    PictureBytes bytes;
    PictureFault fault = open_picture(path, bytes);
    if (fault.kind != Kind::none) return {std::nullopt, std::move(fault)};
    SeparationReading reading(std::move(bytes), options);
    return read_all(reading, progress);
}

ReadSeparation read_separation(std::string_view bytes, const SeparationOptions& options,
                               const SeparationProgress& progress) {
    SeparationReading reading(picture_in(bytes), options);
    return read_all(reading, progress);
}

Image image_in_place(const Separation& separation, const Image& place) {
    Image image = separation.image;
    image.offset_x = place.offset_x;
    image.offset_y = place.offset_y;
    image.rotation = place.rotation;
    return image;
}

Edit separation_edit(const Head& head, const Separation& separation) {
    return Edit{Together{
        {Edit{SetImage{head.id, image_in_place(separation, head.image)}},
         Edit{SetNumber{head.id, Field::printed_share, separation.printed_share}}}}};
}

}  // namespace carriageway
