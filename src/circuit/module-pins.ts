/** Reads what stands behind a module's pin: output, resistor, input, and what of it a circuit leaves open. */
import { saysOneOf } from '../quantity/split-choices.ts';
import { oneOfSeveral } from '../quantity/value-at.ts';
import type { Path } from '../source/yaml-source.ts';
import {
  type ModuleInput,
  type ModulePin,
  type Pull,
  type PullChoice,
  type PullEnd,
  type PullTo,
  pullEnds,
  type Reference,
} from './circuit.ts';
import type { ModuleDraft, ModulePinDraft } from './generated/circuit.mjs';
import { canMeasure } from './input-levels.ts';
import { readToleranced } from './read-value.ts';
import type { ValueReader } from './value-reader.ts';

type Drafts = ModuleDraft['pins'];
type PinDraft<K extends keyof ModulePinDraft> = NonNullable<ModulePinDraft[K]>;

/** What a level may be written in: its unit, and what the module then measures. */
const LEVEL_UNITS = { V: undefined, A: 'pull-amps', '%': 'pull-supply' } as const;

/** `same as signal-plus`: the voltage of another pin's resistor, one rail for both; or its resistance, two of one kind. */
const SAME_AS = /^same as ([a-z0-9-]{1,100})$/;

/** The pins of a module with what stands behind each; `part` is its name in the file. */
export function modulePins(reader: ValueReader, part: string, draft: ModuleDraft): ModulePin[] {
  return Object.entries(draft.pins).map(([name, pin]) =>
    modulePinOf(reader, ['parts', part, 'pins', name], name, pin, draft.pins),
  );
}

function modulePinOf(
  reader: ValueReader,
  path: Path,
  name: string,
  draft: ModulePinDraft,
  drafts: ModuleDraft['pins'],
): ModulePin {
  const pins = Object.keys(drafts);
  const { reference, pull, input, ground, driver } = draft;
  const joinedTo = draft['joined-to'] ?? null;
  const others = pins.filter((pin) => pin !== name);
  if (joinedTo !== null && !others.includes(joinedTo))
    reader.unknown(
      'unknown-pin',
      `"${joinedTo}" is not another pin of this module`,
      joinedTo,
      others,
      [...path, 'joined-to'],
    );
  const read = pull ? pullOf(reader, pull, [...path, 'pull'], drafts) : null;
  return {
    name,
    reference: reference ? referenceOf(reader, reference, [...path, 'reference']) : null,
    pull: read,
    input: input ? inputOf(reader, input, read?.to, [...path, 'input'], pins) : null,
    ground: ground ? reader.positive(ground.ohms, '20 mohm', [...path, 'ground', 'ohms']) : null,
    ...(driver !== undefined && {
      driver: reader.positive(driver.ohms, '0.2 ohm to 2 ohm', [...path, 'driver', 'ohms']),
    }),
    ...(ground?.offset !== undefined && {
      groundVolts: reader.value(ground.offset, '', 'V', [...path, 'ground', 'offset']),
    }),
    joinedTo,
  };
}

function referenceOf(reader: ValueReader, draft: PinDraft<'reference'>, path: Path): Reference {
  const series = reader.positive(draft.series, '0.5 ohm', [...path, 'series']);
  const limit = reader.positive(draft.limit, '40 mA to 150 mA', [...path, 'limit'], 'A');
  const at = [...path, 'volts'];
  if (draft.volts === 'battery') return { volts: 'battery', series, limit };
  const choices = reader.choices(draft.volts, at);
  if (!choices?.some(({ text }) => text === 'battery'))
    return { volts: reader.positive(draft.volts, '', at, 'V'), series, limit };
  const others = choices.filter(({ text }) => text !== 'battery');
  const share = others.reduce((sum, { chance }) => sum + chance, 0);
  if (others.length === 0) return { volts: 'battery', series, limit };
  const volts = oneOfSeveral(
    others.map(({ text, chance }) => ({
      chance: chance / share,
      value: reader.positive(text, '', at, 'V'),
    })),
  );
  return { volts, batteryChance: 1 - share, series, limit };
}

function pullOf(reader: ValueReader, draft: PinDraft<'pull'>, path: Path, drafts: Drafts): Pull {
  const to = pullToOf(reader, draft.to, [...path, 'to'], drafts);
  const [, twin] = SAME_AS.exec(draft.ohms) ?? [];
  const at = [...path, 'ohms'];
  const alike = alikeOf(reader, draft.alike, to, path, drafts);
  if (twin === undefined) return { to, ...alike, ohms: reader.positive(draft.ohms, '', at) };
  const other = drafts[twin]?.pull?.ohms ?? '';
  const ohms = readToleranced(other, 'ohm');
  if (ohms.ok) return { to, ...alike, ohms: ohms.value, ohmsAs: twin };
  reader.issue(
    'no-such-resistor',
    `the pin "${twin}" has no resistor of its own`,
    at,
    'name a pin whose pull has ohms',
  );
  return { to, ohms: reader.positive('1 kohm', '', at) };
}

/** A pin, battery, ground, a voltage, or `one of` these. */
function pullToOf(reader: ValueReader, text: string, path: Path, drafts: Drafts): PullTo {
  const choices = reader.choices(text, path);
  if (choices === null) return pullEndOf(reader, text, path, drafts);
  const read = choices.map(({ text: one, chance }) => ({
    chance,
    end: pullEndOf(reader, one, path, drafts),
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

/** The pin that it is built like, which has to have the same choice of ends, with the same chances. */
function alikeOf(
  reader: ValueReader,
  name: string | undefined,
  to: PullTo,
  path: Path,
  drafts: Drafts,
): Pick<Pull, 'alike'> {
  if (name === undefined) return {};
  const other = drafts[name]?.pull;
  const chances = (text: string | undefined) =>
    text !== undefined && saysOneOf(text)
      ? reader.choices(text, path)?.map(({ chance }) => chance)
      : undefined;
  const here = to.kind === 'one-of' ? to.ends.map(({ chance }) => chance) : undefined;
  const there = other?.alike === undefined ? chances(other?.to) : undefined;
  if (here && there && String(here) === String(there)) return { alike: name };
  reader.issue(
    'not-alike',
    `the pin "${name}" has no choice of ends of its own with the same chances`,
    [...path, 'alike'],
    'name a pin whose pull leads to "one of" as many ends, each as likely as here',
  );
  return {};
}

function pullEndOf(reader: ValueReader, text: string, path: Path, drafts: Drafts): PullEnd {
  const pins = Object.keys(drafts);
  const [, twin] = SAME_AS.exec(text) ?? [];
  if (twin !== undefined) {
    const other = drafts[twin]?.pull?.to ?? '';
    const ends = saysOneOf(other) ? (reader.choices(other, path) ?? []) : [{ text: other }];
    for (const { text: end } of ends) {
      const volts = readToleranced(end, 'V');
      if (volts.ok) return { kind: 'volts', volts: volts.value, as: twin };
    }
    reader.issue(
      'no-such-voltage',
      `the pin "${twin}" has no resistor to a voltage`,
      path,
      'name a pin whose pull leads to a voltage',
    );
    return { kind: 'ground' };
  }
  if (text === 'battery' || text === 'ground' || text === 'nothing') return { kind: text };
  if (pins.includes(text)) return { kind: 'pin', pin: text };
  if (/^[\d.]/.test(text)) return { kind: 'volts', volts: reader.value(text, '', 'V', path) };
  reader.unknown(
    'unknown-pin',
    `"${text}" is not a pin of this module, nor battery, ground, nothing or a voltage`,
    text,
    pins,
    path,
  );
  return { kind: 'pin', pin: text };
}

function inputOf(
  reader: ValueReader,
  draft: PinDraft<'input'>,
  pull: PullTo | undefined,
  path: Path,
  pins: readonly string[],
): ModuleInput {
  if (draft.swing !== undefined && draft.against !== undefined) {
    if (!pins.includes(draft.against))
      reader.unknown(
        'unknown-pin',
        `"${draft.against}" is not a pin of this module`,
        draft.against,
        pins,
        [...path, 'against'],
      );
    return {
      kind: 'swing',
      swing: reader.positive(draft.swing, '', [...path, 'swing'], 'V').nominal,
      against: draft.against,
    };
  }
  const low = draft['low-below'];
  const high = draft['high-above'];
  if (low === undefined || high === undefined) {
    reader.issue(
      'incomplete-input',
      'an input needs low-below and high-above, or swing and against',
      path,
    );
    return { kind: 'levels', lowBelow: 0, highAbove: 0 };
  }
  return levelsOf(reader, low, high, draft.of === 'travel' ? 'travel' : pull, path);
}

/**
 * Two levels in volts, as currents through the pin's resistor to ground, as shares of what it leads up to, or of the
 * travel of the pin's track.
 */
function levelsOf(
  reader: ValueReader,
  low: string,
  high: string,
  pull: PullTo | 'travel' | undefined,
  path: Path,
): ModuleInput {
  const unit = (['A', '%'] as const).find((one) => readToleranced(low, one).ok) ?? 'V';
  const read = (text: string, key: string) => {
    const { nominal } = reader.positive(text, '', [...path, key], unit);
    return unit === '%' ? nominal / 100 : nominal;
  };
  const lowBelow = read(low, 'low-below');
  const highAbove = read(high, 'high-above');
  if (lowBelow >= highAbove)
    reader.issue('bad-thresholds', 'low-below must be below high-above', path);
  if (pull === 'travel') {
    if (unit === '%') return { kind: 'levels', lowBelow, highAbove, of: 'travel' };
    reader.issue(
      'bad-travel',
      'levels of the travel are given in per cent of it',
      [...path, 'low-below'],
      'write them like 25 % and 70 %, or leave "of" out',
    );
    return { kind: 'levels', lowBelow, highAbove };
  }
  const of = LEVEL_UNITS[unit];
  const ends = pull ? pullEnds(pull) : [];
  if (of === 'pull-amps' && !canMeasure(of, ends))
    reader.issue(
      'no-sense-resistor',
      'levels in amperes need a resistor of this pin to ground, through which they flow',
      path,
      'give the pin a pull to ground, or write the levels in volts',
    );
  if (of === 'pull-supply' && !canMeasure(of, ends))
    reader.issue(
      'no-pull-up',
      'levels in per cent need a pull-up of this pin, as they are a share of its supply',
      path,
      'give the pin a pull to a supply, or write the levels in volts',
    );
  return { kind: 'levels', lowBelow, highAbove, ...(of && { of }) };
}
