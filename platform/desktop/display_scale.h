// How large the program draws on a desktop.
#pragma once

namespace carriageway {

/// The factor in the environment's CARRIAGEWAY_SCALE by which everything is enlarged; 1 where it is
/// not set. Throws std::runtime_error when it is not a number from 0.5 to 4.
double wanted_scale();

} // namespace carriageway
