/** The dialogue of lines lists and sets values of the car. */

import { expect, it } from 'vitest';
import { beginSession } from '../../src/commands/session/open-session.ts';
import { emptyJob } from '../../src/procedure/job.ts';
import { isProblem } from '../../src/source/problem.ts';
import { plainSession } from '../../src/ui/plain/plain-session.ts';
import { libraryDesk } from '../library-desk.ts';

const table = await libraryDesk();

async function talk(...lines: readonly string[]) {
  const circuit = table.library.circuits.get('hall-module-fed');
  if (!circuit) throw new Error('the library has the circuit');
  const subject = { kind: 'free-order', circuit } as const;
  const opened = beginSession(table, { subject, job: emptyJob('stalls'), bench: null });
  if (isProblem(opened)) throw new Error(opened.problem);
  const said: string[] = [];
  const left = [...lines];
  await plainSession(opened, {
    say: (line) => said.push(line),
    ask: async () => left.shift() ?? null,
  });
  return { text: said.join('\n'), events: opened.driver.session().events };
}

it('lists what can be known, then what is', async () => {
  const { text } = await talk('known', 'known battery at rest is 12.4 V from measured', 'known');
  expect(text).toContain('battery at rest: as described, 11.8 to 14.6 V');
  expect(text).toContain(
    'Set: battery at rest: 12.2 to 12.6 V (measured). All readings are weighed again with it.',
  );
  expect(text).toContain('  battery at rest: 12.2 to 12.6 V (measured)');
});

it('keeps what was typed and from where, and takes it back', async () => {
  const { events } = await talk('known BATTERY AT REST = 12.4 V from maker: the handbook', 'back');
  expect(events.slice(1)).toMatchObject([
    { type: 'value-set', typed: '12.4 V', from: { kind: 'maker', words: 'the handbook' } },
    { type: 'value-taken-back', set: 2 },
    { type: 'session-paused' },
  ]);
});

it.each([
  ['known battery at rest', 'This gives no value.'],
  ['known battery at rest is 12.4 V', 'It does not say where this is known from.'],
  ['known battery is 12.4 V from label', '"battery" can mean 6 things of this circuit.'],
  ['known battery at rest is full from label', '"full" is not understood'],
])('%s: says what is missing', async (line, words) => {
  const { text, events } = await talk(line);
  expect(text).toContain(words);
  expect(events.some(({ type }) => type === 'value-set')).toBe(false);
});
