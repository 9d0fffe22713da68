/** Which cautions stand before which step: by vehicle state, by what is used, by the vehicle's drive, or by name. */
import type { Circuit, Part } from '../circuit/circuit.ts';
import type { Probe, Setup, TerminalId, VehicleState } from '../circuit/test.ts';
import type { Checked, Issue } from '../source/issue.ts';
import { parseShaped } from '../source/parse-shaped.ts';
import type { YamlSource } from '../source/yaml-source.ts';
import validate from './generated/cautions.mjs';
import type { Drive } from './job.ts';
import type { Caution, Hazard } from './procedure.ts';
import { SIGNAL_WORDS } from './procedure.ts';

/** What a step can use that brings its own hazard. */
const CAUTION_OCCASIONS = [
  'ohms',
  'amps',
  'light',
  'lamp',
  'bridge',
  'lead',
  'fed-wire',
  'unplug',
  'module-off',
  'back-probe',
  'spare',
  'moving',
] as const;
type CautionOccasion = (typeof CAUTION_OCCASIONS)[number];

/** A caution with the occasions on which it has to be read. */
export interface CautionRule extends Caution {
  readonly states: readonly VehicleState[];
  /** Empty for every vehicle. */
  readonly drives: readonly Drive[];
  readonly when: readonly CautionOccasion[];
}

/** A file of cautions, its own mistakes apart; `merge-cautions.ts` brings several together. */
export interface LoadedCautions {
  /** Of the texts, a tag of RFC 5646. */
  readonly language: string;
  readonly rules: readonly CautionRule[];
  readonly source: YamlSource;
}

/** Of a file that names no language. */
const USUAL_LANGUAGE = 'en';

/** What the starter can do beside turning the engine. */
export const STARTER_HAZARDS: readonly Hazard[] = [
  'engine-start',
  'exhaust-gas',
  'ignition-voltage',
  'raw-fuel',
  'starter-heat',
  'engine-damage',
];

/**
 * Hazards that must be covered before a person works near a turning or running engine, or on the road (common practice,
 * no source). Whoever cranks must know that the engine can start, and what cranking by itself can break.
 */
const HAZARDS_OF_STATE: Readonly<Record<VehicleState, readonly Hazard[]>> = {
  'key-off': [],
  'key-on': ['energised-circuit'],
  cranking: ['rotating-parts', 'unexpected-start', 'vehicle-secured', ...STARTER_HAZARDS],
  running: ['rotating-parts', 'hot-parts', 'exhaust-gas', 'unexpected-start', 'vehicle-secured'],
  driving: ['traffic'],
};

/**
 * Hazards of the vehicle itself: a high-voltage drive wherever hands are at work, and one that stands ready to drive
 * while it is switched on and makes no sound (common practice, no source). A drive that nobody stated may be any of them.
 */
const HIGH_VOLTAGE: readonly Hazard[] = ['high-voltage'];
const HAZARDS_OF_DRIVE: Readonly<Record<Drive, readonly Hazard[]>> = {
  combustion: [],
  hybrid: HIGH_VOLTAGE,
  electric: HIGH_VOLTAGE,
  'not-stated': HIGH_VOLTAGE,
};
const MOVES_WHEN_ON: readonly Hazard[] = ['vehicle-moves'];

/** A step that looks whether the timing has moved, before the engine is turned by the starter, warns of this. */
export const TIMING_HAZARD: Hazard = 'engine-damage';

/** What stands before a look into a connector, which opens it. */
export const OPENING_CAUTION = 'unplug-key-off';
/** What stands before an engine that is turned by hand: to the maker's marks, or past the eye that looks at its wheel. */
export const TURNING_CAUTION = 'turned-by-hand';
/** What stands before a wheel of the vehicle that is raised and turned. */
export const RAISED_CAUTION = 'raised-wheel';
/** What stands before an engine that is to turn although its timing may be off. */
export const TIMING_OFF_CAUTION = 'timing-off';
/** What stands before a throttle or pedal that is moved with the key on. */
export const THROTTLE_CAUTION = 'throttle-snaps';

/** The cautions in `text` (cautions.yaml); null with issues when they cannot be used. */
export function loadCautions(text: string, file: string): Checked<LoadedCautions> {
  const { value: shaped, issues } = parseShaped(text, file, validate);
  if (!shaped) return { value: null, issues: issues.map(withOther) };
  const { data, source } = shaped;
  const rules = Object.entries(data.cautions).map(([id, draft]) => ({
    id,
    word: draft.word,
    say: draft.say,
    hazards: draft.hazards,
    states: draft.states ?? [],
    drives: draft.drives ?? [],
    when: draft.when ?? [],
  }));
  const { language = USUAL_LANGUAGE } = data;
  return { value: { language, rules, source }, issues };
}

/** Whoever names a hazard that is not known may have one of their own, and must not be led to one that stands for other work. */
function withOther(issue: Issue): Issue {
  if (issue.code !== 'unknown-choice' || !issue.words.includes('.hazards"')) return issue;
  const listed = issue.fix?.replace(/, other$/, '') ?? '';
  return { ...issue, fix: `${listed}, or "other" for a hazard that none of these names` };
}

/** What a step or test is done on and with. Without a circuit nobody knows which part is a module. */
export interface CautionPlace {
  readonly drive: Drive;
  readonly setup: Setup;
  /** All that is read in it. */
  readonly probes: readonly (Probe | null)[];
  readonly circuit: Circuit | null;
}

/** The cautions of one step, gravest first; `named` are those its author asked for. */
export function cautionsFor(
  rules: readonly CautionRule[],
  place: CautionPlace,
  named: readonly string[],
): Caution[] {
  const { drive, setup } = place;
  const occasions = occasionsOf(place);
  return rules
    .filter((rule) => rule.drives.length === 0 || rule.drives.includes(drive))
    .filter(
      (rule) =>
        named.includes(rule.id) ||
        rule.states.includes(setup.state) ||
        rule.when.some((occasion) => occasions.has(occasion)),
    )
    .map(({ id, word, say, hazards }) => ({ id, word, say, hazards }))
    .sort((a, b) => SIGNAL_WORDS.indexOf(a.word) - SIGNAL_WORDS.indexOf(b.word));
}

/** Hazards of the state and of the drive that none of the cautions speaks of. */
export function uncoveredHazards(
  state: VehicleState,
  drive: Drive,
  cautions: readonly Caution[],
): Hazard[] {
  const covered = new Set(cautions.flatMap((caution) => caution.hazards));
  const ofDrive = state === 'driving' ? [] : HAZARDS_OF_DRIVE[drive];
  const moves = drive !== 'combustion' && state === 'key-on' ? MOVES_WHEN_ON : [];
  return [...HAZARDS_OF_STATE[state], ...ofDrive, ...moves].filter(
    (hazard) => !covered.has(hazard),
  );
}

function occasionsOf({ setup, probes, circuit }: CautionPlace): ReadonlySet<CautionOccasion> {
  const { bridges, unplugged } = setup;
  const kindOf = (name: string) => circuit?.parts.find((part) => part.name === name)?.kind;
  const clipped = bridges.map(({ through }) => through);
  // Battery voltage on a wire that everything is off: a caution of its own, and not that of an input under load.
  const isFed = bridges.some(
    ({ from, through }) => through === 'lamp' && from.startsWith('battery.'),
  );
  const reads = (kind: Probe['kind']) => probes.some((probe) => probe?.kind === kind);
  const present: Readonly<Record<CautionOccasion, boolean>> = {
    ohms: reads('ohms'),
    amps: reads('amps'),
    light: reads('light') || clipped.includes('test-light'),
    lamp: reads('lamp') || clipped.includes('lamp'),
    bridge: bridges.length > 0 && !isFed,
    lead: clipped.includes('lead'),
    'fed-wire': isFed,
    unplug: unplugged.length > 0,
    'module-off': [...unplugged, ...probes.flatMap(openedFor)].some(
      (name) => kindOf(name) === 'module',
    ),
    'back-probe': probes.flatMap(leadsOf).some((lead) => isBackProbed(lead, setup, kindOf)),
    spare: setup.sensor === 'spare',
    moving: setup.target === 'moving',
  };
  return new Set(CAUTION_OCCASIONS.filter((occasion) => present[occasion]));
}

/** Who looks into a connector opens it. */
function openedFor(probe: Probe | null): readonly string[] {
  const [, part] = (probe?.kind === 'inspect' && /^connector\.(.+)$/.exec(probe.of)) || [];
  return part === undefined ? [] : [part];
}

function leadsOf(probe: Probe | null): readonly TerminalId[] {
  return probe && 'plus' in probe ? [probe.plus, probe.minus] : [];
}

/** A terminal in a plug that stays on is reached from behind; posts, bolts and fuses are not. */
function isBackProbed(
  lead: TerminalId,
  { unplugged }: Setup,
  kindOf: (name: string) => Part['kind'] | undefined,
): boolean {
  const part = lead.split('.')[0]!;
  const kind = kindOf(part);
  return (
    kind !== undefined && !unplugged.includes(part) && kind !== 'ground-point' && kind !== 'fuse'
  );
}
