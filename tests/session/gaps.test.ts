/** A conclusion after a way on which something could not be done. */
import { beforeAll, describe, expect, it, test } from 'vitest';
import { loadLibrary } from '../../src/files/load-library.ts';
import { customerWords, GAPS_WORDS, gapsOf } from '../../src/session/gaps.ts';
import { presentConclusion, type Session } from '../../src/session/session.ts';
import { type Shop, shopFor, walkOn } from './walk-library.ts';

let shop: Shop;
beforeAll(() => {
  shop = shopFor('hall-no-signal');
});
const words = (session: Session) => customerWords(session, presentConclusion(session)!);

describe('what the customer is told', () => {
  it('claims what the whole way has shown to be good', () => {
    const whole = walkOn(shop, shop.begun, 'sensor.dead');
    expect(gapsOf(whole)).toEqual([]);
    expect(words(whole)).toBe(
      'The crankshaft sensor itself is at fault. Its wiring and the control module were tested and are good.',
    );
  });
  it('claims nothing of it where a step could not be done, and says that there are gaps', () => {
    const gaps = walkOn(shop, shop.begun, 'sensor.dead', {
      'level/at-plug': 'cannot',
      'level/open-level': 4.9,
      'picture/scope': 'cannot',
      'picture/meter': 4.9,
      'spare-uncounted/fitted': 'cannot',
    });
    expect(gapsOf(gaps).map(({ step }) => step)).toEqual([
      'level/at-plug',
      'picture/scope',
      'spare-uncounted/fitted',
    ]);
    expect(words(gaps)).toBe(
      `The signal of the crankshaft sensor does not reach the control module. To say where it is lost, another instrument is needed. ${GAPS_WORDS}`,
    );
  });
  it('says nothing of its own where the procedure says nothing', () => {
    const whole = walkOn(shop, shop.begun, 'sensor.dead');
    const conclusion = presentConclusion(whole)!;
    expect(customerWords(whole, { ...conclusion, customer: '' })).toBe('');
    const { cleared: _, ...plain } = { ...conclusion, customer: 'It is the sensor.' };
    expect(customerWords(whole, plain)).toBe('It is the sensor.');
  });
});

test('in every shipped procedure, what only the whole way shows stands apart', () => {
  const claims = /\b(is|are) good\b|tested|would not have helped|[Nn]either/;
  for (const [name, { draft }] of loadLibrary('procedures').procedures)
    for (const [id, step] of Object.entries(draft.steps))
      expect(step.customer ?? '', `${name} ${id}`).not.toMatch(claims);
});
