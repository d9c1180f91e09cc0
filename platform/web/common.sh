# shellcheck shell=bash
# Read by start and check (bash): how the program for browsers is built.

# shellcheck source=platform/linux/common.sh
. "$(dirname "${BASH_SOURCE[0]}")/../linux/common.sh"

web_build=$top/build/web
site=$web_build/site

# Emscripten's own scripts look for Node's modules where Debian has them.
build_site() {
    export NODE_PATH=/usr/share/nodejs
    emcmake cmake -S "$top" -B "$web_build" -G Ninja "${fetched[@]}" \
        -DCMAKE_BUILD_TYPE=Release -DCARRIAGEWAY_UNITY=ON -DCARRIAGEWAY_TESTS=OFF &&
        cmake --build "$web_build" --parallel "$jobs"
}
