/** `ohmward new`: a small working file to begin with. */
import { dirname, join, relative, resolve } from 'node:path';
import { guideFolder } from '../files/folders.ts';
import { nearestName } from '../source/nearest-name.ts';
import { safeText } from '../source/safe-text.ts';
import { STARTERS } from './check/starters.ts';
import { type Arguments, type CliCommand, EXIT, type Io, optionText } from './command.ts';
import { writeNewFile } from './write-new-file.ts';

/** As the schemas have it. */
const NAME = /^[a-z][a-z0-9-]{0,60}$/;

export const command: CliCommand = {
  name: 'new',
  summary: 'a working procedure, circuit or job to start from',
  usage: 'new procedure|circuit|job NAME [--out FILE]',
  examples: [
    'ohmward new procedure my-tree                 print one',
    'ohmward new circuit my-circuit --out circuits/my-circuit.yaml',
    'ohmward new job green-van --out jobs/green-van.yaml',
  ],
  options: {
    out: {
      type: 'string',
      value: 'FILE',
      help: 'write it there; an existing file is never overwritten',
    },
  },
  run: async (args: Arguments, io: Io) => {
    const [kind = '', name = '', ...rest] = args.positionals;
    const starter = Object.hasOwn(STARTERS, kind)
      ? STARTERS[kind as keyof typeof STARTERS]
      : undefined;
    if (!starter) {
      const near = nearestName(kind, Object.keys(STARTERS));
      return refuse(
        io,
        near
          ? `there is no "${safeText(kind)}"; did you mean "${near}"?`
          : 'say procedure, circuit or job, and a name',
      );
    }
    if (!NAME.test(name) || rest.length > 0)
      return refuse(
        io,
        'give it one name of small letters, digits and hyphens, such as rake-wheel-no-speed',
      );
    const text = starter(name);
    const out = optionText(args, 'out');
    if (out === undefined) {
      io.out(text);
      return EXIT.done;
    }
    const pointed = withSchema(text, kind, dirname(resolve(io.cwd, out)));
    return writeNewFile({ named: out, text: pointed, maker: 'new', reader: 'check' }, io);
  },
};

/** The text for a file in `folder`, with its first line pointing to the schema that comes with the program. */
function withSchema(text: string, kind: string, folder: string): string {
  const guide = guideFolder();
  if (guide === null) return text;
  const file = `${kind}.schema.json`;
  const way = relative(folder, join(guide, 'schema', file)).replaceAll('\\', '/');
  return text.replace(`$schema=${file}`, () => `$schema=${way}`);
}

function refuse(io: Io, words: string): number {
  io.err(`ohmward new: ${words}\n`);
  return EXIT.wrongUse;
}
