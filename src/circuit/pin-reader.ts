/** Reads what stands behind a module's pin: output, resistor, input, and what of it a circuit leaves open. */
import { saysOneOf, splitChoices } from '../quantity/split-choices.ts';
import { oneOfSeveral } from '../quantity/value-at.ts';
import type { Path } from '../source/yaml-source.ts';
import {
  endsOf,
  type ModuleInput,
  type Pull,
  type PullChoice,
  type PullEnd,
  type PullTo,
  type Reference,
} from './circuit.ts';
import type { ModuleDraft, ModulePinDraft } from './generated/circuit.mjs';
import { canMeasure } from './input-levels.ts';
import { readToleranced } from './read-value.ts';
import { ValueReader } from './value-reader.ts';

type Drafts = ModuleDraft['pins'];
type Draft<K extends keyof ModulePinDraft> = NonNullable<ModulePinDraft[K]>;

/** What a level may be written in: its unit, and what the module then measures. */
const LEVEL_UNITS = { V: undefined, A: 'pull-amps', '%': 'pull-supply' } as const;

/** `same as signal-plus`: the voltage of another pin's resistor, one rail for both; or its resistance, two of one kind. */
const SAME_AS = /^same as ([a-z0-9-]{1,100})$/;

/** Drafts of a pin's insides become what stands behind it. */
export class PinReader extends ValueReader {
  protected reference(draft: Draft<'reference'>, path: Path): Reference {
    const series = this.positive(draft.series, '0.5 ohm', [...path, 'series']);
    const limit = this.positive(draft.limit, '40 mA to 150 mA', [...path, 'limit'], 'A');
    const at = [...path, 'volts'];
    if (draft.volts === 'battery') return { volts: 'battery', series, limit };
    const choices = this.choices(draft.volts, at);
    if (!choices?.some(({ text }) => text === 'battery'))
      return { volts: this.positive(draft.volts, '', at, 'V'), series, limit };
    const others = choices.filter(({ text }) => text !== 'battery');
    const share = others.reduce((sum, { chance }) => sum + chance, 0);
    if (others.length === 0) return { volts: 'battery', series, limit };
    const volts = oneOfSeveral(
      others.map(({ text, chance }) => ({
        chance: chance / share,
        value: this.positive(text, '', at, 'V'),
      })),
    );
    return { volts, batteryChance: 1 - share, series, limit };
  }

  /** A pin, battery, ground, a voltage, or `one of` these. */
  private pullTo(text: string, path: Path, drafts: Drafts): PullTo {
    const choices = this.choices(text, path);
    if (choices === null) return this.pullEnd(text, path, drafts);
    const read = choices.map(({ text: one, chance }) => ({
      chance,
      end: this.pullEnd(one, path, drafts),
    }));
    const volts = read.flatMap(({ chance, end }) =>
      end.kind === 'volts' ? [{ chance, value: end.volts }] : [],
    );
    if (volts.length < 2) return { kind: 'one-of', ends: read };
    // Several voltages are one end whose voltage is one of several.
    const chance = volts.reduce((sum, one) => sum + one.chance, 0);
    const shares = volts.map((one) => ({ ...one, chance: one.chance / chance }));
    const voltage: PullChoice = {
      chance,
      end: { kind: 'volts', volts: oneOfSeveral(shares) },
    };
    const others = read.filter(({ end }) => end.kind !== 'volts');
    return others.length === 0 ? voltage.end : { kind: 'one-of', ends: [voltage, ...others] };
  }

  protected pull(draft: Draft<'pull'>, path: Path, drafts: Drafts): Pull {
    const to = this.pullTo(draft.to, [...path, 'to'], drafts);
    const [, twin] = SAME_AS.exec(draft.ohms) ?? [];
    const at = [...path, 'ohms'];
    const alike = this.alike(draft.alike, to, path, drafts);
    if (twin === undefined) return { to, ...alike, ohms: this.positive(draft.ohms, '', at) };
    const other = drafts[twin]?.pull?.ohms ?? '';
    const ohms = readToleranced(other, 'ohm');
    if (ohms.ok) return { to, ...alike, ohms: ohms.value, ohmsAs: twin };
    this.issue(
      'no-such-resistor',
      `the pin "${twin}" has no resistor of its own`,
      at,
      'name a pin whose pull has ohms',
    );
    return { to, ohms: this.positive('1 kohm', '', at) };
  }

  /** The pin that it is built like, which has to have the same choice of ends, with the same chances. */
  private alike(
    name: string | undefined,
    to: PullTo,
    path: Path,
    drafts: Drafts,
  ): Pick<Pull, 'alike'> {
    if (name === undefined) return {};
    const other = drafts[name]?.pull;
    const chances = (text: string | undefined) =>
      text !== undefined && saysOneOf(text)
        ? this.choices(text, path)?.map(({ chance }) => chance)
        : undefined;
    const here = to.kind === 'one-of' ? to.ends.map(({ chance }) => chance) : undefined;
    const there = other?.alike === undefined ? chances(other?.to) : undefined;
    if (here && there && String(here) === String(there)) return { alike: name };
    this.issue(
      'not-alike',
      `the pin "${name}" has no choice of ends of its own with the same chances`,
      [...path, 'alike'],
      'name a pin whose pull leads to "one of" as many ends, each as likely as here',
    );
    return {};
  }

  private pullEnd(text: string, path: Path, drafts: Drafts): PullEnd {
    const pins = Object.keys(drafts);
    const [, twin] = SAME_AS.exec(text) ?? [];
    if (twin !== undefined) {
      const other = drafts[twin]?.pull?.to ?? '';
      const volts = readToleranced(other, 'V');
      if (volts.ok) return { kind: 'volts', volts: volts.value, as: twin };
      this.issue(
        'no-such-voltage',
        `the pin "${twin}" has no resistor to a voltage`,
        path,
        'name a pin whose pull leads to a voltage',
      );
      return { kind: 'ground' };
    }
    if (text === 'battery' || text === 'ground' || text === 'nothing') return { kind: text };
    if (pins.includes(text)) return { kind: 'pin', pin: text };
    if (/^[\d.]/.test(text)) return { kind: 'volts', volts: this.value(text, '', 'V', path) };
    this.unknown(
      'unknown-pin',
      `"${text}" is no pin of this module, and neither battery, ground, nothing nor a voltage`,
      text,
      pins,
      path,
    );
    return { kind: 'pin', pin: text };
  }

  /** What stands between the commas of a `one of`; null for another text, and with an issue for one that is none. */
  protected choices(text: string, path: Path) {
    if (!saysOneOf(text)) return null;
    const split = splitChoices(text, (one) => readToleranced(one, 'V').ok);
    if (split.ok) return split.choices;
    this.issue('bad-value', `"${text}" is not understood: ${split.words}`, path, split.fix);
    return [];
  }

  protected input(
    draft: Draft<'input'>,
    pull: PullTo | undefined,
    path: Path,
    pins: readonly string[],
  ): ModuleInput {
    if (draft.swing !== undefined && draft.against !== undefined) {
      if (!pins.includes(draft.against))
        this.unknown(
          'unknown-pin',
          `"${draft.against}" is no pin of this module`,
          draft.against,
          pins,
          [...path, 'against'],
        );
      return {
        kind: 'swing',
        swing: this.positive(draft.swing, '', [...path, 'swing'], 'V').nominal,
        against: draft.against,
      };
    }
    const low = draft['low-below'];
    const high = draft['high-above'];
    if (low === undefined || high === undefined) {
      this.issue(
        'incomplete-input',
        'an input needs low-below and high-above, or swing and against',
        path,
      );
      return { kind: 'levels', lowBelow: 0, highAbove: 0 };
    }
    return this.levels(low, high, draft.of === 'travel' ? 'travel' : pull, path);
  }

  /**
   * Two levels in volts, as currents through the pin's resistor to ground, as shares of what it leads up to, or of the
   * travel of the pin's track.
   */
  private levels(
    low: string,
    high: string,
    pull: PullTo | 'travel' | undefined,
    path: Path,
  ): ModuleInput {
    const unit = (['A', '%'] as const).find((one) => readToleranced(low, one).ok) ?? 'V';
    const read = (text: string, key: string) => {
      const { nominal } = this.positive(text, '', [...path, key], unit);
      return unit === '%' ? nominal / 100 : nominal;
    };
    const lowBelow = read(low, 'low-below');
    const highAbove = read(high, 'high-above');
    if (lowBelow >= highAbove)
      this.issue('bad-thresholds', 'low-below must lie under high-above', path);
    if (pull === 'travel') {
      if (unit === '%') return { kind: 'levels', lowBelow, highAbove, of: 'travel' };
      this.issue(
        'bad-travel',
        'levels of the travel are parts of it, in per cent',
        [...path, 'low-below'],
        'write them like 25 % and 70 %, or leave "of" out',
      );
      return { kind: 'levels', lowBelow, highAbove };
    }
    const of = LEVEL_UNITS[unit];
    const ends = pull ? endsOf(pull) : [];
    if (of === 'pull-amps' && !canMeasure(of, ends))
      this.issue(
        'no-sense-resistor',
        'levels in ampere need a resistor of this pin to ground, through which they flow',
        path,
        'give the pin a pull to ground, or write the levels in volts',
      );
    if (of === 'pull-supply' && !canMeasure(of, ends))
      this.issue(
        'no-pull-up',
        'levels in per cent need a pull-up of this pin, of whose supply they are a part',
        path,
        'give the pin a pull to a supply, or write the levels in volts',
      );
    return { kind: 'levels', lowBelow, highAbove, ...(of && { of }) };
  }
}
