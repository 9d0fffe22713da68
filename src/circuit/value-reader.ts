/** Reads values out of a circuit file and collects what is wrong with them, each at its place. */
import type { Toleranced, Unit } from '../quantity/quantity.ts';
import { saysOneOf, splitChoices } from '../quantity/split-choices.ts';
import { mapped } from '../quantity/value-at.ts';
import type { Issue } from '../source/issue.ts';
import { nameFix } from '../source/nearest-name.ts';
import type { Path, YamlSource } from '../source/yaml-source.ts';
import { readToleranced } from './read-value.ts';
import { withinReason } from './within-reason.ts';

/** One file being read: whatever reads a piece of it leaves its mistakes here. */
export class ValueReader {
  readonly issues: Issue[] = [];
  readonly source: YamlSource;

  constructor(source: YamlSource) {
    this.source = source;
  }

  /** A toleranced value above zero. */
  positive(text: string | undefined, fallback: string, path: Path, unit: Unit = 'ohm'): Toleranced {
    const value = this.value(text, fallback, unit, path);
    if (value.low > 0) return value;
    this.issue(
      'not-positive',
      `"${text}" must stay above zero`,
      path,
      'write a value that stays above zero over its whole tolerance',
    );
    return { nominal: 1, low: 1, high: 1, unit };
  }

  /** A share of 0 to 100 %, as 0 to 1. */
  share(text: string, path: Path): Toleranced {
    const value = this.value(text, '', '%', path);
    const part = mapped(value, (percent) => percent / 100, '1');
    if (part.low < 0 || part.high > 1)
      this.issue(
        'bad-share',
        `"${text}" must be between 0 % and 100 %`,
        path,
        'tolerance included',
      );
    return part;
  }

  /** A toleranced value, within what a vehicle has. */
  value(text: string | undefined, fallback: string, unit: Unit, path: Path): Toleranced {
    const read = readToleranced(text ?? fallback, unit);
    if (read.ok && withinReason(read.value)) return read.value;
    if (read.ok) {
      this.issue(
        'out-of-reason',
        `"${text}" is not plausible in a vehicle's sensor circuit`,
        path,
        'check the prefix of the unit',
      );
      return { nominal: 1, low: 1, high: 1, unit };
    }
    this.issue(
      'bad-value',
      `"${text ?? fallback}" is not understood: ${read.words}`,
      path,
      read.fix,
    );
    return { nominal: 1, low: 1, high: 1, unit };
  }

  /** What stands between the commas of a `one of`; null for another text, and with an issue for one that is none. */
  choices(text: string, path: Path) {
    if (!saysOneOf(text)) return null;
    const split = splitChoices(text, (one) => readToleranced(one, 'V').ok);
    if (split.ok) return split.choices;
    this.issue('bad-value', `"${text}" is not understood: ${split.words}`, path, split.fix);
    return [];
  }

  /** A name that is none, with the known one nearest to it. */
  unknown(
    code: string,
    words: string,
    typed: string,
    known: readonly string[],
    path: Path,
    what: 'key' | 'value' = 'value',
  ): void {
    const fix = nameFix(typed, known);
    this.issues.push({ code, severity: 'error', at: this.source.locate(path, what), words, fix });
  }

  /** Something wrong at a place of the file. */
  issue(code: string, words: string, path: Path, fix?: string): void {
    this.issues.push({
      code,
      severity: 'error',
      at: this.source.locate(path),
      words,
      ...(fix ? { fix } : {}),
    });
  }
}
