/** Which cautions stand before which step: by vehicle state, by what is used, by the vehicle's drive, or by name. */
import type { Probe, Setup, VehicleState } from '../circuit/test.ts';
import { type Checked, isUsable } from '../source/issue.ts';
import { parseYaml, type YamlSource } from '../source/parse-yaml.ts';
import { schemaIssues } from '../source/schema-issues.ts';
import validate from './generated/cautions.mjs';
import type { Drive } from './job.ts';
import type { Caution, Hazard } from './procedure.ts';
import { SIGNAL_WORDS } from './procedure.ts';

/** What a step can use that brings its own hazard. */
const CAUTION_OCCASIONS = [
  'ohms',
  'light',
  'lamp',
  'bridge',
  'lead',
  'unplug',
  'spare',
  'moving',
] as const;
type CautionOccasion = (typeof CAUTION_OCCASIONS)[number];

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

/** Hazards that must be covered before a person works near a turning or running engine (common practice, no source). */
const HAZARDS_OF_STATE: Readonly<Record<VehicleState, readonly Hazard[]>> = {
  'key-off': [],
  'key-on': ['energised-circuit'],
  cranking: ['rotating-parts', 'unexpected-start', 'vehicle-secured'],
  running: ['rotating-parts', 'hot-parts', 'exhaust-gas', 'unexpected-start', 'vehicle-secured'],
};

/** Hazards of the vehicle itself, whatever its state: a high-voltage drive (common practice, no source). */
const HAZARDS_OF_DRIVE: Readonly<Record<Drive, readonly Hazard[]>> = {
  combustion: [],
  hybrid: ['high-voltage'],
  electric: ['high-voltage'],
};

/** What stands before a look into a connector, which opens it. */
export const OPENING_CAUTION = 'unplug-key-off';

/** The cautions in `text` (cautions.yaml); null with issues when they cannot be used. */
export function loadCautions(text: string, file: string): Checked<LoadedCautions> {
  const parsed = parseYaml(text, file);
  if (!parsed.value || !isUsable(parsed.issues)) return { value: null, issues: parsed.issues };
  const { data } = parsed.value;
  if (!validate(data))
    return {
      value: null,
      issues: [...parsed.issues, ...schemaIssues(validate.errors, parsed.value)],
    };
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
  return { value: { language, rules, source: parsed.value }, issues: parsed.issues };
}

/** The cautions of one step and all that is read in it, gravest first; `named` are those its author asked for. */
export function cautionsFor(
  rules: readonly CautionRule[],
  drive: Drive,
  setup: Setup,
  probes: readonly (Probe | null)[],
  named: readonly string[],
): Caution[] {
  const occasions = occasionsOf(setup, probes);
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
  return [...HAZARDS_OF_STATE[state], ...HAZARDS_OF_DRIVE[drive]].filter(
    (hazard) => !covered.has(hazard),
  );
}

function occasionsOf(setup: Setup, probes: readonly (Probe | null)[]): Set<CautionOccasion> {
  const found = new Set<CautionOccasion>();
  for (const probe of probes)
    if (probe?.kind === 'ohms' || probe?.kind === 'light' || probe?.kind === 'lamp')
      found.add(probe.kind);
  for (const { through } of setup.bridges) {
    found.add('bridge');
    if (through === 'lead' || through === 'lamp') found.add(through);
    if (through === 'test-light') found.add('light');
  }
  if (setup.unplugged.length > 0) found.add('unplug');
  if (setup.sensor === 'spare') found.add('spare');
  if (setup.target === 'moving') found.add('moving');
  return found;
}
