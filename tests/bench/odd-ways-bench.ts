/** Papers of sessions as no plan has them: `npm run bench odd-ways`. `-- --sessions 20` a tree, `--trees NAME,NAME`, `--seed 20`. */
import { TREES } from '../proof/library.ts';
import { oddSession, untrueSentences } from '../records/odd-ways.ts';

/** Prints each sentence that the events of its session do not bear out, and how many sessions were looked at. */
export function benchOddWays(print: (line: string) => void = console.log): void {
  const option = (name: string) => {
    const at = process.argv.indexOf(`--${name}`);
    return at < 0 ? undefined : process.argv[at + 1];
  };
  const count = Number(option('sessions') ?? 20);
  const seed = Number(option('seed') ?? 20);
  const names = option('trees')?.split(',') ?? TREES.map(([name]) => name);
  for (const name of names) {
    let [concluded, closed, untrue] = [0, 0, 0];
    for (let at = 0; at < count; at += 1) {
      const session = oddSession(name, 100_000 * seed + at);
      if (session.concluded) concluded += 1;
      if (session.closed) closed += 1;
      for (const words of untrueSentences(session)) {
        untrue += 1;
        print(`${name}, session ${at}: ${words}`);
      }
    }
    print(
      `${name}: ${count} sessions, ${concluded} concluded, ${closed} closed; ${untrue} sentences untrue`,
    );
  }
}
