import { describe, expect, test } from 'vitest';
import type { DrillInHand } from '../../src/drill/drill-in-hand.ts';
import { repairChoices } from '../../src/drill/drill-words.ts';
import { repairsWords } from '../../src/session/repairs-words.ts';
import {
  BENCH_LINES,
  benchForm,
  benchLineWords,
  formOfTest,
  testOfForm,
  turned,
} from '../../src/ui/drill/bench-form-state.ts';
import { DrillApp } from '../../src/ui/drill/drill-app.tsx';
import type { DrillServices } from '../../src/ui/drill/drill-services.ts';
import { expectWhole, openTestScreen } from '../ui/in-process.ts';
import { memoryDrill } from './memory-drill.ts';
import { SHORT } from './short-procedure.ts';
import { library } from './students.ts';

const hall = library.circuits.get('hall-module-fed')!;

function services(hand: DrillInHand, eachMs = 1000): DrillServices {
  let now = 0;
  return {
    subjects: () => [{ name: 'hall-module-fed', title: 'A Hall sensor', about: 'three wires' }],
    begin: () => hand,
    // Every key is a second after the one before, pressed on purpose, unless said otherwise.
    clock: () => {
      now += eachMs;
      return now;
    },
  };
}

describe('the screens of a drill', () => {
  test('from the choice to the debrief with keys alone', async () => {
    const hand = memoryDrill(3, { level: 'named' });
    let left = 0;
    const screen = await openTestScreen(
      <DrillApp services={services(hand)} begun={null} onLeave={() => left++} />,
    );
    expect(await screen.text()).toContain('Which drill?');
    await screen.send('\r');
    expect(await screen.text()).toContain('How hard?');
    await screen.send('\r');
    expect(await screen.text()).toContain('The answer is sealed as');
    await screen.send('\r');
    const bench = await screen.text();
    expect(bench).toContain('Red lead');
    expect(bench).toContain('Nothing measured yet.');
    // Key on, then measure: the caution comes first, and only y takes it away.
    await screen.send('\x1b[C');
    await screen.send('m');
    expect(await screen.text()).toContain('Before you go on');
    await screen.send('y');
    expect(hand.drill().readings).toHaveLength(1);
    expect(await screen.text()).toContain(hand.drill().readings[0]!.found);
    // Ohms with the key on.
    await screen.send('\x1b[B');
    await screen.send('\x1b[C');
    await screen.send('m');
    expect(await screen.text()).toContain('The bench stops this test');
    await screen.send('s');
    expect(await screen.text()).toContain('%');
    await screen.send('\r');
    await screen.send('r');
    expect(await screen.text()).toContain('What you have measured');
    await screen.send('\r');
    await screen.send('d');
    expect(await screen.text()).toContain('What puts it right?');
    await screen.send('\r');
    expect(await screen.text()).toContain('Hand in');
    expect(hand.drill().status).toBe('open');
    await screen.send('\r');
    expect(await screen.text()).toContain('After the drill');
    expect(hand.drill().status).toBe('revealed');
    await screen.send('\r');
    expect(left).toBe(1);
    expect(screen.crashes).toEqual([]);
    await screen.unmount();
  });

  test.each([
    [80, 24],
    [60, 20],
  ])(
    'a capture takes the scope, asks for its cautions, shows its picture at %i x %i',
    async (columns, rows) => {
      const hand = memoryDrill(3, { level: 'named' });
      const screen = await openTestScreen(
        <DrillApp services={services(hand)} begun={hand} onLeave={() => {}} />,
        { columns, rows },
      );
      await screen.send('\r');
      expect(await screen.text()).toContain('[c] capture');
      // Nothing turns with the key off.
      await screen.send('c');
      expect(await screen.text()).toContain('Nothing passes the sensor');
      expect(hand.drill().readings).toHaveLength(0);
      await screen.send('\x1b[C');
      await screen.send('\x1b[C');
      await screen.send('c');
      expect(await screen.text()).toContain('Before you go on');
      // In a small window the caution must be read to its end first.
      for (const key of ['\x1b[6~', '\x1b[6~', '\x1b[6~', 'y']) await screen.send(key);
      expect(hand.drill().readings[0]!.capture).toBeDefined();
      const shown = await screen.text();
      expect(shown).toContain('The capture');
      expect(shown).toContain('captured:');
      expect(shown).toMatch(/[\u2800-\u28ff]/);
      expectWhole(await screen.lines(), columns, rows);
      await screen.send('\r');
      expect(await screen.text()).toMatch(/Instrument +scope/);
      await screen.unmount();
    },
  );

  test('an Enter held down gives no diagnosis, as it ends the drill', async () => {
    const hand = memoryDrill(3, { level: 'named' });
    const screen = await openTestScreen(
      <DrillApp services={services(hand, 30)} begun={hand} onLeave={() => {}} />,
    );
    for (const key of ['\r', 'd', '\r', '\r', '\r']) await screen.send(key);
    const text = await screen.text();
    expect(text).toContain('This ends the drill');
    expect(text).toContain('That Enter came too quickly');
    expect(hand.drill().status).toBe('open');
    await screen.unmount();
  });

  test.each([
    [80, 24],
    [60, 20],
  ])('a diagnosis is read in full before it is handed in, at %i x %i', async (columns, rows) => {
    const hand = memoryDrill(3, { level: 'double' });
    const screen = await openTestScreen(
      <DrillApp services={services(hand)} begun={hand} onLeave={() => {}} />,
      { columns, rows },
    );
    const flat = async () => (await screen.text()).replace(/[│\s]+/g, ' ');
    const [first, second] = repairChoices(hand.drill()).filter(({ words }) =>
      words.startsWith('Clean'),
    );
    await screen.send('\r');
    await screen.send('d');
    for (const { words } of [first!, second!]) {
      await screen.send(words);
      await screen.send('\r');
    }
    const asked = await flat();
    expect(asked).toContain(`Hand in: ${repairsWords([first!.words, second!.words])}`);
    expectWhole(await screen.lines(), columns, rows);
    await screen.send('\x1b');
    expect(await flat()).toContain('What puts it right?');
    expect(hand.drill().status).toBe('open');
    await screen.send('give up');
    await screen.send('\r');
    expect(await flat()).toContain('Give up without a diagnosis?');
    await screen.unmount();
  });

  test('what is typed marks the repair that says it, not one that only holds its words', async () => {
    const hand = memoryDrill(3, { level: 'unnamed' });
    const screen = await openTestScreen(
      <DrillApp services={services(hand)} begun={hand} onLeave={() => {}} />,
    );
    await screen.send('\r');
    await screen.send('d');
    const { words } = repairChoices(hand.drill()).find(
      ({ repair }) => repair === 'sensor.replace',
    )!;
    await screen.send(words.replace('.', ''));
    expect(await screen.text()).toContain(`> ${words}`);
    await screen.send('\r');
    await screen.send('\r');
    expect(hand.drill().diagnosed!.repairs).toEqual(['sensor.replace']);
    await screen.unmount();
  });

  test('a second reading is shown although nothing else changed', async () => {
    const hand = memoryDrill(3, { level: 'blind' });
    const screen = await openTestScreen(
      <DrillApp services={services(hand)} begun={hand} onLeave={() => {}} />,
    );
    await screen.send('\r');
    await screen.send('m');
    expect(await screen.text()).toContain('1 reading,');
    await screen.send('m');
    const text = await screen.text();
    expect(text).toContain('2 readings');
    expect(text).not.toContain('Good is:');
    await screen.unmount();
  });

  test('a key that would do nothing is not offered, and does nothing', async () => {
    const hand = memoryDrill(3, { level: 'blind' });
    const screen = await openTestScreen(
      <DrillApp services={services(hand)} begun={hand} onLeave={() => {}} />,
    );
    await screen.send('\r');
    const bench = await screen.text();
    expect(bench).toContain('[m] measure');
    // No suspects on this level, no procedure behind this drill, no reading yet, nothing to choose for the state.
    expect(bench).not.toMatch(/\[(s|f|r|Enter)\]/);
    for (const key of ['s', 'f', 'r', '\r']) {
      await screen.send(key);
      expect(await screen.text()).toBe(bench);
    }
    await screen.send('m');
    const measured = await screen.text();
    expect(measured).toContain('[r] readings');
    expect(measured).not.toMatch(/\[[sf]\]/);
    for (const key of ['\x1b[B', '\x1b[B']) await screen.send(key);
    expect(await screen.text()).toContain('[Enter] list');
    await screen.unmount();
  });

  test.each([
    [80, 24],
    [60, 20],
  ])('the end of the procedure says what it concludes, at %i x %i', async (columns, rows) => {
    const hand = memoryDrill(3, { level: 'blind', more: { procedure: SHORT } });
    const screen = await openTestScreen(
      <DrillApp services={services(hand)} begun={hand} onLeave={() => {}} />,
      { columns, rows },
    );
    const flat = async () => (await screen.text()).replace(/[│\s]+/g, ' ');
    await screen.send('\r');
    expect(await flat()).toContain('Procedure: Feed at feed at the crankshaft position sensor');
    await screen.send('f');
    const { words } = hand.drill().readings[0]!;
    expect(words).not.toContain('{');
    expect(await flat()).toContain(`${words}: `);
    expect(await flat()).toContain('The procedure ends here: Sensor bad');
    expect(await flat()).toContain('[f] conclusion');
    await screen.send('f');
    expect(await flat()).toContain('Everything around the sensor is sound.');
    expect(await flat()).toContain('Repair: Replace the sensor.');
    expectWhole(await screen.lines(), columns, rows);
    await screen.send('\r');
    expect(await flat()).toContain('[f] conclusion');
    await screen.unmount();
  });

  test('? says what the keys do and what costs points, and closes again', async () => {
    const hand = memoryDrill(3, { level: 'blind' });
    const screen = await openTestScreen(
      <DrillApp services={services(hand)} begun={hand} onLeave={() => {}} />,
    );
    await screen.send('\r');
    const bench = await screen.text();
    expect(bench).toContain('[?] keys');
    await screen.send('?');
    const help = await screen.text();
    for (const key of ['m', 'c', 'arrows', 't', 'f', 's', 'r', 'd', '\\?', 'Esc'])
      expect(help).toMatch(new RegExp(`│ ${key}\\s+[A-Z]`));
    await screen.send('?');
    expect(await screen.text()).toBe(bench);
    await screen.unmount();
  });

  test('at 60 by 20 the reading stands whole, and so does what the bench stops', async () => {
    const hand = memoryDrill(3, { level: 'named' });
    const screen = await openTestScreen(
      <DrillApp services={services(hand)} begun={hand} onLeave={() => {}} />,
      { columns: 60, rows: 20 },
    );
    const flat = async () => (await screen.text()).replace(/[│\s]+/g, ' ');
    await screen.send('\r');
    for (const key of ['\x1b[B', '\x1b[C', '\x1b[C', 'm', 'y']) await screen.send(key);
    expect(hand.drill().readings).toHaveLength(1);
    const { words, found } = hand.drill().readings[0]!;
    expect(await flat()).toContain(`${words}: ${found}`);
    for (const key of ['\x1b[C', 'm']) await screen.send(key);
    expect(hand.drill().stopped).toHaveLength(1);
    expect(await flat()).toContain(`${words}: ${found}`);
    expect(await flat()).toContain('> Instrument filament lamp');
    expect(await flat()).toContain('the vehicle would have a second fault.');
    expect(await flat()).toContain('It costs points for safety.');
    await screen.unmount();
  });

  test('it fits 80 by 24 and leaves nothing of the answer on the screen', async () => {
    const hand = memoryDrill(3, { level: 'unnamed' });
    const screen = await openTestScreen(
      <DrillApp services={services(hand)} begun={hand} onLeave={() => {}} />,
      { columns: 80, rows: 24, look: { ascii: true } },
    );
    await screen.send('\r');
    expectWhole(await screen.lines(), 80, 24);
    const { answer, salt } = hand.world.vehicle.hidden;
    expect(screen.raw()).not.toContain(answer.faults[0]);
    expect(screen.raw()).not.toContain(salt);
    await screen.unmount();
  });
});

describe('the form', () => {
  test('a test put into the form comes out the same', () => {
    const form = benchForm(hall);
    const made = testOfForm({ ...form, instrument: 'pattern', red: 'module.signal' });
    expect(testOfForm(formOfTest(form, made))).toEqual(made);
  });
  test('every line turns on and back, and the engine moves the wheel', () => {
    const form = benchForm(hall);
    for (const line of BENCH_LINES) {
      const there = turned(form, line, 1, hall);
      expect(benchLineWords(turned(there, line, -1, hall), line)).toBe(benchLineWords(form, line));
    }
    const cranking = turned(turned(form, 'state', 1, hall), 'state', 1, hall);
    expect(cranking.setup).toMatchObject({ state: 'cranking', target: 'moving' });
  });
  test('an instrument that cannot be where the lead is takes it where it can', () => {
    const form = { ...benchForm(hall), red: 'sensor.feed' };
    const live = turned(
      turned({ ...form, instrument: 'timing' }, 'instrument', 1, hall),
      'red',
      1,
      hall,
    );
    expect(live.instrument).toBe('counts');
    expect(testOfForm(live).probe).toEqual({ kind: 'counts', input: 'module.signal' });
  });
});
