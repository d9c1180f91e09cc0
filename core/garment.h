// What is printed on.
#pragma once

namespace carriageway {

/// Kinds of garment that advice tells apart (off_contact.h).
enum class GarmentKind { t_shirt, fleece };

} // namespace carriageway
