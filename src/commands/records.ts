/** `ohmward records`: the shop's side of what was done. */
import { nearestName } from '../source/nearest-name.ts';
import { safeText } from '../source/safe-text.ts';
import { type CliCommand, EXIT, optionsOf } from './command.ts';
import { Stop } from './records/record-arguments.ts';
import { VERBS } from './records/verbs.ts';

export const command: CliCommand = {
  name: 'records',
  summary: 'finished sessions and drills: list, find, show, export, verify, compare, share',
  usage: `records ${Object.keys(VERBS).join('|')} [SESSION or words] [options]`,
  examples: [
    'ohmward records list --since 2026-03',
    'ohmward records find --plate "QX 47" cold start',
    'ohmward records show last',
    'ohmward records show --class FOLDER --html results.html',
    'ohmward records export last --as pdf --for customer --output report.pdf',
    'ohmward records verify SESSION --head 64-DIGITS-FROM-A-REPORT',
    'ohmward records compare BEFORE AFTER',
    'ohmward records share',
    'ohmward records find --shared --plate "QX 47"',
  ],
  options: optionsOf(VERBS),
  verbs: VERBS,
  run: async ({ positionals, values }, io) => {
    const [word = 'list', ...names] = positionals;
    try {
      const verb = Object.hasOwn(VERBS, word) ? VERBS[word] : undefined;
      if (!verb) {
        const near = nearestName(word, Object.keys(VERBS));
        const fix = near ? `did you mean "${near}"?` : `one of: ${Object.keys(VERBS).join(', ')}`;
        throw new Stop(EXIT.wrongUse, `records cannot "${word}"`, fix);
      }
      const stray = Object.keys(values).find((name) => !Object.hasOwn(verb.options, name));
      if (stray !== undefined)
        throw new Stop(
          EXIT.wrongUse,
          `"${word}" takes no --${stray}`,
          `see what it takes: ohmward records ${word} --help`,
        );
      return await verb.run({ positionals: names, values }, io);
    } catch (error) {
      if (!(error instanceof Stop)) throw error;
      io.err(`ohmward: ${safeText(error.message, { lines: true })}\n`);
      return error.exit;
    }
  },
};
