import { describe, expect, test } from 'vitest';
import { repairChoices } from '../../src/drill/drill-words.ts';
import { repairsWords } from '../../src/session/repairs-words.ts';
import { DrillApp } from '../../src/ui/drill/drill-app.tsx';
import type { DrillServices } from '../../src/ui/drill/drill-services.ts';
import {
  formOfTest,
  TEST_LINES,
  testForm,
  testLineWords,
  testOfForm,
  turned,
} from '../../src/ui/screens/any-test-form-state.ts';
import { expectWhole, openTestScreen } from '../ui/in-process.ts';
import { SHORT } from './short-procedure.ts';
import { type DrillAsk, type DrillInTest, library, newDrill } from './students.ts';

const hall = library.circuits.get('hall-module-fed')!;

function services(opened: DrillInTest, eachMs = 1000): DrillServices {
  let now = 0;
  return {
    subjects: () => [{ name: 'hall-module-fed', title: 'A Hall sensor', about: 'three wires' }],
    begin: () => opened,
    // Every key is a second after the one before, pressed on purpose, unless said otherwise.
    clock: () => {
      now += eachMs;
      return now;
    },
  };
}

/** A drill on the screen, what is told at its start already closed. */
async function onScreen(
  ask: DrillAsk,
  {
    columns = 80,
    rows = 24,
    eachMs = 1000,
  }: { columns?: number; rows?: number; eachMs?: number } = {},
) {
  const opened = newDrill(3, ask);
  const screen = await openTestScreen(
    <DrillApp services={services(opened, eachMs)} begun={opened} onLeave={() => {}} />,
    { columns, rows },
  );
  await screen.send('\r');
  const flat = async () => (await screen.text()).replace(/[│\s]+/g, ' ');
  const keys = async (...all: string[]) => {
    for (const key of all) await screen.send(key);
  };
  return { opened, screen, flat, keys, session: () => opened.driver.session() };
}

const RIGHT = '\x1b[C';
const DOWN = '\x1b[B';
const SIZES: readonly [number, number][] = [
  [80, 24],
  [60, 20],
];

describe('the screens of a drill', () => {
  test('from the choice to the debrief with keys alone', async () => {
    const opened = newDrill(3, { level: 'named' });
    let left = 0;
    const screen = await openTestScreen(
      <DrillApp services={services(opened)} begun={null} onLeave={() => left++} />,
    );
    const session = () => opened.driver.session();
    expect(await screen.text()).toContain('Which drill?');
    await screen.send('\r');
    expect(await screen.text()).toContain('How hard?');
    await screen.send('\r');
    expect(await screen.text()).toContain('The answer is sealed as');
    await screen.send('\r');
    const home = await screen.text();
    expect(home).toContain('Free order');
    expect(home).toContain('Nothing was read yet.');
    await screen.send('t');
    expect(await screen.text()).toContain('Red lead');
    // Key on, then measure: the caution comes first, and only y takes it away.
    await screen.send(RIGHT);
    await screen.send('m');
    expect(await screen.text()).toContain('Before you go on');
    await screen.send('y');
    expect(session().tests).toHaveLength(1);
    const { shown, typed } = session().tests[0]!;
    expect(shown.kind).toBe('number');
    expect(await screen.text()).toContain(typed);
    // Ohms with the key on.
    await screen.send(DOWN);
    await screen.send(RIGHT);
    await screen.send('m');
    expect((await screen.text()).replace(/[│\s]+/g, ' ')).toContain('bench stops this test');
    expect(session().stopped).toHaveLength(1);
    await screen.send('\x1b');
    const back = await screen.text();
    expect(back).toContain(typed);
    expect(back).toContain('[F5] suspects');
    await screen.send('\x10');
    expect(await screen.text()).toContain('%');
    await screen.send('\x1b');
    await screen.send('c');
    expect(await screen.text()).toContain('What puts it right?');
    await screen.send('\r');
    expect(await screen.text()).toContain('Hand in');
    expect(session().revealed).toBeNull();
    await screen.send('\r');
    expect(await screen.text()).toContain('After the drill');
    expect(session().revealed).not.toBeNull();
    await screen.send('\r');
    expect(left).toBe(1);
    expect(screen.crashes).toEqual([]);
    await screen.unmount();
  });

  test.each(SIZES)(
    'a capture takes the scope, asks for its cautions, shows its picture at %i x %i',
    async (columns, rows) => {
      const { screen, keys, session, flat } = await onScreen({ level: 'named' }, { columns, rows });
      await keys('t');
      expect(await screen.text()).toContain('[c] capture');
      // Nothing turns with the key off.
      await keys('c');
      expect(await flat()).toMatch(/nothing passes the sensor/i);
      expect(session().tests).toHaveLength(0);
      await keys(RIGHT, RIGHT, 'c');
      expect(await screen.text()).toContain('Before you go on');
      // In a small window the caution must be read to its end first.
      await keys('\x1b[6~', '\x1b[6~', '\x1b[6~', 'y');
      expect(session().tests[0]!.capture).toBeDefined();
      expect(await screen.text()).toMatch(/[\u2800-\u28ff]/);
      expectWhole(await screen.lines(), columns, rows);
      await keys('\r');
      expect(await screen.text()).toMatch(/Instrument +scope/);
      await screen.unmount();
    },
  );

  test('an Enter held down gives no diagnosis, as it ends the drill', async () => {
    const { screen, keys, session } = await onScreen({ level: 'named' }, { eachMs: 30 });
    await keys('c', '\r', '\r', '\r');
    const text = await screen.text();
    expect(text).toContain('This ends the drill');
    expect(text).toContain('That Enter came too quickly');
    expect(session().revealed).toBeNull();
    await screen.unmount();
  });

  test.each(SIZES)(
    'a diagnosis is read in full before it is handed in, at %i x %i',
    async (columns, rows) => {
      const { screen, keys, flat, session } = await onScreen(
        { level: 'double' },
        { columns, rows },
      );
      const [first, second] = repairChoices(hall).filter(({ words }) => words.startsWith('Clean'));
      await keys('c');
      for (const { words } of [first!, second!]) await keys(words, '\r');
      expect(await flat()).toContain(`Hand in: ${repairsWords([first!.words, second!.words])}`);
      expectWhole(await screen.lines(), columns, rows);
      await keys('\x1b');
      expect(await flat()).toContain('What puts it right');
      expect(session().revealed).toBeNull();
      await keys('give up', '\r');
      expect(await flat()).toContain('Give up without a diagnosis?');
      await screen.unmount();
    },
  );

  test('what is typed marks the repair that says it, not one that only holds its words', async () => {
    const { screen, keys, session } = await onScreen({ level: 'unnamed' });
    await keys('c');
    const { words } = repairChoices(hall).find(({ repair }) => repair === 'sensor.replace')!;
    await keys(words.replace('.', ''));
    expect(await screen.text()).toContain(`> ${words}`);
    await keys('\r', '\r');
    const named = new Set(
      session().concluded!.faults.map((id) => hall.faults.find((one) => one.id === id)!.repair),
    );
    expect(named).toEqual(new Set(['sensor.replace']));
    await screen.unmount();
  });

  test('a second reading is shown although nothing else changed', async () => {
    const { screen, keys, session } = await onScreen({ level: 'blind' });
    await keys('t', 'm');
    expect(await screen.text()).toContain('1 reading,');
    await keys('m');
    const text = await screen.text();
    expect(text).toContain('2 readings');
    expect(text).not.toContain('Good is:');
    expect(session().tests.map(({ expected }) => expected)).toEqual([null, null]);
    await screen.unmount();
  });

  test('what a level hides has no key, and its key says why', async () => {
    const { screen, keys, flat } = await onScreen({ level: 'blind' });
    const home = await screen.text();
    expect(home).toContain('Which test is yours to choose.');
    expect(home).not.toContain('[F5]');
    await keys('\x10');
    expect(await flat()).toContain('shows no suspects');
    await screen.unmount();
  });

  test.each(SIZES)(
    'a step of the procedure is done by Enter, and its end says what it concludes, at %i x %i',
    async (columns, rows) => {
      const { screen, keys, flat, session } = await onScreen(
        { level: 'blind', procedure: SHORT },
        { columns, rows },
      );
      expect(await flat()).toContain('Feed at feed at the crankshaft position sensor');
      await keys('\r');
      expect(session().answers).toHaveLength(1);
      expect(await flat()).toContain('Sensor bad');
      expect(await flat()).toContain('Replace the sensor.');
      expectWhole(await screen.lines(), columns, rows);
      expect(session().concluded).toBeNull();
      await screen.unmount();
    },
  );

  test('at 60 by 20 the reading stands whole, and so does what the bench stops', async () => {
    const { keys, flat, session, screen } = await onScreen(
      { level: 'named' },
      { columns: 60, rows: 20 },
    );
    await keys('t', DOWN, RIGHT, RIGHT, 'm', 'y');
    expect(session().tests).toHaveLength(1);
    await keys(RIGHT, 'm');
    expect(session().stopped).toHaveLength(1);
    expect(await flat()).toContain('> Instrument filament lamp');
    expect(await flat()).toContain('the vehicle would have a second fault.');
    expect(await flat()).toContain('It costs points for safety.');
    await screen.unmount();
  });

  test('it fits 80 by 24 and leaves nothing of the answer on the screen', async () => {
    const { opened, screen, keys } = await onScreen({ level: 'unnamed' });
    expectWhole(await screen.lines(), 80, 24);
    await keys('t');
    expectWhole(await screen.lines(), 80, 24);
    const { answer, salt } = opened.world.vehicle.hidden;
    expect(screen.raw()).not.toContain(answer.faults[0]);
    expect(screen.raw()).not.toContain(salt);
    await screen.unmount();
  });
});

describe('the form', () => {
  test('a test put into the form comes out the same', () => {
    const form = testForm(hall);
    const made = testOfForm({ ...form, instrument: 'pattern', red: 'module.signal' });
    expect(testOfForm(formOfTest(form, made))).toEqual(made);
  });
  test('every line turns on and back, and the engine moves the wheel', () => {
    const form = testForm(hall);
    for (const line of TEST_LINES) {
      const there = turned(form, line, 1, hall);
      expect(testLineWords(turned(there, line, -1, hall), line)).toBe(testLineWords(form, line));
    }
    const cranking = turned(turned(form, 'state', 1, hall), 'state', 1, hall);
    expect(cranking.setup).toMatchObject({ state: 'cranking', target: 'moving' });
  });
  test('an instrument that cannot be where the lead is takes it where it can', () => {
    const form = { ...testForm(hall), red: 'sensor.feed' };
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
