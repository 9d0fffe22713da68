/** The lists of `expert-lists.yaml`: read strictly, each test put on the circuit of its car, and priced as the program prices. */
import { readFileSync } from 'node:fs';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { type Meter, TEST_STATES, type Test } from '../../src/circuit/test.ts';
import { draftedTest, type TestDraft } from '../../src/circuit/test-draft.ts';
import { fitHarness } from '../../src/procedure/fit-harness.ts';
import { type LoadedJob, loadJob } from '../../src/procedure/load-job.ts';
import { atPlaceOf } from '../../src/procedure/place-sensor.ts';
import type { Procedure } from '../../src/procedure/procedure.ts';
import { readHarness } from '../../src/procedure/read-harness.ts';
import { testTable } from '../../src/session/test-table.ts';
import type { Checked } from '../../src/source/issue.ts';
import { parseYaml } from '../../src/source/parse-yaml.ts';
import { AT_THE_START } from '../../src/suspects/optimum.ts';
import { ALL_MEANS, COSTS, situationAfter, testCost } from '../../src/suspects/test-cost.ts';

export const EXPERT_LISTS = 'tests/walks/expert-lists.yaml';

/** Asked, looked at or set up; nothing is read. */
export interface Done {
  readonly kind: 'done';
  readonly words: string;
  readonly minutes: number;
}
/** A reading, with what it shows on a sound car and on this one. */
export interface Asked {
  readonly kind: 'test';
  readonly words: string;
  readonly test: Test;
  readonly good: string;
  readonly found: string;
  /** What the program's model of this car shows; as `found` but for what it does not know. */
  readonly programShows: string;
  /** Of a test that proves the cause: what has to be so that it does not mislead. */
  readonly restsOn: string | null;
}
export interface ExpertList {
  readonly name: string;
  /** With the harness and the place of the car. */
  readonly circuit: Circuit;
  readonly car: LoadedJob;
  readonly entries: readonly (Done | Asked)[];
}

interface EntryDraft extends TestDraft {
  readonly do?: string;
  readonly minutes?: number;
  readonly mind?: string;
  readonly good?: string;
  readonly found?: string;
  readonly decides?: string;
  readonly 'program-shows'?: string;
  readonly 'rests-on'?: string;
}
interface ListDraft {
  readonly name: string;
  readonly circuit: string;
  readonly car: unknown;
  readonly entries: readonly EntryDraft[];
}

const DONE_KEYS = ['do', 'minutes', 'mind'];
const TEST_KEYS = ['measure', 'test', 'state', 'unplug', 'bridges', 'spare', 'moving', 'wiggle'];
const SAID_KEYS = ['good', 'found', 'program-shows', 'decides', 'rests-on', 'mind'];

/** All lists, in the order of the file; a mistake in it throws with the place in words. */
export function readExpertLists(): ExpertList[] {
  const file = parseYaml(readFileSync(EXPERT_LISTS, 'utf8'), EXPERT_LISTS);
  return (usable(file).data as readonly ListDraft[]).map(readList);
}

function readList({ name, circuit: file, car: sheet, entries }: ListDraft): ExpertList {
  const path = `procedures/circuits/${file}.yaml`;
  const car = usable(loadJob(JSON.stringify(sheet), name));
  const whole = usable(loadCircuit(readFileSync(path, 'utf8'), path));
  const { harness, problems } = readHarness(whole, car.job.harness ?? []);
  if (problems.length > 0) throw new Error(`${name}: ${JSON.stringify(problems)}`);
  const { circuit } = atPlaceOf(car.job, fitHarness(harness, { circuit: whole, procedure: null }));
  const read = (entry: EntryDraft, index: number) =>
    readEntry(entry, circuit, `${name}, entry ${index + 1}`);
  return { name, circuit, car, entries: entries.map(read) };
}

function readEntry(entry: EntryDraft, circuit: Circuit, place: string): Done | Asked {
  const keys = entry.do === undefined ? [...TEST_KEYS, ...SAID_KEYS] : DONE_KEYS;
  const odd = Object.keys(entry).find((key) => !keys.includes(key));
  if (odd !== undefined) throw new Error(`${place}: there is no key "${odd}"`);
  if (entry.do !== undefined)
    return { kind: 'done', words: entry.do, minutes: said(entry.minutes, place, 'minutes') };
  if (entry.state !== undefined && !TEST_STATES.some((one) => one === entry.state))
    throw new Error(`${place}: there is no state "${entry.state}"`);
  const test = draftedTest(entry, circuit);
  if ('code' in test) throw new Error(`${place}: ${test.words}; ${test.fix}`);
  const found = said(entry.found, place, 'found');
  said(entry.decides, place, 'decides');
  return {
    kind: 'test',
    words: testLine(entry),
    test,
    good: said(entry.good, place, 'good'),
    found,
    programShows: entry['program-shows'] ?? found,
    restsOn: entry['rests-on'] ?? null,
  };
}

/** The test in the one line that a person would type. */
function testLine({ measure, test, state, unplug, bridges, spare, moving, wiggle }: EntryDraft) {
  const setup = [
    state,
    unplug && `--unplug ${unplug.join(' ')}`,
    ...(bridges ?? []).map((bridge) => `--bridge ${bridge}`),
    spare && '--spare',
    moving && '--moving',
    wiggle && '--wiggle',
  ];
  return [measure ?? test, ...setup].filter(Boolean).join(' ');
}

/**
 * Minutes of each entry from how the one before it left the car. Tests cost what they cost at a tree that gives none of
 * its own, or in the table of `procedure`.
 */
export function minutesOf(
  { circuit, entries }: ExpertList,
  meter: Meter,
  procedure: Procedure | null = null,
): number[] {
  const table = testTable(circuit, procedure, meter);
  let now = AT_THE_START;
  return entries.map((entry) => {
    if (entry.kind === 'done') return entry.minutes;
    const priced = table.entryOf(entry.test);
    const { minutes } = testCost(priced, now, COSTS, ALL_MEANS.helper);
    now = situationAfter(priced, now);
    return minutes;
  });
}

function usable<T>({ value, issues }: Checked<T>): T {
  if (value === null || issues.length > 0) throw new Error(JSON.stringify(issues));
  return value;
}

function said<T>(value: T | undefined, place: string, key: string): T {
  if (value === undefined) throw new Error(`${place}: "${key}" is missing`);
  return value;
}
