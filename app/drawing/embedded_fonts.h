// The two faces of B612 that the program draws with, as TrueType files in
// memory, put there at build time. Sizes are in bytes.
#pragma once

namespace carriageway::embedded {

extern const unsigned char b612_regular[];
extern const unsigned b612_regular_size;

extern const unsigned char b612_bold[];
extern const unsigned b612_bold_size;

}  // namespace carriageway::embedded
