/** Another program sets a value of the car, and sees what is known of it. */
import { describe, expect, it } from 'vitest';
import { emptyJob } from '../../src/procedure/job.ts';
import { newDrill, newSession } from './served.ts';

const FEED = 'module.reference.volts';
interface Line {
  readonly quantity: string;
  readonly words: string;
  readonly described: string;
  readonly known: { readonly typed: string } | null;
}

describe('a value of the car', () => {
  it('is listed as described, then as it was set, then as before', async () => {
    const one = newSession('hall-module-fed', null);
    const feed = async () => {
      const { values } = await one.result('values');
      return (values as readonly Line[]).find(({ quantity }) => quantity === FEED);
    };
    expect(await feed()).toMatchObject({ known: null, described: '4.75 to 5.25 V' });
    const set = { quantity: FEED, is: '8 V +/- 3 %', from: 'label on the module' };
    await one.result('set-value', set);
    expect(one.lastEvent()).toMatchObject({
      type: 'value-set',
      from: { kind: 'label', words: 'on the module' },
    });
    expect(await feed()).toMatchObject({ known: { typed: '8 V +/- 3 %' } });
    await one.result('back');
    expect(one.lastEvent()).toMatchObject({ type: 'value-taken-back' });
    expect(await feed()).toMatchObject({ known: null });
  });

  it.each([
    ['quantity', { quantity: 'module.refrence.volts', is: '8 V', from: 'label' }],
    ['is', { quantity: FEED, is: '8 ohm', from: 'label' }],
    ['from', { quantity: FEED, is: '8 V', from: 'hearsay' }],
  ])('is refused at its parameter %s', async (key, params) => {
    const one = newSession('hall-module-fed', null);
    const { error } = await one.call('set-value', params);
    expect(error?.code).toBe(-32602);
    const issues = error?.data?.['issues'] as readonly { at: string; fix: string }[];
    expect(issues[0]).toMatchObject({ at: `/params/${key}`, fix: expect.stringMatching(/./) });
  });

  it('moves what is good at a test that is prepared', async () => {
    const one = newSession('hall-module-fed', null);
    const test = { measure: 'volts sensor.feed battery.negative' };
    const low = async () =>
      ((await one.result('prepare', { test }))['expected'] as { low: number }).low;
    expect(await low()).toBeLessThan(5);
    await one.result('set-value', { quantity: FEED, is: '8 V', from: 'measured' });
    expect(await low()).toBeGreaterThan(7);
  });

  it('has no place on a drill', async () => {
    const one = newDrill('hall-no-signal', 'named', 7);
    const set = { quantity: FEED, is: '8 V', from: 'label' };
    expect(await one.refusal('set-value', set)).toBe('vehicle-answers');
  });

  it('stands from the start where the job sheet has it, for the simulated vehicle too', async () => {
    const known = [{ what: FEED, is: '8 V', from: 'label' }];
    const one = newSession('hall-module-fed', 'healthy', { job: { ...emptyJob('x'), known } });
    const { values } = await one.result('values');
    expect((values as readonly Line[])[0]).toMatchObject({ quantity: FEED });
    const test = { measure: 'volts sensor.feed battery.negative' };
    const prepared = await one.result('prepare', { test });
    for (const { id } of prepared['cautions'] as readonly { id: string }[])
      await one.result('acknowledge', { caution: id, person: 'R. Example', test });
    await one.result('test', { test, take: true });
    const event = one.lastEvent();
    const shown = event.type === 'test-recorded' ? event.shown : null;
    expect(shown?.kind === 'number' && shown.value).toBeGreaterThan(7.5);
  });
});
