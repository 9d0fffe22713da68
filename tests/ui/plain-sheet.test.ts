/** The job sheet in lines: what was typed, as the job that a session keeps. */
import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { emptyJob, type Job } from '../../src/procedure/job.ts';
import { replaceablesOf } from '../../src/procedure/read-repair.ts';
import { askSheet } from '../../src/ui/plain/plain-sheet.ts';
import { shipped } from '../circuit/shipped.ts';

const TERMINALS = [
  { id: 'sensor.feed', words: 'feed at the sensor' },
  { id: 'sensor.signal', words: 'signal at the sensor' },
];
const PARTS = [{ id: 'sensor', words: 'crankshaft position sensor' }];
/** Fields before those of the terminals. */
const FIELDS = 19;
/** Of these, the three choices of an earlier repair and the five of what is told and seen. */
const TOLD = 8;

/** Types these lines one after the other; the job, what was said, and the lines nobody asked for. */
async function fill(
  lines: readonly string[],
  job: Job = emptyJob(''),
  circuit: Circuit | null = null,
) {
  const said: string[] = [];
  const left = [...lines];
  const filled = await askSheet(
    { job, terminals: TERMINALS, parts: PARTS, circuit },
    {
      say: (line) => said.push(line),
      ask: async (question) => {
        said.push(question);
        return left.shift() ?? null;
      },
    },
  );
  return { job: filled, said, left };
}
const enter = (count: number) => Array<string>(count).fill('');

describe('the job sheet in lines', () => {
  it('asks for every field with its hint, and keeps what was typed', async () => {
    const { job, said, left } = await fill([
      ...['dies when warm', 'p0335', 'crank sensor replaced', ...enter(TOLD)],
      ...['Skua 1.4, 2020', '', 'QX 12', '143 200 km', 'hyb', 'A-17', 'R. Example'],
      ...['call before noon', '1 RD/BU', '2 white'],
    ]);
    expect(left).toEqual([]);
    expect(job).toMatchObject({
      complaint: 'dies when warm',
      codes: ['P0335'],
      vehicle: { words: 'Skua 1.4, 2020', vin: '', plate: 'QX 12', drive: 'hybrid' },
      order: 'A-17',
      customer: 'R. Example',
      earlierRepairs: [{ words: 'crank sensor replaced', part: 'sensor' }],
      terminals: { 'sensor.feed': { pin: '1' }, 'sensor.signal': { pin: '2' } },
      notes: 'call before noon',
    });
    expect(said.filter((line) => line.endsWith(': '))).toHaveLength(FIELDS + TERMINALS.length);
    expect(said.join('\n')).toMatch(/What the customer says, in their own words\./);
    expect(said).toContain('Drive [not stated]: ');
    expect(said.join('\n')).not.toMatch(/Left or Right/);
    expect(said.some((line) => line.startsWith('  P0335: '))).toBe(true);
  });

  it('begins at once when the complaint is written down, and never without it', async () => {
    const { job, said, left } = await fill(['begin', '', 'begin', 'no start', 'begin', 'more']);
    expect(job).toEqual(emptyJob('no start'));
    expect(left).toEqual(['more']);
    expect(said.filter((line) => /Enter the complaint first/.test(line))).toHaveLength(2);
  });

  it('goes back to a field, shows what it holds, and empties it', async () => {
    const { job, said } = await fill([
      'no start',
      'P0335',
      'back',
      '-',
      'back',
      'back',
      'back',
      'stalls',
      'begin',
    ]);
    expect(job).toEqual(emptyJob('stalls'));
    expect(said).toContain('Trouble codes [P0335]: ');
    expect(said).toContain('Complaint [no start]: ');
  });

  it('asks again for a choice that is none, with what there is', async () => {
    const { job, said } = await fill([
      'no start',
      ...enter(6 + TOLD),
      'steam',
      'electric',
      'begin',
    ]);
    expect(job?.vehicle.drive).toBe('electric');
    expect(said).toContain('"steam" is not one of them: combustion, hybrid, electric, not stated.');
  });

  it('asks about what is doubtful before it begins, and goes back there', async () => {
    const typed = ['no start', 'P0335 X9', 'begin'];
    const yes = await fill([...typed, '', 'yes']);
    expect(yes.job?.codes).toEqual(['P0335', 'X9']);
    expect(yes.said.join('\n')).toMatch(/is this right\?\n {2}Trouble codes: X9: /);
    const back = await fill([...typed, 'back', 'P0335', 'begin']);
    expect(back.job?.codes).toEqual(['P0335']);
  });

  it('is given up with the end of input, wherever it comes', async () => {
    for (const lines of [[], ['no start'], ['no start', 'P0335 X9', 'begin']])
      expect((await fill(lines)).job).toBeNull();
  });

  it('keeps what a job file brought', async () => {
    const { job } = await fill(enter(FIELDS + TERMINALS.length), {
      ...emptyJob('no start'),
      notes: 'as before',
    });
    expect(job).toEqual({ ...emptyJob('no start'), notes: 'as before' });
  });
});

describe('what is known of the car', () => {
  const CIRCUIT = shipped('hall-module-fed');
  /** Fields before it: codes, repairs, what was told, what shares with it, and the battery. */
  const before = ['stalls', ...enter(4 + TOLD)];

  it('is asked for where there is a circuit, and kept as it was typed', async () => {
    const typed = 'battery at rest is 12.4 V from measured; reference volts is 8 V from label';
    const { job, said } = await fill([...before, typed, 'begin'], emptyJob(''), CIRCUIT);
    expect(said.join('\n')).toMatch(/"reference volts": Nothing in this circuit/);
    expect(job).toBeNull();
    const right =
      'battery at rest is 12.4 V from measured; module.reference.volts is 8 V from label';
    const known = await fill([...before, right, 'begin'], emptyJob(''), CIRCUIT);
    expect(known.said.join('\n')).toContain(
      "Understood: voltage of the module's reference: 7.84 to 8.16 V.",
    );
    expect(known.job?.known).toEqual([
      { what: 'battery at rest', is: '12.4 V', from: 'measured' },
      { what: 'module.reference.volts', is: '8 V', from: 'label' },
    ]);
  });

  it('goes back to the field while it cannot be understood', async () => {
    const { job, left } = await fill(
      [...before, 'battery at rest is 12.4 V', 'begin', '-', 'begin'],
      emptyJob(''),
      CIRCUIT,
    );
    expect(left).toEqual([]);
    expect(job).not.toBeNull();
    expect(job?.known).toBeUndefined();
  });

  it('is no field without a circuit, and what a job brings stays', async () => {
    const known = [{ what: 'battery at rest', is: '12.4 V', from: 'maker' }];
    const { job, said } = await fill(['begin'], { ...emptyJob('stalls'), known });
    expect(said.join('\n')).not.toContain('Known about this car');
    expect(job?.known).toEqual(known);
    const there = await fill(['begin'], { ...emptyJob('stalls'), known }, CIRCUIT);
    expect(there.job?.known).toEqual(known);
  });
});

describe('the position of the sensor', () => {
  // Complaint and the rest, with what shares, battery, known and harness; then the position.
  const before = ['no signal', ...enter(FIELDS + 3)];

  it('is asked where there can be another one, and refused where nothing fits', async () => {
    const circuit = shipped('hall-module-fed');
    const { job, said } = await fill(
      [...before, 'left rear wheel', 'begin', 'Intake camshaft bank 2', 'begin'],
      emptyJob(''),
      circuit,
    );
    expect(said.join('\n')).toMatch(/"left rear wheel" is not a shaft where the sensor/);
    expect(job?.position).toBe('intake camshaft bank 2');
  });

  it('is kept where it is not asked, and left out when it is emptied', async () => {
    const pedal = { ...emptyJob('x'), position: 'crankshaft' };
    expect((await fill(['begin'], pedal, shipped('pedal-dual'))).job?.position).toBe('crankshaft');
    const emptied = await fill([...before, '-', 'begin'], pedal, shipped('hall-module-fed'));
    expect(emptied.job).not.toHaveProperty('position');
  });
});

describe('before anything is touched', () => {
  const CIRCUIT = shipped('hall-relay-fed');
  const at = (many: number) => enter(many);

  it('codes with how they are kept, when it happens and the rest stand in the job, and what was understood is said', async () => {
    const { job, said } = await fill(
      [
        ...['stalls', 'P0365 stored, P0369 pending'],
        ...['exhaust cam sensor replaced twice, no change', '', 'aftermarket', ''],
        ...[
          'when in rain, over bumps',
          'wheel speed sensor too',
          'timing belt',
          'plug wet',
          '812 rpm; 91 C',
        ],
        ...['Vehicle speed sensor: feed, ground, fails', '12.4 V at rest, 9.8 V cranking', 'begin'],
      ],
      emptyJob(''),
      CIRCUIT,
    );
    expect(job).toMatchObject({
      codes: ['P0365', 'P0369'],
      codeStates: { P0365: 'stored', P0369: 'pending' },
      earlierRepairs: [{ part: 'sensor', fitted: 'other-make', changed: 'nothing' }],
      circumstances: {
        happens: ['wet', 'bumps'],
        failsWithIt: 'wheel speed sensor too',
        recentWork: 'timing belt',
        seen: 'plug wet',
        freezeFrame: ['812 rpm', '91 C'],
      },
      shares: [{ name: 'Vehicle speed sensor', shares: ['feed', 'ground'], works: 'fails' }],
      known: [
        { what: 'battery at rest', is: '12.4 V', from: 'measured' },
        { what: 'battery while cranking', is: '9.8 V', from: 'measured' },
      ],
    });
    const all = said.join('\n');
    expect(all).toMatch(/P0369, pending: camshaft position sensor B bank 1/);
    expect(all).toMatch(
      /the bank 1 camshaft B position sensor was replaced, which changed nothing/,
    );
    expect(all).toContain('Understood: contacts and wires likelier.');
    expect(all).toContain('Understood: the position of the wheel likelier.');
    expect(all).toContain(
      'Understood: vehicle speed sensor; what would make it fail too likelier;',
    );
  });

  it('a part is chosen where free words name none, and its answers belong to it', async () => {
    const typed = ['x', '', 'did it last month', 'sensor', 'used', 'nothing', 'begin'];
    const { job } = await fill(typed, emptyJob(''), CIRCUIT);
    expect(job?.earlierRepairs).toEqual([
      { words: 'did it last month', part: 'sensor', fitted: 'second-hand', changed: 'nothing' },
    ]);
  });

  it('keeps what a job file says of a repair, though its words say less', async () => {
    const earlierRepairs = [
      { words: 'did it', part: 'sensor', fitted: 'second-hand', changed: 'for-a-while' },
      { words: 'swapped', part: 'fuse', changed: 'nothing' },
    ] as const;
    const parts = replaceablesOf(CIRCUIT);
    const named = await askSheet(
      { job: { ...emptyJob('x'), earlierRepairs }, terminals: [], parts, circuit: CIRCUIT },
      { say: () => undefined, ask: async () => 'begin' },
    );
    expect(named?.earlierRepairs).toEqual([
      earlierRepairs[0],
      { words: 'swapped, no change', part: 'fuse', changed: 'nothing' },
    ]);
  });

  it('goes back to what cannot be understood', async () => {
    const { said, job } = await fill(
      ['x', ...at(5), 'on Sundays', 'begin', 'hot', ...at(5), '12 apples', 'begin', '-', 'begin'],
      emptyJob(''),
      CIRCUIT,
    );
    expect(said.join('\n')).toMatch(/"Sundays" is not one of: always, cold/);
    expect(said.join('\n')).toMatch(/"12 apples" is not a battery voltage/);
    expect(job?.circumstances).toEqual({ happens: ['hot'] });
  });
});
