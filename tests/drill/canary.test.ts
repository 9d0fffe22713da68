/** Nothing shown or written before the reveal depends on the answer, but for the seal and the readings themselves. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test, vi } from 'vitest';
import { SampleSolver } from '../../src/circuit/sample-solver.ts';
import { main } from '../../src/commands/program.ts';
import { createVehicle } from '../../src/drill/drill-vehicle.ts';
import { hideFault } from '../../src/drill/hidden-fault.ts';
import { levelNamed } from '../../src/drill/levels.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { KEY_ON } from '../circuit/setup.ts';
import { hash, library } from './students.ts';

const folder = mkdtempSync(join(tmpdir(), 'ohmward-canary-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const hall = library.circuits.get('hall-module-fed')!;
const coil = library.circuits.get('reluctor-two-wire')!;
/** Seeds with different answers. */
const SEEDS = [1, 2, 3, 4, 5];

const ACTIONS = `
  - measure: volts sensor.feed battery.negative
  - measure: volts sensor.feed battery.negative
    acknowledge: true
  - capture: module.signal battery.negative
    state: cranking
    acknowledge: true
  - measure: ohms sensor.feed battery.negative
  - measure: volts sensor.nothing battery.negative
`;

async function play(seed: number, more: string, name: string, json: boolean) {
  const sessions = join(folder, `${name}-${seed}${json ? '-json' : ''}`);
  const file = join(folder, 'actions.yaml');
  writeFileSync(file, `procedure: hall-module-fed\nlevel: blind\nactions:${ACTIONS}${more}`);
  let shown = '';
  const io = {
    out: (text: string) => {
      shown += text;
    },
    err: (text: string) => {
      shown += text;
    },
    env: { XDG_CONFIG_HOME: folder, HOME: folder },
    cwd: process.cwd(),
  };
  const args = ['drill', '--actions', file, '--vehicle', String(seed), '--sessions', sessions];
  const code = await main(json ? [...args, '--json'] : args, io);
  const drills = join(sessions, 'drills');
  const names = readdirSync(drills, { recursive: true }).map(String);
  const written = names.map((one) => readFileSync(join(drills, one), 'utf8')).join('\n');
  return { shown, written, names, code };
}

/** The file with what may differ from vehicle to vehicle taken out: the seed, the seal, the readings, times and names. */
function common(written: string): unknown {
  return written
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Record<string, unknown>)
    .map(({ vehicle, at, elapsed, prev, id, typed, shown, judgement, capture, ...rest }) => rest);
}

/** What in a record may differ from vehicle to vehicle: what was read, the seed and the seal, and when. */
const OWN = new Set([
  ...['id', 'at', 'startedAt', 'endedAt', 'workedMs', 'head', 'howToVerify', 'seed', 'commitment'],
  ...['found', 'mayBeOff', 'typed', 'value', 'capture'],
]);

function commonWords(shown: string): string {
  const record = shown.indexOf('{\n');
  const words = record < 0 ? shown : shown.slice(0, record);
  const common =
    record < 0
      ? ''
      : JSON.stringify(JSON.parse(shown.slice(record)), (key, value) =>
          OWN.has(key) ? undefined : value,
        );
  return `${words.replace(/(Saved|--resume):? \S+/g, '$1')}${common}`;
}

test.each([false, true])(
  'files and words before the reveal are the same whatever the answer (json: %s)',
  async (json) => {
    const answers = SEEDS.map(
      (seed) => hideFault(hall, levelNamed('blind'), seed, hash)!.answer.faults[0],
    );
    expect(new Set(answers).size).toBeGreaterThan(3);
    const all = [];
    for (const seed of SEEDS) all.push(await play(seed, '', 'open', json));
    const [first] = all;
    for (const [index, one] of all.entries()) {
      expect(one.code).toBe(1);
      expect(common(one.written)).toEqual(common(first!.written));
      expect(commonWords(one.shown)).toBe(commonWords(first!.shown));
      const { salt, modelId } = hideFault(hall, levelNamed('blind'), SEEDS[index]!, hash)!;
      const bytes = `${one.shown}${one.written}${one.names.join()}`;
      expect(bytes).not.toContain(salt);
      // The answer is named once in the list of everything that can fail, like every other fault, and nowhere else.
      const other = hall.faults.find(({ id }) => id.length === modelId.length && id !== modelId);
      const count = (text: string) => bytes.split(`"${text}"`).length - 1;
      expect(count(modelId)).toBe(1);
      if (other) expect(count(other.id)).toBe(1);
    }
  },
);

test('the reveal is where the answer and the salt come out, so this test could have found them', async () => {
  const { shown, written } = await play(3, '  - diagnose: [wire.feed]\n', 'end', true);
  const { salt } = hideFault(hall, levelNamed('blind'), 3, hash)!;
  // The terminal that is not there ends the run before the diagnosis.
  expect(written).not.toContain(salt);
  expect(shown).toContain('there is no terminal');
  // The circuit that is debriefed soonest.
  const end = hideFault(coil, levelNamed('blind'), 3, hash)!;
  const file = join(folder, 'whole.yaml');
  writeFileSync(file, 'procedure: reluctor-two-wire\nactions:\n  - give-up: true\n');
  let out = '';
  const io = {
    out: (text: string) => {
      out += text;
    },
    err: () => {},
    env: { XDG_CONFIG_HOME: folder, HOME: folder },
    cwd: process.cwd(),
  };
  const sessions = join(folder, 'whole');
  const args = ['drill', '--actions', file, '--vehicle', '3', '--level', 'blind', '--json'];
  expect(await main([...args, '--sessions', sessions], io)).toBe(0);
  expect(out).toContain(end.salt);
  expect(out).toContain(end.answer.faults[0]);
});

test('a solver that fails says nothing of the fault', () => {
  let said = '';
  const spy = vi.spyOn(SampleSolver.prototype, 'settled').mockImplementation((fault) => {
    said = `with ${fault?.id}, nothing settles`;
    throw new Error(said);
  });
  const vehicle = createVehicle(
    { circuit: hall, meter: STANDARD_SETTINGS.meter, level: 'named', seed: 4 },
    hash,
  )!;
  const ask = () =>
    vehicle.answers(
      {
        setup: KEY_ON,
        probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
      },
      0,
    );
  let failure: unknown;
  try {
    ask();
  } catch (error) {
    failure = error;
  }
  spy.mockRestore();
  expect(said).toBe(`with ${vehicle.hidden.modelId}, nothing settles`);
  if (!(failure instanceof Error)) throw new Error('the vehicle answered');
  expect(failure.message).toContain('the simulated vehicle has no answer');
  expect(failure.message + failure.stack).not.toContain(vehicle.hidden.modelId);
  expect(failure.cause).toBeUndefined();
});
