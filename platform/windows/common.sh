# shellcheck shell=bash
# Read by build and check (bash): how the program for Windows is built on Debian.

# shellcheck source=platform/linux/common.sh
. "$(dirname "${BASH_SOURCE[0]}")/../linux/common.sh"

windows_build=$top/build/windows
windows_program=$windows_build/app/carriageway.exe

# build_for_windows TARGET...
build_for_windows() {
    cmake -S "$top" -B "$windows_build" -G Ninja "${fetched[@]}" \
        -DCMAKE_TOOLCHAIN_FILE="$top/platform/windows/mingw-w64.cmake" -DCARRIAGEWAY_UNITY=ON \
        -DCARRIAGEWAY_BACKENDS=GLFW -DCARRIAGEWAY_REFERENCE_TESTS=OFF -DCMAKE_BUILD_TYPE=Release &&
        cmake --build "$windows_build" --parallel "$jobs" --target "$@"
}
