/**
 * Own cautions beside the shipped ones: they add. A shipped one can be put into another language, and stands before
 * more steps or tells of more hazards; nobody takes one away, weakens it, or says less of it.
 */
import type { Issue } from '../source/issue.ts';
import type { Path } from '../source/yaml-source.ts';
import type { CautionRule, LoadedCautions } from './cautions.ts';

/** The rules that hold, and what of the own files does not. */
export interface MergedCautions {
  readonly rules: readonly CautionRule[];
  /** At the lines of the own files; a rule that is told here has no part in `rules`. */
  readonly issues: readonly Issue[];
}

/** What holds of the shipped cautions and the files of one's own, in this order. `shipped` is null where there are none. */
export function mergeCautions(
  shipped: LoadedCautions | null,
  own: readonly LoadedCautions[],
): MergedCautions {
  const rules = new Map((shipped?.rules ?? []).map((rule) => [rule.id, rule]));
  const writtenIn = new Map<string, LoadedCautions>();
  const issues: Issue[] = [];
  for (const file of own)
    for (const rule of file.rules) {
      const base = shipped?.rules.find(({ id }) => id === rule.id) ?? null;
      const earlier = writtenIn.get(rule.id);
      const flaws = [
        ...(earlier ? repeated(rule, rules.get(rule.id)!, earlier) : []),
        ...(base && shipped ? changes(rule, base, file.language, shipped.language) : []),
      ];
      issues.push(...flaws.map((flaw) => told(file, rule.id, flaw)));
      if (flaws.length > 0 || earlier) continue;
      writtenIn.set(rule.id, file);
      rules.set(rule.id, base ? widened(base, rule) : rule);
    }
  return { rules: [...rules.values()], issues };
}

/** What is wrong with one key of a rule. */
interface RuleFlaw {
  readonly code: string;
  /** Null for the whole rule. */
  readonly key: keyof CautionRule | null;
  readonly words: string;
  readonly fix: string;
}

function told({ source }: LoadedCautions, id: string, { code, key, words, fix }: RuleFlaw): Issue {
  const path: Path = ['cautions', id, ...(key === null ? [] : [key])];
  const at = source.locate(path, key === null ? 'key' : 'value');
  return { code, severity: 'error', at, words, fix };
}

/** Two files of one's own that say different things under one name. */
function repeated(
  rule: CautionRule,
  standing: CautionRule,
  { source, rules }: LoadedCautions,
): RuleFlaw[] {
  const first = rules.find(({ id }) => id === rule.id) ?? standing;
  if (JSON.stringify(first) === JSON.stringify(rule)) return [];
  return [
    {
      code: 'repeated-name',
      key: null,
      words: `${source.file} has a caution "${rule.id}" too, which says something else`,
      fix: 'give one of them another name: both are then shown',
    },
  ];
}

/** What a rule under a shipped name takes away from the shipped one. */
function changes(
  rule: CautionRule,
  base: CautionRule,
  language: string,
  shippedLanguage: string,
): RuleFlaw[] {
  const flaws: RuleFlaw[] = [];
  if (rule.say !== base.say && isSameLanguage(language, shippedLanguage))
    flaws.push({
      code: 'caution-changed',
      key: 'say',
      words: `the shipped text of "${rule.id}" can be changed in another language only`,
      fix: 'give this text a name of its own, and both stand; or name its language at the top, such as "language: de"',
    });
  if (rule.word !== base.word)
    flaws.push({
      code: 'caution-changed',
      key: 'word',
      words: `the shipped caution "${rule.id}" is a ${base.word}`,
      fix: `write "word: ${base.word}"`,
    });
  for (const key of ['hazards', 'states', 'when'] as const) {
    // What a text in another language leaves out holds as shipped.
    if (rule[key].length === 0) continue;
    const lacking = (base[key] as readonly string[]).filter(
      (one) => !(rule[key] as readonly string[]).includes(one),
    );
    if (lacking.length > 0) flaws.push(narrowed(rule.id, key, lacking));
  }
  const drives = base.drives.filter((drive) => !rule.drives.includes(drive));
  if (rule.drives.length > 0 && base.drives.length === 0)
    flaws.push({
      code: 'caution-narrowed',
      key: 'drives',
      words: `the shipped caution "${rule.id}" applies to every drive`,
      fix: 'leave "drives" out',
    });
  else if (rule.drives.length > 0 && drives.length > 0)
    flaws.push(narrowed(rule.id, 'drives', drives));
  return flaws;
}

function narrowed(
  id: string,
  key: 'hazards' | 'states' | 'when' | 'drives',
  lacking: readonly string[],
): RuleFlaw {
  const named = key === 'hazards' ? 'warns of' : 'stands for';
  return {
    code: 'caution-narrowed',
    key,
    words: `the shipped caution "${id}" ${named} ${lacking.join(', ').replace(/-/g, ' ')}, and this one does not`,
    fix: `add ${lacking.join(', ')}`,
  };
}

/** The shipped rule in the words of the own one, wherever either of them stands. */
function widened(base: CautionRule, rule: CautionRule): CautionRule {
  const both = <T>(a: readonly T[], b: readonly T[]): T[] => [...new Set([...a, ...b])];
  return {
    ...base,
    say: rule.say,
    hazards: both(base.hazards, rule.hazards),
    states: both(base.states, rule.states),
    when: both(base.when, rule.when),
    drives: base.drives.length === 0 ? [] : both(base.drives, rule.drives),
  };
}

/** Two tags of one language, whatever the region: `en` and `en-GB` (RFC 5646, the primary subtag). */
function isSameLanguage(a: string, b: string): boolean {
  const primary = (tag: string) => tag.split('-')[0]!.toLowerCase();
  return primary(a) === primary(b);
}
