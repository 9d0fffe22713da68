/**
 * The scripts that teach a shell to ask `ohmward __complete`. They only hand words over and take lines back.
 *
 * No line that comes back is ever evaluated: bash's `compgen -W` would expand `$(...)` in it, so it is not used.
 */

const BASH = String.raw`# Completion of ohmward for bash. For this shell: source <(ohmward completion bash)
# For good: ohmward completion bash > ~/.local/share/bash-completion/completions/ohmward
_ohmward() {
  local line files=
  COMPREPLY=()
  while IFS= read -r line; do
    if [[ $line == :files ]]; then
      files=yes
    else
      COMPREPLY+=("${'$'}{line%%$'\t'*}")
    fi
  done < <(ohmward __complete -- "${'$'}{COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null)
  compopt -o nosort 2>/dev/null
  if [[ $files ]]; then
    compopt -o filenames 2>/dev/null
    while IFS= read -r line; do
      COMPREPLY+=("$line")
    done < <(compgen -f -- "$2")
  fi
}
complete -F _ohmward ohmward
`;

const ZSH = String.raw`#compdef ohmward
# Completion of ohmward for zsh. For this shell: source <(ohmward completion zsh)
# For good: ohmward completion zsh > a folder of $fpath, as _ohmward
_ohmward() {
  local line files=
  local -a offers
  while IFS= read -r line; do
    if [[ $line == :files ]]; then
      files=yes
    else
      offers+=("${'$'}{line%%$'\t'*}:${'$'}{line#*$'\t'}")
    fi
  done < <(ohmward __complete -- "${'$'}{(@Q)words[2,CURRENT]}" 2>/dev/null)
  (( ${'$'}{#offers} )) && _describe -V ohmward offers
  [[ -n $files ]] && _files
  return 0
}
if [[ ${'$'}{funcstack[1]} == _ohmward ]]; then
  _ohmward "$@"
else
  compdef _ohmward ohmward
fi
`;

const FISH = String.raw`# Completion of ohmward for fish. For this shell: ohmward completion fish | source
# For good: ohmward completion fish > ~/.config/fish/completions/ohmward.fish
function __ohmward_complete
    set -l typed (commandline -ct)
    set -l words (commandline -opc)
    for line in (ohmward __complete -- $words[2..-1] "$typed" 2>/dev/null)
        if test "$line" = :files
            __fish_complete_path "$typed"
        else
            printf '%s\n' "$line"
        end
    end
end
complete -c ohmward -f -a '(__ohmward_complete)'
`;

/** Script by shell. */
export const SHELL_SCRIPTS = { bash: BASH, zsh: ZSH, fish: FISH } as const;
