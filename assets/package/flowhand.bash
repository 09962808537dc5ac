# Completion of flowhand's commands and options in bash. Both are what the program itself says, so they are never old.
_flowhand() {
    local word=${COMP_WORDS[COMP_CWORD]} before=("${COMP_WORDS[@]:1:COMP_CWORD-1}") commands=() each
    for each in "${before[@]}"; do
        [[ $each == -* ]] && break
        commands+=("$each")
    done
    local help
    help=$(flowhand "${commands[@]:0:2}" --help 2>/dev/null) || help=$(flowhand "${commands[0]-}" --help 2>/dev/null)
    if [[ $word == -* ]]; then
        mapfile -t COMPREPLY < <(compgen -W "$(grep -oE -- '(^|[ ,])--?[a-z][a-z-]*' <<< "$help" | tr -d ' ,')" -- "$word")
    else
        mapfile -t COMPREPLY < <(compgen -W "$(sed -n '/^Subcommands:/,$s/^  \([a-z][a-z-]*\) .*/\1/p' <<< "$help")" -- "$word")
        [ ${#COMPREPLY[@]} -gt 0 ] || mapfile -t COMPREPLY < <(compgen -f -- "$word")
    fi
}
complete -o filenames -F _flowhand flowhand
