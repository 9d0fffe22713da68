/** The tests after the repair follow from the way that stands. */
import { expect, test } from 'vitest';
import { retestLines } from '../../src/session/retest.ts';
import { presentConclusion } from '../../src/session/session.ts';
import { retestWords } from '../../src/ui/screens/step-words.ts';
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
