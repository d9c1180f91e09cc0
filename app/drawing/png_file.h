// Pictures as PNG.
#pragma once

#include <cstdint>
#include <filesystem>
#include <system_error>
#include <vector>

#include "app/drawing/raster.h"

namespace carriageway {

/// Writes `picture` as PNG into `bytes`, whose contents it replaces. An empty picture, or one whose
/// size does not match its pixels: std::errc::invalid_argument.
std::error_code encode_png(const Picture& picture, std::vector<std::uint8_t>& bytes);

/// Writes a PNG file, replacing one that is there. What fails is what the system says: no such
/// folder, no space, no permission; a file that was begun is then taken away again.
std::error_code write_png(const Picture& picture, const std::filesystem::path& path);

} // namespace carriageway
