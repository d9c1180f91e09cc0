# cmake -DNAME= -DFILE= -DHEADER= -DOUTPUT= -P embed.cmake
# Writes a C++ source file that holds the bytes of FILE; see carriageway_embed.

set(bytes "0")
set(size 0)
if(EXISTS "${FILE}")
    file(READ "${FILE}" hex HEX)
    string(LENGTH "${hex}" digits)
    math(EXPR size "${digits} / 2")
    if(size GREATER 0)
        string(REGEX REPLACE "([0-9a-f][0-9a-f])" "0x\\1," bytes "${hex}")
        string(REGEX REPLACE "(0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,)"
               "\\1\n" bytes "${bytes}")
    endif()
endif()

file(WRITE "${OUTPUT}" "// Made from a file at build time.
#include \"${HEADER}\"

namespace carriageway::embedded {

const unsigned char ${NAME}[] = {
${bytes}};
const unsigned ${NAME}_size = ${size};

}  // namespace carriageway::embedded
")
