# Completion for bash.
_carriageway() {
    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]} command= options i
    local commands="check rate set picture import export list link stations sheet compare register separation"
    for ((i = 1; i < COMP_CWORD; i++)); do
        case " $commands " in *" ${COMP_WORDS[i]} "*) command=${COMP_WORDS[i]} && break ;; esac
    done
    COMPREPLY=()
    case $before in
        --lang) mapfile -t COMPREPLY < <(compgen -W "en es" -- "$word") && return ;;
        --units) mapfile -t COMPREPLY < <(compgen -W "mm in" -- "$word") && return ;;
        --theme) mapfile -t COMPREPLY < <(compgen -W "light dark" -- "$word") && return ;;
        --paper) mapfile -t COMPREPLY < <(compgen -W "a4 letter" -- "$word") && return ;;
        --layout) mapfile -t COMPREPLY < <(compgen -W "heads table" -- "$word") && return ;;
        --backend | --place)
            # What this build has stands at the end of its line of the help.
            mapfile -t COMPREPLY < <(compgen -W "$("${COMP_WORDS[0]}" ${command:+"$command"} --lang en --help 2>/dev/null |
                sed -n "s/^ *$before NAME .*: //p" | tr -d ,)" -- "$word")
            return ;;
        --head | --size | --scale | --search | --base | --width | --alternatives) return ;;
    esac
    case $command in
        check | rate | import) options= ;;
        set | export) options="-o --output --force" ;;
        picture) options="-o --output --force --place --head --size --scale --theme" ;;
        list) options="--search" ;;
        link) options="--base" ;;
        stations) options="--alternatives --fixed-flashes" ;;
        sheet) options="-o --output --force --paper --layout --base" ;;
        compare) options="--planned" ;;
        register) options="--job --head" ;;
        separation) options="--width --into --head -o --output --force" ;;
        *) options="--open --backend" ;;
    esac
    if [[ $word == -* ]]; then
        mapfile -t COMPREPLY < <(compgen -W "$options --json --lang --units -h --help --version" -- "$word")
    else
        compopt -o filenames 2>/dev/null
        mapfile -t COMPREPLY < <(compgen -f -- "$word")
        [ -n "$command" ] || mapfile -t -O "${#COMPREPLY[@]}" COMPREPLY < <(compgen -W "$commands" -- "$word")
    fi
}
complete -F _carriageway carriageway
