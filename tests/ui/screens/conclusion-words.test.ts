/** A conclusion in words, of shipped procedures. */
import { beforeAll, expect, it } from 'vitest';
import { presentConclusion } from '../../../src/session/session.ts';
import type { OpenedSession } from '../../../src/ui/app-services.ts';
import {
  conclusionParagraphs,
  fromTree,
  proofParagraph,
} from '../../../src/ui/screens/conclusion-words.ts';
import { beforeLastTests, provenBeforeWords } from '../../../src/ui/screens/proven-before.ts';
import { leftLine } from '../../../src/ui/screens/step-words.ts';
import { KEY_ON } from '../../circuit/setup.ts';
import { after, type SetAnswers, type Shop, shopFor, walkOn } from '../../session/walk-library.ts';

let shop: Shop;
beforeAll(() => {
  shop = shopFor('hall-no-signal');
});

const NOTHING = { evidence: [], ruledOut: [], wouldProve: [], wouldPlace: [], left: [] };
const WEIGHED = {
  ...NOTHING,
  missing: 0,
  proven: true,
  support: 'borne-out',
  better: { kind: 'accept' },
  chance: 1,
  unexplained: null,
  hangsOn: null,
};

function textAfter(set: SetAnswers): string {
  const session = walkOn(shop, shop.begun, 'sensor.dead', set);
  const opened = { bind: (text: string) => text, driver: {} } as OpenedSession;
  const tree = presentConclusion(session)!;
  return conclusionParagraphs(opened, session, fromTree(session, tree), null)
    .map(({ text }) => text)
    .join('\n');
}

it('says which steps could not be done before it says how sure it is', () => {
  const gaps = textAfter({ 'level/at-plug': 'cannot', 'spare/fitted': 'cannot' });
  expect(gaps).toContain(
    '! Not everything could be tested, so what was not tested may still be at fault. Could not be done: Pull the signal down at the connector; Known-good sensor fitted.',
  );
  expect(gaps).not.toContain('were tested and are good');
  expect(textAfter({})).not.toContain('Not everything could be tested');
});

it('says of what is not proven any more that it was, with more causes left open', () => {
  const session = walkOn(shop, shop.begun, 'sensor.dead', {});
  const longer = { ...session, events: [...session.events, session.events.at(-1)!] };
  const opened = { bind: (text: string) => text, driver: {} } as OpenedSession;
  const proposed = fromTree(session, presentConclusion(session)!);
  type Given = Parameters<typeof conclusionParagraphs>[3];
  const said = (of: typeof session, proven: boolean, left: readonly string[]) =>
    conclusionParagraphs(opened, of, proposed, { ...WEIGHED, proven, left, hangsOn: 3 } as Given)
      .map(({ text }) => text)
      .join('\n');
  const WAS = 'It was proven before, with more causes left open';
  expect(said(session, false, ['a'])).not.toContain(WAS);
  expect(said(session, true, ['a', 'b'])).not.toContain(WAS);
  expect(said(longer, false, ['a'])).toContain(`NOT PROVEN YET: it rests on one reading. ${WAS}`);
  // A reading that leaves as many speaks against what was proven.
  expect(said(longer, false, ['a', 'b'])).not.toContain(WAS);
});

it('finds after a resumption how the conclusion stood before its last tests', () => {
  const session = walkOn(shop, shop.begun, 'sensor.dead', {});
  const { faults, title } = presentConclusion(session)!;
  const lately = {
    type: 'record-test',
    test: { setup: KEY_ON, probe: VOLTS },
    typed: '5 V',
    shown: { kind: 'number', value: 5, unit: 'V' },
    expected: null,
  } as const;
  const tested = after(session, lately);
  const paused = after(tested, { type: 'pause' });
  const resumed = after(paused, { type: 'resume', program: 'ohmward test', by: 'person' });
  const asked = (of: typeof session, named = faults) => {
    const opened = { driver: {} } as OpenedSession;
    return beforeLastTests(opened, of, { faults: named, title });
  };
  expect(asked(resumed)).toEqual([session]);
  const twice = after(resumed, lately);
  expect(asked(twice)).toEqual([resumed, session]);
  expect(asked(tested)).toEqual([]);
  expect(asked(resumed, ['sensor.shorted'])).toEqual([]);
  // What is known from this run of the program is not asked for.
  const opened = { driver: {} } as OpenedSession;
  provenBeforeWords(opened, session, title, { proven: true, left: [] });
  expect(beforeLastTests(opened, resumed, { faults, title })).toEqual([]);
});
const VOLTS = { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' } as const;

it('names a connector that could not be reached once, with the steps that were gone round for it', () => {
  const set = { 'level/at-plug': 'cannot', 'spare/fitted': 'cannot' };
  const session = walkOn(shop, shop.begun, 'sensor.dead', set);
  const reason = 'the connector of the sensor could not be reached';
  const round = session.answers.map((kept) =>
    kept.event.type === 'step-impossible'
      ? { ...kept, event: { ...kept.event, reason, by: 2 } }
      : kept,
  );
  const opened = { bind: (text: string) => text, driver: {} } as OpenedSession;
  const proposed = fromTree(session, presentConclusion(session)!);
  const said = conclusionParagraphs(opened, { ...session, answers: round }, proposed, null)
    .map(({ text }) => text)
    .join('\n');
  expect(said).toContain(
    'may still be at fault. The connector of the sensor could not be reached: Pull the signal down at the connector; Known-good sensor fitted.',
  );
});

it('says of the next test whether it was made already', () => {
  const opened = { bind: (text: string) => text, driver: {} } as OpenedSession;
  const saidOf = (isAgain: boolean) =>
    proofParagraph(opened, shop.begun, { faults: ['wire.signal.open'], title: 'The signal wire' }, {
      ...{ proven: false, missing: 1, hangsOn: null, evidence: [], chance: 0.9 },
      support: 'borne-out',
      better: { kind: 'prove', proposal: { words: 'Pull the fuse.', minutes: 3 }, isAgain },
    } as never).text;
  expect(saidOf(false)).toContain('Next: Pull the fuse (3 min). ');
  expect(saidOf(true)).toContain('Next, once more to be sure: Pull the fuse (3 min). ');
});

it('begins the repair with what the last test left on the vehicle, and stands before the evidence', () => {
  const throttle = shopFor('throttle-position');
  // By hand: a worn contact in the sensor's ground, found with a resistor in the open connector.
  const session = walkOn(throttle, throttle.begun, 'contact.sensor.ground.resistive', {
    ...{ code: 'circuit', 'levels/across': 5.05, 'at-rest': 3.38, 'top-end': 1.67 },
    ...{ 'behind/plug/look': 'sound', 'behind/plug/tap-down': 0.033 },
  });
  const opened = { bind: (text: string) => text, driver: {} } as OpenedSession;
  const proposed = fromTree(session, presentConclusion(session)!);
  const weighed = { ...WEIGHED, wouldProve: [{ words: 'pull the fuse', minutes: 2 }] } as never;
  const lines = conclusionParagraphs(opened, session, proposed, weighed).map(({ text }) => text);
  const repair = lines.indexOf('Repair');
  expect(lines[repair + 1]).toMatch(
    /The last test is still set up\. First: key off, remove the 1 kohm resistor from .*, plug the throttle position sensor back in\./,
  );
  expect(repair).toBeGreaterThan(0);
  expect(repair).toBeLessThan(lines.indexOf('Further tests'));
  const concluded = after(session, { type: 'conclude' });
  expect(leftLine(concluded)).toBe(leftLine(session));
  expect(leftLine(throttle.begun)).toBe('');
});
