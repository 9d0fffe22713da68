/** `ohmward completion`: prints the script that completes commands, options and names in a shell. */
import { type CliCommand, EXIT } from './command.ts';
import { SHELL_SCRIPTS } from './completion/shell-scripts.ts';

export const command: CliCommand = {
  name: 'completion',
  summary: 'a script that completes commands, options and names in your shell',
  usage: `completion ${Object.keys(SHELL_SCRIPTS).join('|')}`,
  examples: [
    'source <(ohmward completion bash)     in this shell; in ~/.bashrc for every shell',
    'source <(ohmward completion zsh)      in ~/.zshrc, after compinit',
    'ohmward completion fish | source      in ~/.config/fish/config.fish',
  ],
  options: {},
  run: async ({ positionals }, io) => {
    const [shell, ...rest] = positionals;
    const known = Object.entries(SHELL_SCRIPTS).find(([name]) => name === shell);
    if (!known || rest.length > 0) {
      io.err(`ohmward completion: name one shell: ${Object.keys(SHELL_SCRIPTS).join(', ')}\n`);
      return EXIT.wrongUse;
    }
    io.out(known[1]);
    return EXIT.done;
  },
};
