# Completion for fish.

function __carriageway_choices --argument-names option
    # What this build has stands at the end of its line of the help.
    set -l command (commandline -opc)
    $command[1] $command[2] --lang en --help 2>/dev/null |
        string replace -rf "^ *--$option NAME .*: " '' | string split ', '
end

complete -c carriageway -l json -d 'write JSON, for other programs'
complete -c carriageway -l lang -x -a 'en es' -d 'language'
complete -c carriageway -l units -x -a 'mm in' -d 'unit of lengths'
complete -c carriageway -s h -l help -d 'show the help'
complete -c carriageway -l version -d 'show the version'

complete -c carriageway -n __fish_use_subcommand -l open -r -d 'open this job'
complete -c carriageway -n __fish_use_subcommand -l backend -x -a '(__carriageway_choices backend)' -d 'window system'
complete -c carriageway -n __fish_use_subcommand -a check -d 'what each head covers and what to fix'
complete -c carriageway -n __fish_use_subcommand -a rate -d 'how fast a job runs and why'
complete -c carriageway -n __fish_use_subcommand -a set -d 'every stop on the shortest good stroke'
complete -c carriageway -n __fish_use_subcommand -a picture -d 'draw a picture'
complete -c carriageway -n __fish_use_subcommand -a import -d 'put job files into the library'
complete -c carriageway -n __fish_use_subcommand -a export -d 'write a job of the library to a file'
complete -c carriageway -n __fish_use_subcommand -a list -d 'list the jobs of the library'
complete -c carriageway -n __fish_use_subcommand -a link -d 'a job as a link'
complete -c carriageway -n __fish_use_subcommand -a stations -d 'the best station for every colour'
complete -c carriageway -n __fish_use_subcommand -a sheet -d 'the sheet that stays with a job'
complete -c carriageway -n __fish_use_subcommand -a compare -d 'what two jobs have set differently'
complete -c carriageway -n __fish_use_subcommand -a register -d "what to turn at a head's adjusters"
complete -c carriageway -n __fish_use_subcommand -a separation -d 'read films: size, outline, share'

function __carriageway_for
    __fish_seen_subcommand_from $argv
end
complete -c carriageway -n '__carriageway_for set picture export sheet separation' -s o -l output -r -d 'where to write'
complete -c carriageway -n '__carriageway_for set picture export sheet separation' -l force -d 'overwrite a file that exists'
complete -c carriageway -n '__carriageway_for picture' -l place -x -a '(__carriageway_choices place)' -d 'what to draw'
complete -c carriageway -n '__carriageway_for picture register separation' -l head -x -d 'station of the head'
complete -c carriageway -n '__carriageway_for picture' -l size -x -d 'size of the window, in dp'
complete -c carriageway -n '__carriageway_for picture' -l scale -x -d 'pixels per dp'
complete -c carriageway -n '__carriageway_for picture' -l theme -x -a 'light dark'
complete -c carriageway -n '__carriageway_for list' -l search -x -d 'words in name, colours or press'
complete -c carriageway -n '__carriageway_for link sheet' -l base -x -d 'address that the link begins with'
complete -c carriageway -n '__carriageway_for stations' -l alternatives -x -d 'how many placements to show'
complete -c carriageway -n '__carriageway_for stations' -l fixed-flashes -d 'leave flash units where they are'
complete -c carriageway -n '__carriageway_for sheet' -l paper -x -a 'a4 letter'
complete -c carriageway -n '__carriageway_for sheet' -l layout -x -a 'heads table'
complete -c carriageway -n '__carriageway_for compare' -l planned -d 'what was planned, not what was set'
complete -c carriageway -n '__carriageway_for register' -l job -r -d 'job whose press has the adjusters'
complete -c carriageway -n '__carriageway_for separation' -l width -x -d 'width of the whole picture'
complete -c carriageway -n '__carriageway_for separation' -l into -r -d 'put the picture into this job'
