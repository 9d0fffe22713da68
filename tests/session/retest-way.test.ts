/** The tests after the repair follow from the way that stands. */
import { expect, test } from 'vitest';
import { outcomeOfValue } from '../../src/procedure/procedure.ts';
import { pendingCautions } from '../../src/session/pending-cautions.ts';
import { retestLines, retestVerdict } from '../../src/session/retest.ts';
import { presentConclusion } from '../../src/session/session.ts';
import { retestWords } from '../../src/ui/screens/answer-words.ts';
import { after, shopFor, walkOn } from './walk-library.ts';

const shop = shopFor('hall-no-signal');
const titles = (session: typeof shop.begun) => retestLines(session).map(({ step }) => step.id);

test('a bad reading of a way that was corrected away is not repeated, nor told as the one before', () => {
  const wrong = walkOn(shop, shop.begun, 'wire.signal.open', {
    'feed/across': 11.9,
    'which-high': 11.9,
  });
  expect(presentConclusion(wrong)?.id).toBe('feed-high');
  expect(titles(wrong)).toContain('which-high');
  const place = wrong.trail.findIndex(({ step }) => step === 'feed/across');
  const back = after(wrong, { type: 'go-back', to: place });
  const right = walkOn(shop, back, 'wire.signal.open', { 'feed/across': 4.97 });
  expect(presentConclusion(right)?.id).toBe('signal-wire');
  // what failed on this way, and the conclusion's own
  expect(titles(right)).toEqual(['picture/scope', 'level/at-plug', 'far-end/along', 'counts/live']);
  for (const { step, before } of retestLines(right))
    expect(before?.type ?? null, step.id).toBe(
      step.id === 'counts/live'
        ? null
        : step.id === 'picture/scope'
          ? 'look-recorded'
          : 'reading-recorded',
    );
});

test('after the repair a test is told by its value and what is good, not in the words of the diagnosis', () => {
  let session = walkOn(shop, shop.begun, 'wire.signal.open');
  session = after(session, { type: 'conclude' });
  const line = retestLines(session).find(({ step }) => step.id === 'far-end/along')!;
  session = after(session, { type: 'acknowledge-cautions', step: line.step.id });
  session = after(session, {
    type: 'record-retest',
    step: line.step.id,
    typed: '0.001',
    value: 0.001,
    look: null,
    outcome: 'none',
  });
  expect(retestWords(line.step, session.retests[0]!)).toMatch(
    /^0\.001 V \(good is 0 to 1\.\d+ mV\)$/,
  );
  const live = retestLines(session).find(({ step }) => step.id === 'counts/live')!.step;
  const follows = { type: 'retest-recorded', step: live.id, typed: '', value: null } as const;
  const seen = { ...follows, outcome: 'follows', passed: true, at: '', elapsed: 2 };
  expect(retestWords(live, { ...seen, look: 'follows' })).toBe('the live data follows');
  expect(retestWords(live, { ...seen, look: 'still', passed: false })).toBe(
    'the live data does not change (good is the live data follows)',
  );
});

// By hand, a reference of 5.05 V: a sound track that rises stands at 0.47 V closed and 4.45 V open, one that falls at
// 4.6 V and 0.5 V. A worn contact in the ground leaves 3.38 V at rest, which the tree takes for one that falls.
const throttle = shopFor('throttle-position');
const worn = after(
  walkOn(throttle, throttle.begun, 'contact.sensor.ground.resistive', {
    code: 'circuit',
    'levels/across': 5.05,
    'at-rest': 3.38,
    'top-end': 1.67,
    'behind/plug/look': 'sound',
  }),
  { type: 'conclude' },
);

function again(session: typeof worn, volts: Readonly<Record<string, number>>) {
  return retestLines(session).reduce((now, { step: { id } }) => {
    const step = retestLines(now).find((line) => line.step.id === id)!.step;
    const ready =
      pendingCautions(now, step).length === 0
        ? now
        : after(now, { type: 'acknowledge-cautions', step: id });
    const value = volts[id];
    if (step.kind === 'measure' && value !== undefined)
      return after(ready, {
        ...{ type: 'record-retest', step: id, typed: `${value} V`, value, look: null },
        outcome: outcomeOfValue(step, value)!.name,
      });
    const look = step.kind === 'look' ? step.expected[0]! : null;
    const outcome =
      step.kind === 'look' ? step.outcomes.find((one) => one.looks.includes(look!)) : undefined;
    return after(ready, {
      ...{ type: 'record-retest', step: id, typed: '', value: null, look },
      outcome: outcome!.name,
    });
  }, session);
}

test('after the repair a track that rises passes where a sound one of its kind does, and so does one that falls', () => {
  expect(titles(worn)).toEqual(['at-rest', 'top-end', 'far-end', 'live/live']);
  const rises = again(worn, { 'at-rest': 0.475, 'top-end': 4.57, 'far-end': 0.6 });
  expect(retestVerdict(rises)).toBe('cured');
  const falls = again(worn, { 'at-rest': 4.6, 'top-end': 0.45, 'far-end': 4.55 });
  expect(retestVerdict(falls)).toBe('cured');
});

test('after the repair what was not cured fails, and so does a signal that stays where it is', () => {
  const same = again(worn, { 'at-rest': 3.38, 'top-end': 1.67, 'far-end': 0.3 });
  expect(retestVerdict(same)).toBe('not-cured');
  const stuck = again(worn, { 'at-rest': 0.475, 'top-end': 4.57, 'far-end': 4.57 });
  expect(retestVerdict(stuck)).toBe('not-cured');
});

test('after the repair what is good is what the sound car of this kind reads', () => {
  const rises = again(worn, { 'at-rest': 0.475, 'top-end': 4.57, 'far-end': 0.6 });
  const line = retestLines(rises).find(({ step }) => step.id === 'top-end')!;
  const [, low, high] = /^4\.57 V \(good is (\S+) to (\S+) V\)$/.exec(
    retestWords(line.step, line.after!),
  )!;
  // by hand: the closed end of a sound track is 5 to 15 % of 4.75 to 5.25 V, which leaves 4.04 to 4.99 V
  expect(Number(low)).toBeGreaterThan(3.5);
  expect(Number(high)).toBeLessThan(5.3);
});
