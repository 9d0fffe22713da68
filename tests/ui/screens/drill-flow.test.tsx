/** A drill on the screen: the pages of a session whose vehicle answers by itself, from the choice to the debrief. */
import { describe, expect, test } from 'vitest';
import { repairChoices } from '../../../src/drill/drill-words.ts';
import type { MeasureStep, Procedure } from '../../../src/procedure/procedure.ts';
import { repairsWords } from '../../../src/session/repairs-words.ts';
import { DrillApp } from '../../../src/ui/drill/drill-app.tsx';
import type { DrillServices } from '../../../src/ui/drill/drill-services.ts';
import { SHORT } from '../../drill/short-procedure.ts';
import { type DrillAsk, type DrillInTest, library, newDrill } from '../../drill/students.ts';
import { expectWhole, openTestScreen } from '../in-process.ts';
import { DOWN, ENTER, ESC, F, PAGE_DOWN } from './keys.ts';

const RIGHT = '\x1b[C';
const hall = library.circuits.get('hall-module-fed')!;
const SIZES = [
  [80, 24],
  [60, 20],
] as const;

/** A drill on a test screen; every key is a second after the one before, unless said otherwise. */
async function walkDrill(
  ask: DrillAsk,
  options: { columns?: number; rows?: number; eachMs?: number; choose?: boolean } = {},
) {
  const drill = { ...newDrill(3, ask), preview: false };
  const { eachMs = 1000, choose = false, ...size } = options;
  let now = 0;
  const services: DrillServices = {
    subjects: () => [{ name: 'hall-module-fed', title: 'A Hall sensor', about: 'three wires' }],
    begin: () => drill,
    clock: () => {
      now += eachMs;
      return now;
    },
  };
  let left = 0;
  const screen = await openTestScreen(
    <DrillApp
      services={services}
      begun={choose ? null : drill}
      onLeave={() => {
        left += 1;
      }}
    />,
    size,
  );
  return {
    drill,
    screen,
    press: async (...keys: string[]) => {
      for (const key of keys) await screen.send(key);
    },
    frame: () => screen.text(),
    /** The frame as running text. */
    flat: async () => (await screen.text()).replace(/[│\s]+/g, ' '),
    session: () => drill.driver.session(),
    left: () => left,
  };
}
/** One whose step says what is good, in its reasons and in the words of its outcome. */
const JUDGED: Procedure = {
  ...SHORT,
  steps: {
    ...SHORT.steps,
    feed: {
      ...(SHORT.steps['feed'] as MeasureStep),
      why: 'A healthy feed is 5 V.',
      outcomes: [{ name: 'good', words: 'as computed', from: null, to: null, go: 'bad' }],
    },
  },
};
const last = (drill: DrillInTest) => drill.driver.session().events.at(-1);

describe('the screens of a drill', () => {
  test('from the choice to the debrief with keys alone', async () => {
    const { press, frame, flat, drill, session, screen, left } = await walkDrill(
      { level: 'named' },
      { choose: true },
    );
    expect(await frame()).toContain('Which drill?');
    await press(ENTER);
    expect(await frame()).toContain('How hard?');
    await press(ENTER);
    expect(await frame()).toContain('The answer is sealed as');
    await press(ENTER);
    expect(await frame()).toContain('Nothing has been read yet.');
    // Key on, then the test: the caution comes first, only y takes it away, and the bench reads by itself.
    await press('t', RIGHT, 'm');
    expect(await frame()).toContain('Before you go on');
    await press(PAGE_DOWN, PAGE_DOWN);
    expect(await flat()).toContain('the caution is the one for a real one');
    await press('y');
    expect(session().tests).toHaveLength(1);
    expect(await frame()).toContain('─ Any test ─');
    expect(await flat()).toContain(session().tests[0]!.typed);
    expect(await flat()).toContain('1 reading,');
    // Ohms with the key on.
    await press(DOWN, RIGHT, 'm');
    expect(await flat()).toContain('The bench stops this test');
    expect(last(drill)?.type).toBe('test-stopped');
    expect(await flat()).toContain(session().tests[0]!.typed);
    await press(ESC, F.suspects);
    expect(await frame()).toContain('%');
    await press(ENTER, 'c');
    expect(await frame()).toContain('What fixes it?');
    await press(ENTER);
    expect(await frame()).toContain('Hand in');
    expect(session().concluded).toBeNull();
    await press(ENTER);
    expect(await frame()).toContain('After the drill');
    expect(session().revealed).not.toBeNull();
    await press(ENTER);
    expect(left()).toBe(1);
    expect(screen.crashes).toEqual([]);
  });

  test.each(SIZES)(
    'a capture takes the scope, asks for its cautions, shows its picture at %i x %i',
    async (columns, rows) => {
      const { press, frame, flat, session, screen } = await walkDrill(
        { level: 'named' },
        { columns, rows },
      );
      await press(ENTER, 't');
      expect(await frame()).toContain('[c] capture');
      // Nothing turns with the key off.
      await press('c');
      expect(await flat()).toContain('Nothing is moving past the sensor');
      expect(session().tests).toHaveLength(0);
      await press(RIGHT, RIGHT, 'c');
      expect(await frame()).toContain('Before you go on');
      // In a small window the caution must be read to its end first.
      await press(PAGE_DOWN, PAGE_DOWN, PAGE_DOWN, 'y');
      expect(session().tests[0]!.capture).toBeDefined();
      expect(await frame()).toContain('The capture');
      expect(await frame()).toMatch(/[\u2800-\u28ff]/);
      expectWhole(await screen.lines(), columns, rows);
      await press(ENTER);
      expect(await frame()).toMatch(/Instrument +scope/);
    },
  );

  test('an Enter held down gives no diagnosis, as it ends the drill', async () => {
    const { press, frame, session } = await walkDrill({ level: 'named' }, { eachMs: 30 });
    await press(ENTER, 'c', ENTER, ENTER, ENTER);
    expect(await frame()).toContain('This ends the drill');
    expect(await frame()).toContain('That Enter came too fast');
    expect(session().concluded).toBeNull();
  });

  test.each(SIZES)(
    'a diagnosis is read in full before it is handed in, at %i x %i',
    async (columns, rows) => {
      const { press, flat, session, screen } = await walkDrill(
        { level: 'double' },
        { columns, rows },
      );
      const [first, second] = repairChoices(hall).filter(({ words }) => words.startsWith('Clean'));
      await press(ENTER, 'c');
      for (const { words } of [first!, second!]) await press(words, ENTER);
      expect(await flat()).toContain(`Hand in: ${repairsWords([first!.words, second!.words])}`);
      expectWhole(await screen.lines(), columns, rows);
      await press(ESC);
      expect(await flat()).toContain('What else does it need?');
      expect(session().concluded).toBeNull();
      await press('give up', ENTER);
      expect(await flat()).toContain('Give up without a diagnosis?');
    },
  );

  test('what is typed marks the repair that says it, and that is the diagnosis', async () => {
    const { press, frame, session } = await walkDrill({ level: 'unnamed' });
    const { words } = repairChoices(hall).find(({ repair }) => repair === 'sensor.replace')!;
    await press(ENTER, 'c', words.replace('.', ''));
    expect(await frame()).toContain(`> ${words}`);
    await press(ENTER, ENTER);
    const faults = hall.faults.filter(({ repair }) => repair === 'sensor.replace');
    expect(session().concluded?.faults).toEqual(faults.map(({ id }) => id));
  });

  test('what the level hides is neither shown nor offered', async () => {
    const { press, frame, flat, session, screen, drill } = await walkDrill({ level: 'blind' });
    await press(ENTER);
    expect(await flat()).toContain('You choose the tests.');
    expect(await frame()).not.toContain('[F5]');
    await press('t', 'm', PAGE_DOWN, PAGE_DOWN, 'y', 'm');
    expect(session().tests).toHaveLength(2);
    expect(await flat()).toContain('2 readings');
    expect(await flat()).not.toContain('Good is:');
    expect(session().tests[0]?.expected).toBeNull();
    const { answer, salt } = drill.world.vehicle.hidden;
    expect(screen.raw()).not.toContain(answer.faults[0]);
    expect(screen.raw()).not.toContain(salt);
  });

  test.each(SIZES)(
    'a step is done with Enter, and the end says what the procedure concludes, at %i x %i',
    async (columns, rows) => {
      const { press, frame, flat, session, screen } = await walkDrill(
        { level: 'blind', procedure: SHORT },
        { columns, rows },
      );
      await press(ENTER);
      expect(await flat()).toContain('Press Enter to do it: the bench reads it.');
      // No suspects on this level: their key leads to the diagnosis.
      expect(await frame()).toContain('[F5] diagnosis');
      expect(await flat()).not.toContain('Good is:');
      await press(ENTER);
      expect(session().answers).toHaveLength(1);
      expect(await frame()).toContain('The procedure ends here');
      expect(await flat()).toContain('Everything around the sensor is sound.');
      expect(await flat()).toContain('Repair Replace the sensor.');
      expect(await flat()).toContain('Whether you believe it is up to you');
      expect(await frame()).not.toContain('[Enter]');
      expectWhole(await screen.lines(), columns, rows);
      await press('c');
      expect(await frame()).toContain('What fixes it?');
    },
  );

  test('a level that hides what is good tells neither the verdict of a step nor its reasons, also not on the way back', async () => {
    const { press, flat } = await walkDrill({ level: 'blind', procedure: JUDGED });
    await press(ENTER);
    expect(await flat()).not.toContain('A healthy feed');
    await press(ENTER);
    expect(await flat()).toMatch(/Feed at .*: [\d.]+ m?V/);
    expect(await flat()).not.toContain('as computed');
    await press(F.way);
    expect(await flat()).toContain('The path so far');
    expect(await flat()).not.toContain('as computed');
  });

  test('a level that shows what is good tells both', async () => {
    const { press, flat } = await walkDrill({ level: 'unnamed', procedure: JUDGED });
    await press(ENTER);
    expect(await flat()).toContain('Why: A healthy feed is 5 V.');
    await press(ENTER);
    expect(await flat()).toMatch(/Feed at .*: [\d.]+ m?V: as computed/);
  });

  test.each(['blind', 'unnamed'] as const)(
    '? promises nothing that level %s has not',
    async (level) => {
      const { press, frame, session } = await walkDrill({ level, procedure: JUDGED }, { rows: 80 });
      await press(ENTER, '?');
      const text = (await frame()).replace(/[│\s]+/g, ' ');
      expect(text).toContain('F5, Ctrl+P Diagnosis. What fixes it');
      for (const none of ['uspects', 'how likely', 'tell you most', 'suggested', 'F6', 'Tab'])
        expect(text).not.toContain(none);
      // The bench reads: no reading is typed, and no test was done before.
      for (const none of ['Type readings', 'Enters the reading', 'already'])
        expect(text).not.toContain(none);
      expect(session().status).toBe('open');
    },
  );

  test('? of a level with suspects has their keys', async () => {
    const { press, flat } = await walkDrill({ level: 'named', procedure: JUDGED }, { rows: 80 });
    await press(ENTER, '?');
    expect(await flat()).toContain('F5, Ctrl+P Suspects. What could be wrong, and how likely');
    expect(await flat()).toContain('F6, Ctrl+T Best tests');
  });

  test('the way round a step that has none names no key that does nothing here', async () => {
    const { press, flat } = await walkDrill({ level: 'blind', procedure: JUDGED });
    await press(ENTER, F.cannot);
    expect(await flat()).toContain('no alternative to this step');
    expect(await flat()).not.toContain('F6');
  });

  test('nothing is worked out for a step where what is good is hidden', async () => {
    const { press, flat } = await walkDrill({ level: 'blind', procedure: JUDGED });
    await press(ENTER, F.sums);
    expect(await flat()).toContain('would give away what is good');
    const shown = await walkDrill({ level: 'unnamed', procedure: JUDGED });
    await shown.press(ENTER, F.sums);
    expect(await shown.flat()).not.toContain('would tell what is good');
  });

  test('? says what costs points', async () => {
    const { press, flat } = await walkDrill({ level: 'blind' });
    await press(ENTER, '?', PAGE_DOWN, PAGE_DOWN, PAGE_DOWN);
    expect(await flat()).toContain(
      'A dangerous test is stopped by the bench and costs safety points',
    );
  });

  test('is paused, and says how it goes on', async () => {
    const { press, flat, left } = await walkDrill({ level: 'blind' });
    await press(ENTER, F.pause);
    expect(await flat()).toContain('ohmward drill --resume');
    await press(ENTER);
    expect(left()).toBe(1);
  });

  test('at 60 by 20 the reading stands whole beside what the bench stops', async () => {
    const { press, flat, session } = await walkDrill({ level: 'named' }, { columns: 60, rows: 20 });
    await press(ENTER, 't', DOWN, RIGHT, RIGHT, 'm', PAGE_DOWN, PAGE_DOWN, 'y');
    expect(session().tests).toHaveLength(1);
    await press(RIGHT, 'm');
    expect(session().stopped).toHaveLength(1);
    expect(await flat()).toContain('> Instrument filament lamp');
    expect(await flat()).toContain('It costs safety points');
  });
});
