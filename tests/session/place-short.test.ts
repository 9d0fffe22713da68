/** Location of a short in a session: what is refused, what is kept, and what conclusion and papers say of it. */
import { describe, expect, test } from 'vitest';
import { withHarness } from '../../src/circuit/with-harness.ts';
import { checkEvents } from '../../src/log/check-events.ts';
import type { HarnessSaid } from '../../src/procedure/job.ts';
import { readHarness } from '../../src/procedure/read-harness.ts';
import { customerSections } from '../../src/records/customer-sections.ts';
import { recordForCustomer } from '../../src/records/record-for-customer.ts';
import { recordOf } from '../../src/records/session-record.ts';
import { shopSections } from '../../src/records/shop-sections.ts';
import type { Command } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import { deriveAgain } from '../../src/session/derive-again.ts';
import { evolve, openSession } from '../../src/session/evolve.ts';
import { checkHistory } from '../../src/session/history.ts';
import { pendingTestCautions } from '../../src/session/pending-cautions.ts';
import { mustBeOff, testOfShort } from '../../src/session/place-short.ts';
import { placeWords } from '../../src/session/place-words.ts';
import { readDrops, readStretch } from '../../src/session/read-short.ts';
import { refusalWords } from '../../src/session/refusal.ts';
import type { Session } from '../../src/session/session.ts';
import { shortSteps } from '../../src/session/short-steps.ts';
import { spentMinutes } from '../../src/session/spent-minutes.ts';
import { standingSetup } from '../../src/session/standing-setup.ts';
import type { Here } from '../../src/ui/screens/pages-state.ts';
import {
  afterDrops,
  afterShort,
  dropsCheck,
  dropsQuestion,
  shortItems,
} from '../../src/ui/screens/short-pages.ts';
import { setupOf } from '../circuit/setup.ts';
import { METER, shipped } from '../circuit/shipped.ts';
import { LIBRARY_CAUTIONS } from './library-cautions.ts';
import { opened, when } from './sample-tree.ts';

const HALL = shipped('hall-module-fed');
const SAID: readonly HarnessSaid[] = [
  { connector: 'at the bulkhead', wires: ['feed', 'signal', 'ground'], at: '1.2 m', minutes: 2 },
  { wire: 'signal', length: '3 m', size: '0.5 mm2' },
];
const CAR = withHarness(HALL, readHarness(HALL, SAID).harness).circuit;

function begin(): Session {
  return openSession(opened(null, { circuit: CAR, meter: METER, cautionRules: LIBRARY_CAUTIONS }));
}

function stretch(text: string) {
  const read = readStretch(CAR, text);
  if ('fix' in read) throw new Error(read.words);
  return read;
}

function placing(text: string, said: string, unplugged = ['module', 'sensor']): Command {
  const read = readDrops(said);
  if ('fix' in read) throw new Error(read.words);
  const { typed, ...drops } = read;
  return { type: 'place-short', stretch: stretch(text), unplugged, typed, drops };
}

function perform(session: Session, command: Command): Session {
  const decision = decide(session, command, when(session.events.length));
  if (!decision.ok) throw new Error(refusalWords(decision.refusal).words);
  return decision.events.reduce(evolve, session);
}

function refused(session: Session, command: Command): string {
  const decision = decide(session, command, when(session.events.length));
  return decision.ok ? 'done' : Object.values(refusalWords(decision.refusal)).join(': ');
}

const NEAR = 'signal touching ground from sensor.signal to bulkhead.signal';
const read = (session: Session, text = NEAR) =>
  perform(session, { type: 'acknowledge-cautions', test: testOfShort(CAR, stretch(text), 'from') });
// 0.2 A through 0.8 m and 0.4 m of 36.9 mohm a metre: 5.9 and 2.95 mV, by hand.
const DROPS = '5.9 mV, 2.95 mV';
const placed = () => perform(read(begin()), placing(NEAR, DROPS));

describe('what keeps a place from being measured', () => {
  test('its cautions come first, and warn of the battery and of airbags', () => {
    expect(refused(begin(), placing(NEAR, DROPS))).toMatch(/cautions of this test/);
    const pending = pendingTestCautions(begin(), testOfShort(CAR, stretch(NEAR), 'from'));
    const fed = pending.find(({ id }) => id === 'fed-wire');
    expect(fed?.word).toBe('WARNING');
    expect(fed!.hazards).toEqual(expect.arrayContaining(['battery', 'airbag']));
    expect(pending.map(({ id }) => id)).not.toContain('through-a-resistor');
  });

  test('everything with electronics on both wires is off, else it is refused', () => {
    expect(mustBeOff(CAR, stretch(NEAR))).toEqual(['module', 'sensor']);
    expect(mustBeOff(CAR, { wire: 'signal', touches: 'feed' })).toEqual(['module', 'sensor']);
    for (const off of [[], ['sensor'], ['module']])
      expect(refused(read(begin()), placing(NEAR, DROPS, off))).toMatch(/still plugged in/);
    expect(refused(read(begin()), placing(NEAR, DROPS))).toBe('done');
  });

  test.each<[string, string, string, RegExp]>([
    ['a wire that there is not', 'brake touching ground', DROPS, /no wire of the sensor/],
    ['a wire that touches itself', 'signal touching signal-wire', DROPS, /cannot touch/],
    [
      'ends in the wrong order',
      'signal touching ground from bulkhead.signal to sensor.signal',
      DROPS,
      /has no section from/,
    ],
    [
      'a stretch whose length nobody knows',
      'feed touching ground',
      DROPS,
      /length of this section is not known/,
    ],
    ['volts for millivolts', NEAR, '5.9, 2.95', /no good wire drops that much/],
    ['no drop at all', NEAR, '0 mV, 0 mV', /no current is flowing/],
    ['one current of two', NEAR, '5.9 mV, 2.95 mV; currents 0.2 A, 0 A', /two currents/],
  ])('%s', (_, text, drops, words) => {
    expect(refused(read(begin()), placing(text, drops))).toMatch(words);
  });

  test('a connector in between is meant by the side that the section ends at, whichever was typed', () => {
    expect(stretch('signal touching ground from bulkhead.signal to module.signal').from).toBe(
      'bulkhead.signal.pin',
    );
    expect(stretch('signal touching ground from sensor.signal to bulkhead.signal.pin').to).toBe(
      'bulkhead.signal',
    );
  });

  test('a length that is typed will do for a stretch without a joint', () => {
    const text = 'feed touching ground from bulkhead.feed.pin to module.feed'.replace(
      'module.feed',
      'module.reference',
    );
    const done = perform(read(begin()), placing(text, '5.9 mV, 2.95 mV; length 2 m'));
    expect(done.shorts[0]!.place.metres).toBeCloseTo(4 / 3, 3);
  });
});

describe('a place that was measured', () => {
  test('is where the drops say, in the tenth of a metre', () => {
    const { place } = placed().shorts[0]!;
    expect(place.metres).toBeCloseTo(0.8, 3);
    expect(place.told).toBe(true);
    expect(place.highMetres - place.lowMetres).toBeLessThan(0.25);
  });

  test('over the connector is known less well, by its contact', () => {
    const whole = perform(read(begin()), placing('signal touching ground', '5.9 mV, 16.2 mV'));
    const { place } = whole.shorts[0]!;
    const near = placed().shorts[0]!.place;
    expect(place.highMetres - place.lowMetres).toBeGreaterThan(near.highMetres - near.lowMetres);
  });

  test('has a file that is believed, follows from itself and comes out the same', () => {
    const { events } = placed();
    const stored = events.map((event, at) => ({
      ...event,
      seq: at + 1,
      prev: at === 0 ? null : '0'.repeat(64),
    }));
    expect(checkEvents(JSON.parse(JSON.stringify(stored))).flaw).toBeNull();
    expect(checkHistory(events).flaw).toBeNull();
    expect(deriveAgain(events)).toEqual([]);
    const last = events.at(-1)!;
    if (last.type !== 'short-placed') throw new Error('the short was placed last');
    const moved = { ...last, place: { ...last.place, metres: 0.3 } };
    expect(checkHistory([...events.slice(0, -1), moved]).flaw?.words).toMatch(/does not follow/);
    const retyped = { ...last, typed: '1 mV, 2 mV' };
    expect(deriveAgain([...events.slice(0, -1), retyped])).toMatchObject([{ isFalse: true }]);
  });

  test('takes its minutes, and leaves the lamp clipped on', () => {
    expect(spentMinutes(placed())).toBeGreaterThan(5);
    expect(standingSetup(placed())?.bridges).toMatchObject([
      { to: 'bulkhead.signal', through: 'lamp' },
    ]);
  });

  test("stands in the conclusion, the shop's and the customer's paper", () => {
    const faults = ['wire.signal.1.short-to-ground'];
    const ended = perform(placed(), {
      type: 'conclude',
      own: { words: null, faults },
    });
    const place =
      /^in the signal wire between the sensor's connector and the connector at the bulkhead, 0\.7\d? to 0\.8\d m from the sensor's connector$/;
    expect(placeWords(ended, faults)).toMatch(place);
    const record = recordOf(ended, { seq: ended.events.length, hash: '0'.repeat(64) });
    expect(record.conclusion?.place).toMatch(place);
    expect(record.shorts).toMatchObject([{ touches: 'ground', typed: DROPS }]);
    const said = (sections: unknown) => JSON.stringify(sections);
    expect(said(shopSections(record))).toContain("from the sensor's connector");
    expect(said(customerSections(recordForCustomer(record)))).toContain(
      "Where: in the signal wire between the sensor's connector and the connector at the bulkhead, 0.7",
    );
  });
});

describe('the place of faults that lie along one wire', () => {
  test.each<[string, readonly string[], string]>([
    [
      'a section',
      ['wire.signal.2.open', 'wire.signal.2.resistive'],
      'in the signal wire between the connector at the bulkhead and the engine control module',
    ],
    [
      'a contact',
      ['contact.bulkhead.signal.open'],
      'in the connector at the bulkhead, at the contact of the signal wire',
    ],
    [
      'a section and the contact at its end',
      ['wire.signal.1.open', 'contact.bulkhead.signal.open'],
      "in the signal wire between the sensor's connector and the connector at the bulkhead, with the contact of the connector at the bulkhead",
    ],
    ['the whole wire', ['wire.signal.1.open', 'wire.signal.2.open'], ''],
    ['two wires', ['wire.signal.1.open', 'wire.feed.1.open'], ''],
    ['a part', ['wire.signal.1.open', 'sensor.dead'], ''],
    ['nothing', [], ''],
  ])('%s', (_, faults, words) => {
    expect(placeWords(begin(), faults)).toBe(words);
  });

  test('an open is not where another short was placed', () => {
    expect(placeWords(placed(), ['wire.signal.2.open'])).toMatch(
      /^in the signal wire between the connector/,
    );
  });
});

describe('how it is measured', () => {
  const said = (session: Session) => shortSteps(session, stretch(NEAR));
  const resistor = { from: 'sensor.signal', to: 'battery.negative', through: { ohms: 470 } };
  const clipped: Command = {
    type: 'record-test',
    test: {
      setup: setupOf({ unplugged: ['bulkhead', 'sensor'], bridges: [resistor] }),
      probe: { kind: 'volts', plus: 'sensor.signal', minus: 'battery.negative' },
    },
    typed: '0 V',
    shown: { kind: 'number', value: 0, unit: 'V' },
    expected: null,
  };
  const reading = { type: 'acknowledge-cautions', test: clipped.test } as const;

  test('begins with what the last test left clipped on and open', () => {
    expect(said(begin())[0]).toMatch(/^Key off\. Unplug everything/);
    const [first] = said(perform(perform(begin(), reading), clipped));
    expect(first).toMatch(/^First: key off, remove the 470 ohm resistor from signal at /);
    expect(first).toMatch(/plug the connector at the bulkhead back in\.$/);
    expect(first).not.toContain('sensor back in');
    expect(said(placed())[0]).toMatch(
      /^First: remove the lamp from battery positive to signal at /,
    );
  });

  test('an end that is none is named in a sentence, and its id keeps its letters', () => {
    const asked = afterShort(
      { session: read(begin()), over: [], message: null, half: null },
      'signal battery.negative',
    ).state;
    const page = asked.over.at(-1)!;
    if (page.name !== 'short-drops') throw new Error('the drops are asked');
    const here = { opened: { drill: null } as unknown as Here['opened'], state: asked };
    const check = dropsCheck(here, page, 'from bulkhead.signal to sensor.signal: 5 mV, 6 mV');
    expect(check?.words).toMatch(/^The signal wire has no section from bulkhead\.signal/);
    expect(check?.words).toMatch(/ Write from one of sensor\.signal, /);
  });
});

describe('on the screen', () => {
  const opened = { drill: null, advisor: null } as unknown as Here['opened'];
  const state = (session: Session): Here['state'] => ({
    session,
    over: [],
    message: null,
    half: null,
  });

  test('the list names what touches what, and the drops make the command of the other front ends', () => {
    const session = read(begin());
    const items = shortItems({ opened, state: state(session) });
    expect(items.map(({ text }) => text.trim())).toContain('0 %  the signal wire touches ground');
    const { state: asked } = afterShort(state(session), 'signal battery.negative');
    const page = asked.over.at(-1)!;
    if (page.name !== 'short-drops') throw new Error('the drops are asked');
    const here = { opened, state: asked };
    expect(dropsQuestion(here, page).about).toMatch(/Unplug everything on both wires/);
    expect(dropsCheck(here, page, '5.9 V')?.ok).toBe(false);
    const typed = `from sensor.signal to bulkhead.signal: ${DROPS}`;
    expect(dropsCheck(here, page, typed)).toEqual({ ok: true, words: 'Understood.' });
    const { effect } = afterDrops(asked, page, typed);
    expect(effect).toEqual({ type: 'perform', command: placing(NEAR, DROPS) });
    // A stretch whose cautions nobody has read is asked for anew, behind them.
    const whole = read(begin(), 'signal touching ground');
    const unread = afterDrops(
      afterShort(state(whole), 'signal battery.negative').state,
      page,
      typed,
    );
    expect(unread.effect).toBeNull();
    expect(unread.state.over.at(-1)).toMatchObject({ stretch: { to: 'bulkhead.signal' } });
    // A wire that is called ground is not the body.
    const other = afterShort(state(session), 'signal ground').state.over.at(-1);
    expect(other).toMatchObject({ stretch: { touches: 'ground' } });
  });
});
