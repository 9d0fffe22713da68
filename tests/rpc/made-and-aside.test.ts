/** Another program writes down a test that was made already, and sets one aside that cannot be made. */
import { expect, it } from 'vitest';
import { newSession } from './served.ts';

interface Next {
  readonly proposals: readonly { readonly id: string; readonly test: object }[];
  readonly further: readonly { readonly id: string }[];
  readonly aside: readonly object[];
}

it('what is set aside is proposed no more, until it can be made after all', async () => {
  const one = newSession('hall-module-fed', null);
  const next = async () => (await one.result('next')) as unknown as Next;
  const first = await next();
  expect(first.further.length).toBeGreaterThan(0);
  const { id } = first.proposals[0]!;
  await one.result('aside', { test: { test: id } });
  expect(one.lastEvent()).toMatchObject({ type: 'test-set-aside', aside: true });
  const without = await next();
  const ids = [...without.proposals, ...without.further].map((each) => each.id);
  expect(ids).not.toContain(id);
  expect(without.aside).toEqual([first.proposals[0]!.test]);
  await one.result('aside', { test: { test: id }, aside: false });
  expect(one.lastEvent()).toMatchObject({ type: 'test-set-aside', aside: false });
});

it('a test that was made already asks for no caution, and keeps when it was and a note', async () => {
  const one = newSession('hall-module-fed', null);
  const test = { measure: 'volts battery.positive battery.negative', state: 'key-on' };
  const { events } = await one.result('test', {
    ...{ test, reading: '12.4 V', made: '14:05', note: 'on the charger' },
  });
  expect(events).toMatchObject([
    { type: 'test-recorded', typed: '12.4 V', made: '14:05', note: 'on the charger' },
  ]);
});
