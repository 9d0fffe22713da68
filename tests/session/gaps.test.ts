/** A conclusion after a way on which something could not be done. */
import { beforeAll, describe, expect, it } from 'vitest';
import { recordOf } from '../../src/records/session-record.ts';
import { customerWords, GAPS_WORDS, gapsOf } from '../../src/session/gaps.ts';
import { presentConclusion, type Session } from '../../src/session/session.ts';
import { type Shop, shopFor, after as taken, walkOn } from './walk-library.ts';

let shop: Shop;
beforeAll(() => {
  shop = shopFor('hall-no-signal');
});
const words = (session: Session) => customerWords(session, presentConclusion(session)!);

describe('what the customer is told', () => {
  it('claims nothing to be good: the readings do', () => {
    const whole = walkOn(shop, shop.begun, 'sensor.dead');
    expect(gapsOf(whole)).toEqual([]);
    expect(words(whole)).toBe('The crankshaft sensor itself is at fault.');
  });
  it('says that there are gaps where a step could not be done', () => {
    const gaps = walkOn(shop, shop.begun, 'sensor.dead', {
      'picture/scope': 'cannot',
      'picture/meter': 4.9,
      'spare-uncounted/fitted': 'cannot',
    });
    expect(gapsOf(gaps).map(({ step }) => step)).toEqual([
      'picture/scope',
      'spare-uncounted/fitted',
    ]);
    expect(words(gaps)).toBe(
      `The control module does not count the signal of the crankshaft sensor. To find where it is lost, another instrument is needed. ${GAPS_WORDS}`,
    );
  });
  it('says nothing of its own where the procedure says nothing', () => {
    const whole = walkOn(shop, shop.begun, 'sensor.dead');
    const conclusion = presentConclusion(whole)!;
    expect(customerWords(whole, { ...conclusion, customer: '' })).toBe('');
    // An early version kept what an author said to be good.
    const early = { ...conclusion, customer: 'It is the sensor.', cleared: 'All else is good.' };
    expect(customerWords(whole, early)).toBe('It is the sensor.');
  });
});

describe('the faults of a conclusion', () => {
  const weighedOn = (fault: string) => {
    const walked = walkOn(shop, shop.begun, fault);
    const tree = presentConclusion(walked)!;
    return { walked, tree, weighed: shop.advisor.weigh(walked, tree.faults) };
  };
  const faultsOn = (fault: string) => {
    const { walked, weighed } = weighedOn(fault);
    return taken(walked, { type: 'conclude', weighed }).concluded!.faults;
  };

  // With 4.9 V at the module and none at the plug the wire touches neither ground nor battery.
  it.each([['wire.signal.open'], ['wire.signal.short-to-ground']])(
    'of %s are those that the readings leave standing',
    (fault) => {
      expect(weighedOn(fault).tree.faults.length).toBeGreaterThan(4);
      expect(faultsOn(fault)).toEqual([fault]);
    },
  );

  it('stay where no reading tells them apart', () => {
    expect(faultsOn('sensor.dead')).toContain('sensor.stuck-high');
  });

  it('are never none, and never others than the conclusion stands for', () => {
    const { walked, tree, weighed } = weighedOn('wire.signal.open');
    for (const left of [[], ['sensor.dead']])
      expect(
        taken(walked, { type: 'conclude', weighed: { ...weighed, left } }).concluded?.faults,
      ).toEqual(tree.faults);
  });
});

it('a report leaves nothing open that the conclusion has repaired, however few of its faults the readings leave', () => {
  const walked = walkOn(shop, shop.begun, 'target.gap-wide');
  const tree = presentConclusion(walked)!;
  const weighed = { ...shop.advisor.weigh(walked, tree.faults), left: ['target.damaged'] };
  const concluded = taken(walked, { type: 'conclude', weighed });
  expect(concluded.concluded!.faults).toEqual(['target.damaged']);
  const own = concluded.opened.circuit!.faults.filter(({ id }) => tree.faults.includes(id));
  const repairs = new Set(own.map(({ repairWords }) => repairWords));
  expect(repairs.size).toBeGreaterThan(1);
  const { notRuledOut } = recordOf(concluded, { seq: 1, hash: '' }).conclusion!;
  for (const words of repairs) expect(notRuledOut).not.toContain(words);
});

describe('what a report says to be good', () => {
  it.each([
    ['one look into a plug', 'contact.sensor.signal.open', { 'counts/live': 'cannot' }],
    ['heat and wiggle', 'sensor.dead', {}],
  ] as const)('after %s is what a reading of this session shows', (_, fault, set) => {
    const walked = walkOn(shop, shop.begun, fault, set);
    const tree = presentConclusion(walked)!;
    const weighed = shop.advisor.weigh(walked, tree.faults);
    const concluded = taken(walked, { type: 'conclude', weighed });
    const { conclusion, lines } = recordOf(concluded, { seq: 1, hash: '' });
    const standing = new Set(
      lines.flatMap(({ event, standing: how }) => (how === 'standing' ? [event] : [])),
    );
    const { ruledOut, notRuledOut } = conclusion!;
    for (const { words: repair, readings } of ruledOut) {
      expect(readings.length, repair).toBeGreaterThan(0);
      for (const reading of readings) expect(standing).toContain(reading);
      expect(notRuledOut).not.toContain(repair);
    }
    // Every repair of the circuit is named once: the conclusion's, ruled out by a reading, or not ruled out.
    const { circuit } = concluded.opened;
    const own = circuit!.faults.filter(({ id }) => tree.faults.includes(id));
    const all = new Set(circuit!.faults.map(({ repairWords }) => repairWords));
    const told = new Set([
      ...ruledOut.map(({ words: repair }) => repair),
      ...notRuledOut,
      ...own.map(({ repairWords }) => repairWords),
    ]);
    expect([...told].sort()).toEqual([...all].sort());
  });
});
