/** The dialogue of lines says what the screens say, and saves what they save. */
import { describe, expect, it } from 'vitest';
import type { SessionEvent } from '../../src/session/events.ts';
import type { OpenedSession } from '../../src/ui/app-services.ts';
import { plainDrill } from '../../src/ui/drill/plain-drill.ts';
import { plainSession } from '../../src/ui/plain/plain-session.ts';
import { memoryDrill } from '../drill/memory-drill.ts';
import { fakeSession } from './screens/fake-services.ts';
import { LIVE } from './screens/small-procedure.ts';

/** Types these lines one after the other; gives what was said and what was saved. */
async function talk(lines: readonly string[], other: Partial<OpenedSession> = {}) {
  const { opened, driver } = fakeSession();
  const said: string[] = [];
  const left = [...lines];
  await plainSession(
    { ...opened, ...other },
    {
      say: (line) => said.push(line),
      ask: async (question) => {
        said.push(question);
        const line = left.shift() ?? null;
        if (line === 'fill the disk') {
          driver.fillDisk(1);
          return left.shift() ?? null;
        }
        return line;
      },
    },
  );
  return { said, text: said.join('\n'), events: driver.events() };
}

describe('the plain dialogue', () => {
  it('gives chances as the screens do: what is not nothing is never nothing', async () => {
    const { text } = await talk(['yes', '0.02', 'suspects']);
    expect(text).toContain('  1   86 %  mend the feed wire');
    expect(text).toContain('  3   <1 %  replace the module');
  });

  it('asks about exchanged leads and an over-limit on volts before it takes them', async () => {
    const typed = (events: readonly SessionEvent[]) =>
      events.flatMap((event) => (event.type === 'reading-recorded' ? [event.typed] : []));
    const swapped = await talk(['yes', '-4.97', '4.97']);
    expect(swapped.text).toContain('-4.97 V: the leads look swapped');
    expect(typed(swapped.events)).toEqual(['4.97']);
    expect(typed((await talk(['yes', '-4.97', 'yes'])).events)).toEqual(['-4.97']);
    const over = await talk(['yes', 'OL']);
    expect(over.text).toContain('OL: over limit on a volts range: check the range');
    expect(typed(over.events)).toEqual([]);
  });

  it('says how much proof there is, counted', async () => {
    const { text, events } = await talk(['yes', '0.02', 'conclude 2']);
    expect(text).toContain('NOT PROVEN YET: 2 independent pieces of evidence missing.');
    expect(text).toContain('Accepted, not proven: 1 piece of evidence.');
    expect(events.findLast(({ type }) => type === 'concluded')).toMatchObject({
      title: 'clean the ground joint',
      faults: ['contact.sensor.ground.resistive'],
    });
  });

  it('says nothing of suspects after a reading that could not be saved', async () => {
    const { said } = await talk(['yes', '4.97', 'back', 'fill the disk', '5.01']);
    const refused = said.findIndex((line) => line.includes('disk'));
    expect(refused).toBeGreaterThan(0);
    expect(said.slice(refused + 1).join('\n')).not.toContain('rose from');
  });

  it('binds the places of a proposed test, and says what was not done', async () => {
    const { text, events } = await talk(['yes', 'next', 'do 3', 'no']);
    expect(text).toContain('Voltage from sensor ground, pin 3 (BK) to battery negative (2 min)');
    expect(text).toContain(
      'Test light from sensor feed, pin 1 (RD/BU) to battery negative (<1 min)',
    );
    expect(text).toContain('Nothing was done: the cautions were not acknowledged.');
    expect(events.some(({ type }) => type === 'note-added')).toBe(false);
  });

  it('asks for no caution of a proposed test that was read a moment ago in this state', async () => {
    const { text, events } = await talk(['yes', 'do 1', '13 mV'], { cautionsFor: () => [LIVE] });
    expect(text.match(/Read and understood/g)).toHaveLength(1);
    expect(events.at(-2)).toMatchObject({ type: 'test-recorded', typed: '13 mV' });
  });

  it('draws the wiring, or says that there is none', async () => {
    expect((await talk(['yes', 'sketch'])).text).toContain('reference');
    const without = await talk(['yes', 'sketch'], { sketch: () => [] });
    expect(without.text).toContain('There is no circuit behind this procedure, so no wiring.');
  });
});

describe('the plain drill', () => {
  it.each(['constructor', 'toString', '__proto__'])(
    'takes "%s" for no word of its own',
    async (word) => {
      const said: string[] = [];
      const lines = [word, 'leave'];
      const end = await plainDrill(memoryDrill(3), {
        say: (line) => said.push(line),
        ask: async () => lines.shift() ?? null,
      });
      expect(end).toBe('left');
      expect(said.at(-2)).toContain('All words: help');
    },
  );
});
