# shellcheck shell=bash
# Read by start and check (bash): packages, sources, build, steps with their time.

top=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
dependencies=$top/platform/dependencies.txt
jobs=$(nproc)
steps=()  # what step has run, with outcome and time

say() { printf '%s\n' "$*"; }
die() { printf '%s\n' "$*" >&2; exit 1; }

# step HEADING COMMAND...: runs the command under a heading, then says how long
# it took and whether it went well. Its exit status is the command's.
step() {
    local heading=$1 began=$SECONDS status=0
    shift
    printf '\n== %s\n' "$heading"
    "$@" || status=$?
    local outcome="done in $((SECONDS - began)) s"
    [ "$status" -eq 0 ] || outcome="FAILED (exit $status) after $((SECONDS - began)) s"
    printf -- '-- %s: %s\n' "$heading" "$outcome"
    steps+=("$heading: $outcome")
    return "$status"
}

as_root() {
    if [ "$(id -u)" -eq 0 ]; then
        "$@"
    elif command -v sudo >/dev/null; then
        sudo "$@"
    else
        die "Packages are missing and this needs root: run it as root, or install sudo. Missing:$missing"
    fi
}

# packages NEED...: Debian's binary packages for these needs (see the list).
packages() {
    local line fields wanted package
    while IFS= read -r line; do
        case $line in '' | '#'*) continue ;; esac
        IFS='|' read -r -a fields <<<"$line"
        for wanted in "$@"; do
            case "+${fields[3]}+" in *"+$wanted+"*) ;; *) continue ;; esac
            for package in ${fields[4]}; do
                case $package in source:*) ;; *) printf '%s\n' "$package" ;; esac
            done
            break
        done
    done <"$dependencies"
}

# install_packages NEED...: installs what is missing; touches nothing, and needs
# no root, when all of it is there.
install_packages() {
    local package
    missing=
    command -v apt-get >/dev/null ||
        die "This script installs packages with apt. On other systems, install what platform/dependencies.txt lists and build with CMake (see README.md)."
    for package in $(packages "$@"); do
        case $(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null) in
            installed) ;;
            *) missing="$missing $package" ;;
        esac
    done
    if [ -z "$missing" ]; then
        say "All packages are there."
        return
    fi
    say "Installing:$missing"
    as_root env DEBIAN_FRONTEND=noninteractive apt-get -q -o Acquire::Retries=3 update </dev/null ||
        say "Not all package lists could be read; trying with those that could."
    # A machine of a continuous build is thrown away, so dpkg need not wait for the disk.
    local options=(-o Acquire::Retries=3 -o Dpkg::Use-Pty=0 --no-install-recommends)
    [ -z "${CI:-}" ] || options+=(-o "Dpkg::Options::=--force-unsafe-io")
    # shellcheck disable=SC2086
    as_root env DEBIAN_FRONTEND=noninteractive apt-get -q -y "${options[@]}" install $missing </dev/null && return
    # An installation that was cut off leaves dpkg half way, and apt then refuses everything.
    say "The installation failed; finishing what an earlier one left half way, then once more."
    as_root env DEBIAN_FRONTEND=noninteractive dpkg --force-confdef --force-confold --configure -a </dev/null || true
    # shellcheck disable=SC2086
    as_root env DEBIAN_FRONTEND=noninteractive apt-get -q -y "${options[@]}" --fix-broken install $missing </dev/null
}

# fetch_sources [--all]: sets fetched to the options that point CMake at pinned source
# archives; empty where they can't be had, and CMake then fetches upstream's tags.
fetch_sources() {
    local lines
    fetched=()
    if lines=$("$top/platform/linux/fetch-sources" "$@"); then
        mapfile -t fetched <<<"$lines"
    else
        say "The distribution's source archives are not to be had here: CMake fetches upstream's tags."
    fi
}

# failures TAP: each test that failed with what it said, the first 60 lines of it.
failures() {
    awk '
        function indent(line) { match(line, /^ */); return RLENGTH }
        /^ *not ok / && !inside { print; inside = 1; left = 60; end = ""; next }
        !inside { next }
        end == "" && !/^ *---$/ { inside = 0; next }
        end == "" { end = sprintf("%" indent($0) "s...", "") }
        $0 == end { inside = 0; next }
        left-- > 0 { print }
        left == -1 { print end " and more" }
    ' "$1"
}

# tap_count TAP WORD: how many tests had this outcome, pass or fail. Fails where the runner did not
# get to its end.
tap_count() { grep -E "^# $2 " "$1" | tail -n 1 | grep -o '[0-9]*$'; }

# configure FOLDER OPTION...
configure() {
    local folder=$1
    shift
    cmake -S "$top" -B "$folder" -G Ninja "${fetched[@]}" "$@"
}

# build_in FOLDER [TARGET...]: all of it where no target is named.
build_in() {
    local folder=$1
    shift
    cmake --build "$folder" --parallel "$jobs" ${1:+--target "$@"}
}

# configure_and_build FOLDER OPTION...
configure_and_build() {
    configure "$@" && build_in "$1"
}

# watched FOLDER [OPTION...]: configures for clang's address and undefined-behaviour sanitizers.
# Optimised a little, so that the long property tests stay short.
watched() {
    configure "$1" -DCMAKE_C_COMPILER=clang -DCMAKE_CXX_COMPILER=clang++ \
        -DCARRIAGEWAY_SANITIZE=ON -DCARRIAGEWAY_UNITY=ON -DCARRIAGEWAY_REFERENCE_TESTS=OFF \
        -DCMAKE_BUILD_TYPE=None -DCMAKE_CXX_FLAGS="-O1 -g1" -DCMAKE_C_FLAGS="-O1 -g1" "${@:2}"
}
