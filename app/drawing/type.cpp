#include "app/drawing/type.h"

namespace carriageway {

float em_of(TypeSize size) {
    switch (size) {
        case TypeSize::small: return 13.0f;
        case TypeSize::title: return 20.0f;
        case TypeSize::large: return 26.0f;
        default: return 16.0f;
    }
}

} // namespace carriageway
