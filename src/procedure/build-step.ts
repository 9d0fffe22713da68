/** One step of a draft as a step of the flat tree. All that is wrong with it goes to the linker's issues. */
import { PROBE_KINDS } from '../circuit/instruments.ts';
import { isNumberProbe, looksShownBy } from '../circuit/shown-by.ts';
import { type NumberProbe, type Probe, type Setup, type Test, UNIT_OF } from '../circuit/test.ts';
import { testRefusalWords } from '../circuit/test-refusal.ts';
import { formatQuantity } from '../quantity/format-quantity.ts';
import type { Path } from '../source/yaml-source.ts';
import { againstLimits, againstSetup } from './against-setup.ts';
import {
  askOutcomes,
  authoredRange,
  lookOutcomes,
  rangeOutcomes,
  tellCoverage,
  tellRanges,
} from './build-outcomes.ts';
import { probeOf, setupOf } from './build-setup.ts';
import { cautionsFor } from './cautions.ts';
import { computedRange } from './expected-range.ts';
import type {
  Measure,
  Outcome as OutcomeDraft,
  Step as StepDraft,
} from './generated/procedure.mjs';
import type { Frame, Linking } from './linking.ts';
import type {
  ActStep,
  AskStep,
  Caution,
  Conclusion,
  LookStep,
  MeasureStep,
  MeasureUnit,
  Step,
} from './procedure.ts';
import { setupSay, watchSay } from './setup-say.ts';
import { StepDraftReader } from './step-draft-reader.ts';
import { uncoveredWork } from './work-hazards.ts';

/** Minutes of a step whose author gives none: one reading at a place already reached. */
export const USUAL_MINUTES = 1;
/** Keys of which a step has exactly one: what kind of step it is. */
const KINDS = ['conclude', 'use', 'result', 'measure', 'outcomes', 'go'] as const;

/** The step, or null when it is none. */
export function buildStep(
  linker: Linking,
  frame: Frame,
  name: string,
  draft: StepDraft,
): Step | null {
  const at = new StepDraftReader(linker, frame, name, draft);
  if (draft.conclude !== undefined) return conclusion(at, draft.conclude);
  if (draft.measure !== undefined) return measured(at, draft.measure);
  if (draft.outcomes !== undefined) return question(at, draft.outcomes);
  if (draft.go !== undefined) return act(at, draft.go);
  at.add(
    'empty-step',
    [],
    'this step asks for nothing and leads nowhere',
    `give it one of: ${KINDS.join(', ')}`,
    'key',
  );
  return null;
}

function conclusion(at: StepDraftReader, patterns: readonly string[]): Conclusion {
  const { draft } = at;
  const faults = [
    ...new Set(patterns.flatMap((pattern, index) => at.faults(pattern, ['conclude', index]))),
  ];
  if (draft.repair === undefined)
    at.add('missing-repair', [], 'a conclusion says what fixes it', 'add the key "repair"', 'key');
  if (draft.say === undefined)
    at.add(
      'missing-text',
      [],
      'a conclusion says what is wrong and how it is known',
      'add the key "say"',
      'key',
    );
  return {
    id: at.id,
    kind: 'conclude',
    title: at.title(),
    faults,
    say: at.text('say'),
    repair: [at.text('repair'), ...repairCautions(at)].filter((text) => text !== '').join(' '),
    customer: at.text('customer'),
    ...(draft.requires === undefined || draft.otherwise === undefined
      ? {}
      : {
          requires: draft.requires.map((name, index) => inside(at, name, ['requires', index])),
          otherwise: at.target(draft.otherwise, ['otherwise']),
        }),
    retest: (draft.retest ?? []).map((target, index) => inside(at, target, ['retest', index])),
  };
}

/** What its author asks for by name is said with the repair, since nobody is asked before it. */
function repairCautions(at: StepDraftReader): string[] {
  const names = at.namedCautions();
  return at.linker.library.cautions
    .filter(({ id }) => names.includes(id))
    .map(({ word, say }) => `${word}: ${say}`);
}

/** A step of this file, or `caller/inner` inside a sub-procedure it uses. */
function inside(at: StepDraftReader, target: string, path: Path): string {
  const [first, ...rest] = target.split('/');
  const head = at.target(first!, path);
  return [head, ...rest].join('/');
}

function measured(at: StepDraftReader, measure: Measure): Step | null {
  const setup = setupOf(at, measure);
  const { reading } = measure;
  if (reading !== undefined) {
    const { unit, level } = reading;
    if (level !== undefined && unit !== 'V' && unit !== 'A')
      at.add(
        'bad-value',
        ['measure', 'reading', 'level'],
        `a signal has no level in ${unit}`,
        'leave "level" out, or measure in V or A',
      );
    const step = measureStep(at, setup, null, unit);
    return level === undefined ? step : { ...step, level };
  }
  const probe = probeOf(at, measure);
  if (!probe) return null;
  // Of a name that is not known nothing can be asked; it has been told.
  const isOpen = at.isWrong || at.lacksAny();
  const isRefused = tellRefused(at, isOpen ? null : { setup, probe }, ['measure']);
  const isAsked = !at.isWrong && !isRefused;
  if (isNumberProbe(probe)) return measureStep(at, setup, probe, UNIT_OF[probe.kind], !isAsked);
  return lookStep(at, setup, probe, !isAsked);
}

const MOVED = { wiggle: true } as const;

/** Texts, minutes and cautions of a step; `watched` is what a question has its person watch. */
function base(
  at: StepDraftReader,
  setup: Setup,
  probe: Probe | null,
  watched: readonly Probe[] = [],
) {
  const { draft } = at;
  const own = at.text('say');
  const read = probe === null ? watched : [probe];
  const made =
    watched.length > 0
      ? watchSay(setup, watched, at.linker.circuit)
      : setupSay(setup, probe, at.linker.circuit);
  if (draft.say === undefined && made === '')
    at.add('missing-text', [], 'this step does not say what to do', 'add the key "say"', 'key');
  if (!at.isWrong)
    for (const { words: wrong, fix } of againstSetup(own, setup, read, at.linker.circuit))
      at.add('against-setup', ['say'], wrong, fix, 'key');
  // A good sensor is plugged in before anything is watched.
  const say = (setup.sensor === 'spare' ? [own, made] : [made, own])
    .filter((text) => text !== '')
    .join(' ');
  const names = at.namedCautions();
  tellWork(at, setup, [probe, ...watched], { say, names });
  const { drive, library, circuit } = at.linker;
  return {
    id: at.id,
    title: at.title(),
    family: draft.test ?? 'inspection',
    setup,
    say,
    why: at.text('why'),
    minutes: draft.minutes ?? USUAL_MINUTES,
    cautions: [
      ...tooWeak(at, setup, probe),
      ...cautionsFor(
        library.cautions,
        { drive, setup, probes: [probe, ...watched], circuit },
        names,
      ),
    ],
    cannot: draft.cannot === undefined ? null : at.target(draft.cannot, ['cannot']),
  };
}

/** Work that its cautions do not speak of; those that the vehicle state brings are of other work. */
function tellWork(
  at: StepDraftReader,
  setup: Setup,
  probes: readonly (Probe | null)[],
  { say, names }: { readonly say: string; readonly names: readonly string[] },
): void {
  const { drive, library, circuit } = at.linker;
  const own = library.cautions.filter(
    ({ id, states }) => states.length === 0 || names.includes(id),
  );
  const cautions = cautionsFor(own, { drive, setup, probes, circuit }, names);
  for (const { words, caution } of uncoveredWork(
    { say, setup, probe: probes[0] ?? null, circuit },
    cautions,
  ))
    at.warn(
      'missing-caution',
      [],
      `this step ${words}, and none of its cautions covers that`,
      `add "${caution}" to its "cautions"`,
    );
}

/** Said before the test: a light or resistor that cannot pull the module's input low enough to be counted. */
function tooWeak(at: StepDraftReader, setup: Setup, probe: Probe | null): Caution[] {
  const model = probe && setup.bridges.length > 0 ? at.linker.model() : null;
  if (!model || !probe || model.refusal({ setup, probe }) !== null) return [];
  const pull = model.pullsLow({ setup, probe });
  if (!pull || pull.pulls) return [];
  const volts = (value: number) => formatQuantity({ value, unit: 'V' });
  return [
    {
      id: 'pull-too-weak',
      word: 'NOTICE',
      hazards: ['instrument-damage'],
      say: `This load pulls {${pull.input}} down to about ${volts(pull.nominal)} only; the module counts a low below ${volts(pull.thresholdVolts)}. A module that does not react here proves nothing.`,
    },
  ];
}

function measureStep(
  at: StepDraftReader,
  setup: Setup,
  probe: NumberProbe | null,
  unit: MeasureUnit,
  refused = false,
): MeasureStep {
  const drafts = at.draft.outcomes ?? {};
  const computed = at.draft.expect === 'computed';
  const model = refused ? null : at.linker.model();
  const span = probe && model ? computedRange(model, { setup, probe }) : null;
  const unknownCircuit = !at.linker.circuit && at.linker.namesCircuit;
  if (computed && !span && !refused && !unknownCircuit)
    at.add(
      'nothing-computed',
      ['expect'],
      'there is nothing to compute this from',
      'name a circuit, or write the limits',
    );
  const before = at.linker.issues.length;
  const outcomes = rangeOutcomes(at, drafts, unit, computed ? span : null);
  const understood = at.linker.issues.length === before;
  if (Object.keys(drafts).length === 0)
    at.add(
      'missing-outcomes',
      [],
      'a measurement leads on through its outcomes',
      'add the key "outcomes"',
      'key',
    );
  else if (understood && !(computed && !span)) tellRanges(at, outcomes, unit);
  const expected = computed ? span : (authoredRange(at, unit, outcomes) ?? span);
  for (const key of ['say', 'why'] as const)
    for (const { words: wrong, fix } of againstLimits(at.draft[key] ?? '', expected, unit))
      at.warn('against-limits', [key], wrong, fix);
  return {
    ...base(at, setup, probe),
    ...(at.draft.wiggle ? MOVED : {}),
    kind: 'measure',
    probe,
    unit,
    expected,
    outcomes,
  };
}

function lookStep(
  at: StepDraftReader,
  setup: Setup,
  probe: LookStep['probe'],
  refused: boolean,
): LookStep {
  const model = refused ? null : at.linker.model();
  const known = looksShownBy(probe);
  const test: Test = { setup, probe };
  const expected = model?.expected(test);
  const outcomes = lookOutcomes(at, at.draft.outcomes ?? {}, known);
  tellCoverage(at, outcomes, known);
  return {
    ...base(at, setup, probe),
    ...(at.draft.wiggle ? MOVED : {}),
    kind: 'look',
    probe,
    expected:
      expected?.kind === 'looks'
        ? expected.looks.filter(({ chance }) => chance > 0).map(({ look }) => look)
        : [known[0]!],
    outcomes,
  };
}

function question(at: StepDraftReader, drafts: Readonly<Record<string, OutcomeDraft>>): AskStep {
  tellMoved(at);
  const outcomes = askOutcomes(at, drafts);
  const { usual } = at.draft;
  if (usual !== undefined && !outcomes.some(({ name }) => name === usual))
    at.add(
      'unknown-outcome',
      ['usual'],
      `no outcome named "${usual}"`,
      `one of: ${outcomes.map(({ name }) => name).join(', ')}`,
    );
  const setup = setupOf(at, null);
  const watched = watchedBy(at, setup);
  return {
    ...base(at, setup, null, watched),
    kind: 'ask',
    usual: usual ?? null,
    ...(watched.length > 0 ? { watched } : {}),
    outcomes,
  };
}

/** What a question has its person watch, each once; what is not done is told. */
function watchedBy(at: StepDraftReader, setup: Setup): Probe[] {
  const { watch } = at.draft;
  if (watch === undefined) return [];
  const isOne = !Array.isArray(watch);
  const probes = (isOne ? [watch] : watch).flatMap((measure, index): Probe[] => {
    const path: Path = isOne ? ['watch'] : ['watch', index];
    const probe = probeOf(at, measure, path);
    if (!probe || probe.kind === 'inspect') {
      at.add(
        'bad-value',
        path,
        'only an instrument whose reading the circuit computes can be watched',
        `one of: ${PROBE_KINDS.filter((kind) => kind !== 'inspect').join(', ')}`,
        'key',
      );
      return [];
    }
    const isOpen = at.isWrong || at.lacksAny();
    tellRefused(at, isOpen ? null : { setup, probe }, path);
    return [probe];
  });
  return [...new Map(probes.map((probe) => [JSON.stringify(probe), probe])).values()];
}

/** Tells a test that is not done; whether it is one. */
function tellRefused(at: StepDraftReader, test: Test | null, path: Path): boolean {
  const refused = test && (at.linker.model()?.refusal(test) ?? null);
  if (!refused) return false;
  at.add(
    'refused-test',
    path,
    `this test is refused: ${testRefusalWords(refused)}`,
    refused.code === 'ohms-on-electronics' || refused.code === 'inside-connector'
      ? `add "${refused.part}" to "unplug"`
      : 'change the leads, what is unplugged, or the vehicle state',
    'key',
  );
  return true;
}

/** Where no instrument is read there is no reading that could be weighed as moved. */
function tellMoved(at: StepDraftReader): void {
  if (at.draft.wiggle)
    at.add(
      'bad-value',
      ['wiggle'],
      'nothing is measured here',
      'leave "wiggle" out; a question in which something is moved has "test: wiggle"',
    );
}

function act(at: StepDraftReader, go: string): ActStep {
  tellMoved(at);
  return {
    ...base(at, setupOf(at, null), null),
    kind: 'act',
    go: at.target(go, ['go']),
  };
}
