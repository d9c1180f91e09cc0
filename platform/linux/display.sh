# shellcheck shell=bash
# Read by scripts that need a window without a screen (bash).

# open_display FOLDER SIZE [OPTION...]: a virtual display, which every machine can have and nobody
# touches; sets DISPLAY, and display_server, which the caller ends. Its words are in FOLDER.
open_display() {
    local folder=$1 size=$2 waited
    Xvfb -displayfd 3 -screen 0 "$size" -nolisten tcp "${@:3}" 3>"$folder/display" 2>"$folder/display.log" &
    display_server=$!
    for ((waited = 0; waited < 100; waited++)); do
        [ ! -s "$folder/display" ] || break
        sleep 0.1
    done
    [ -s "$folder/display" ] || { cat "$folder/display.log" >&2; return 1; }
    DISPLAY=:$(cat "$folder/display")
    export DISPLAY
}
