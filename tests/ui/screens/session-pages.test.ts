/** The pages of a session by themselves: which lies over which, what is wanted, what comes after it. No screen. */
import { describe, expect, it } from 'vitest';
import type { OpenedSession } from '../../../src/ui/app-services.ts';
import type { Effect, Page, PagesState } from '../../../src/ui/screens/pages-state.ts';
import { cannotQuestion } from '../../../src/ui/screens/reach-pages.ts';
import type { SessionAction } from '../../../src/ui/screens/session-keys.ts';
import {
  beginPages,
  type PageEvent,
  pagesAfter,
  runPages,
} from '../../../src/ui/screens/session-pages.ts';
import { type View, viewOf } from '../../../src/ui/screens/session-view.ts';
import { createKeyDecoder } from '../../../src/ui/term/key-decoder.ts';
import { KEY_ON } from '../../circuit/setup.ts';
import { FAKE_ADVISOR, type FakeOptions, fakeSession } from './fake-services.ts';

const ON_PURPOSE = { isSeen: true, isDeliberate: true };
const ENTER = '\r';

/** A session without a screen: events go in, what it would show comes out. */
function pages(options: FakeOptions = {}, other: Partial<OpenedSession> = {}, isRetest = false) {
  const fake = fakeSession(options);
  const opened = { ...fake.opened, ...other };
  let state: PagesState = beginPages(opened, isRetest);
  let left = 0;
  const send = (...events: readonly PageEvent[]) => {
    for (const event of events)
      state = runPages({ opened, state }, event, () => {
        left += 1;
      });
  };
  return {
    driver: fake.driver,
    send,
    act: (...actions: readonly SessionAction[]) =>
      send(...actions.map((action): PageEvent => ({ type: 'action', action }))),
    type: (text: string, timing = ON_PURPOSE) => {
      const decoder = createKeyDecoder();
      for (const event of decoder.push(new TextEncoder().encode(text)))
        send({ type: 'key', event, timing });
    },
    wants: (event: PageEvent): Effect | null => pagesAfter({ opened, state }, event).effect,
    view: (): View => viewOf({ opened, state }),
    over: (): Page['name'][] => state.over.map(({ name }) => name),
    message: () => state.message,
    left: () => left,
    last: () => fake.driver.events().at(-1),
  };
}
const READ: PageEvent = { type: 'acknowledge' };
const CLOSE: PageEvent = { type: 'close' };
const ACCEPT: PageEvent = { type: 'accept' };

describe('what the session asks for', () => {
  it('is the caution, the step, the conclusion, then rest', () => {
    const { send, type, view } = pages();
    expect(view()).toMatchObject({ name: 'caution', aside: 'step 1' });
    send(READ);
    expect(view()).toMatchObject({ name: 'step', step: { id: 'feed' }, again: null });
    type(`0.02${ENTER}`);
    expect(view()).toMatchObject({ name: 'conclusion', proposed: { own: null } });
    send(ACCEPT);
    expect(view().name).toBe('rest');
  });

  it('takes what the codes did once it was driven, as an event of the same record', () => {
    const { send, type, over, message, last } = pages();
    send(READ);
    type(`0.02${ENTER}`);
    send(ACCEPT, { type: 'drive' });
    expect(over()).toEqual(['drive']);
    send({ type: 'text', text: 'away, 80 km' });
    expect(over()).toEqual([]);
    expect(message()).toBe('The drive is in the record.');
    expect(last()).toMatchObject({ type: 'drive-reported', code: 'stayed-away', words: '80 km' });
  });

  it('is free order where there is no procedure', () => {
    expect(pages({ free: true }).view().name).toBe('free');
  });
});

describe('a page over it', () => {
  it('closes to the page below', () => {
    const { send, act, over, view } = pages();
    send(READ);
    act('suspects');
    send({ type: 'suspect', row: FAKE_ADVISOR.suspects(fakeSession().driver.session()).rows[1]! });
    expect(over()).toEqual(['suspects', 'own']);
    expect(view()).toMatchObject({
      name: 'conclusion',
      proposed: { title: 'clean the ground joint' },
    });
    send(CLOSE);
    expect(over()).toEqual(['suspects']);
    send(CLOSE);
    expect(view().name).toBe('step');
  });

  it('is gone once its command is done, and stays while it is refused', () => {
    const { send, act, over, message } = pages();
    send(READ);
    act('note');
    send({ type: 'text', text: '   ' });
    expect(over()).toEqual(['note']);
    expect(message()).toBe('! the note is empty');
    send({ type: 'text', text: 'green pins' });
    expect(over()).toEqual([]);
    expect(message()).toBe('The note is in the record.');
  });

  it('shows what would prove the conclusion it lies over, else what would tell most', () => {
    const at = pages();
    at.send(READ);
    at.act('next-tests');
    expect(at.over()).toEqual(['computing']);
    at.send({ type: 'drawn' });
    expect(at.view()).toMatchObject({ name: 'next-tests', title: 'What would tell you most now' });
    at.send(CLOSE);
    at.type(`0.02${ENTER}`);
    at.act('next-tests');
    at.send({ type: 'drawn' });
    expect(at.view()).toMatchObject({ name: 'next-tests', title: 'What would prove it' });
  });

  it('of a step that no capture answers is refused in words', () => {
    const { send, act, over, message } = pages();
    send(READ);
    act('capture');
    expect([over(), message()]).toEqual([
      [],
      expect.stringContaining("! a capture can't answer this step"),
    ]);
  });

  it('keeps the half-typed answer below it', () => {
    const { send, act, type, last } = pages();
    send(READ);
    type('4.9');
    act('way');
    send(CLOSE);
    type(`7${ENTER}`);
    expect(last()).toMatchObject({ type: 'reading-recorded', typed: '4.97', value: 4.97 });
  });
});

describe('a proposed test that cannot be made', () => {
  it('is set aside, the others are weighed anew, and it comes back', () => {
    const at = pages();
    at.send(READ);
    at.act('next-tests');
    at.send({ type: 'drawn' });
    const { test } = FAKE_ADVISOR.nextTests(at.driver.session())[0]!;
    at.send({ type: 'aside', test });
    expect(at.last()).toMatchObject({ type: 'test-set-aside', test, aside: true });
    expect(at.over()).toEqual(['computing']);
    at.send({ type: 'drawn' });
    expect(at.over()).toEqual(['next-tests']);
    at.send({ type: 'aside-back' });
    expect(at.last()).toMatchObject({ type: 'test-set-aside', test, aside: false });
    at.send({ type: 'aside-back' });
    expect(at.message()).toBe('! no test was set aside');
  });
});

describe('a connector that cannot be reached', () => {
  const FEED = {
    test: {
      setup: KEY_ON,
      probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
    },
  } as const;

  it('is chosen of those that a proposed test needs, and one key takes it back', () => {
    const at = pages();
    at.send(READ);
    at.act('next-tests');
    at.send({ type: 'drawn' });
    at.send({ type: 'reach', ...FEED });
    expect(at.over()).toEqual(['next-tests', 'reach']);
    expect(at.view()).toMatchObject({
      ...{ name: 'reach', of: [{ part: 'sensor' }, { state: 'key-on' }] },
    });
    at.send({ type: 'chosen', id: 'part sensor' });
    expect(at.last()).toMatchObject({ type: 'connector-set-aside', part: 'sensor', aside: true });
    expect(at.message()).toMatch(/^Set aside: all that needs the connector of the /);
    expect(at.over()).toEqual(['computing']);
    at.send({ type: 'drawn' }, { type: 'aside-back' });
    expect(at.last()).toMatchObject({ type: 'connector-set-aside', part: 'sensor', aside: false });
  });

  it('is a numbered reason why a step cannot be done', () => {
    const at = pages();
    at.send(READ);
    const { about } = cannotQuestion(at.driver.session());
    expect(about).toMatch(/1: nothing can be done at the connector of the .*sensor/);
    at.act('cannot');
    at.send({ type: 'text', text: '1' });
    expect(at.last()).toMatchObject({ type: 'connector-set-aside', part: 'sensor' });
    expect(at.over()).toEqual([]);
    at.act('cannot');
    at.send({ type: 'text', text: '2' });
    // Said already, and only one other is left: now it is a reason like any other.
    expect(at.last()).toMatchObject({ type: 'step-impossible', reason: '2' });
  });
});

describe('a vehicle state that cannot be had', () => {
  const CRANKED = {
    setup: { ...KEY_ON, state: 'cranking' },
    probe: { kind: 'counts', input: 'module.signal' },
  } as const;

  it('is chosen of what a proposed test needs, and one key takes it back', () => {
    const at = pages();
    at.send(READ);
    at.act('next-tests');
    at.send({ type: 'drawn' });
    at.send({ type: 'reach', test: CRANKED });
    expect(at.view()).toMatchObject({ name: 'reach', of: [{ state: 'cranking' }] });
    at.send({ type: 'chosen', id: 'state cranking' });
    expect(at.last()).toMatchObject({
      ...{ type: 'state-set-aside', state: 'cranking', aside: true },
      reason: 'the engine could not be cranked',
    });
    expect(at.message()).toBe('Set aside: all that needs cranking or a running engine.');
    at.send({ type: 'drawn' }, { type: 'aside-back' });
    expect(at.last()).toMatchObject({ type: 'state-set-aside', state: 'cranking', aside: false });
    expect(at.message()).toMatch(/^Can be done after all: all that needs cranking or a running/);
  });

  it('is a numbered reason why a step cannot be done, behind the connectors', () => {
    const at = pages();
    at.send(READ);
    expect(cannotQuestion(at.driver.session()).about).toMatch(
      /\n1: nothing can be done at .*\n2: the key can't be switched on, in this step or any other$/,
    );
    at.act('cannot');
    at.send({ type: 'text', text: '2' });
    expect(at.last()).toMatchObject({ type: 'state-set-aside', state: 'key-on' });
  });

  it('is no choice for a test with the key off that needs no plug', () => {
    const at = pages();
    at.send(READ);
    at.act('next-tests');
    at.send({ type: 'drawn' });
    const probe = { kind: 'volts', plus: 'battery.positive', minus: 'battery.negative' } as const;
    at.send({ type: 'reach', test: { setup: { ...KEY_ON, state: 'key-off' }, probe } });
    expect(at.message()).toBe(
      '! this test needs no connector, and the key is off: x sets it aside alone',
    );
  });
});

/** The list of tests comes first. */
const BY_HAND = { type: 'chosen', id: 'by hand' } as const;

describe('any test', () => {
  it('is arranged as the step has it, read about, answered, and the step stands there again', () => {
    const at = pages();
    at.send(READ);
    at.act('any-test');
    expect(at.over()).toEqual(['any-test', 'choice']);
    at.send(BY_HAND);
    expect(at.view()).toMatchObject({
      name: 'any-test',
      form: { red: 'sensor.feed', instrument: 'volts', setup: { state: 'key-on' } },
    });
    at.send({ type: 'line', line: 'red' }, { type: 'chosen', id: 'sensor.ground' });
    at.send({ type: 'measure' });
    expect(at.over()).toEqual(['any-test', 'test']);
    // Half a volt is lost in the ground: far more than the sensor's few milliamperes lose in a sound wire.
    at.type(`0.5${ENTER}`);
    expect(at.last()).toMatchObject({
      type: 'test-recorded',
      test: { probe: { kind: 'volts', plus: 'sensor.ground', minus: 'battery.negative' } },
      typed: '0.5',
      expected: { kind: 'number' },
      judgement: { verdict: 'high' },
    });
    expect(at.over()).toEqual([]);
    expect(at.view()).toMatchObject({ name: 'step', step: { id: 'feed' } });
  });

  it('has its cautions acknowledged for itself, and they stand in the record', () => {
    const at = pages();
    at.send(READ);
    at.send({ type: 'proposal', proposal: FAKE_ADVISOR.nextTests(at.driver.session())[2]! });
    expect(at.view()).toMatchObject({ name: 'caution', actions: null });
    at.send(READ);
    expect(at.last()).toMatchObject({ type: 'caution-acknowledged', step: null, state: 'running' });
    expect(at.view().name).toBe('test');
  });

  it('of the list is gone on with at once', () => {
    const at = pages({ free: true });
    at.act('any-test');
    at.send({ type: 'chosen', id: '1' });
    expect(at.over()).toEqual(['any-test', 'test']);
    expect(at.view()).toMatchObject({ toDo: { words: 'Volts from feed to ground at the sensor' } });
  });

  it('that must not be made is refused with its reason', () => {
    const at = pages({ free: true });
    at.act('any-test');
    at.send(BY_HAND);
    at.send({ type: 'line', line: 'black' }, { type: 'chosen', id: 'module.reference' });
    at.send({ type: 'line', line: 'red' }, { type: 'chosen', id: 'module.reference' });
    at.send({ type: 'measure' });
    expect(at.over()).toEqual(['any-test']);
    expect(at.message()).toBe('! both leads are at the same terminal, "module.reference"');
  });

  it('can be made after the conclusion, and is no answer of the tree', () => {
    const at = pages();
    at.send(READ);
    at.type(`0.02${ENTER}`);
    at.send(ACCEPT);
    at.act('any-test');
    at.send(BY_HAND);
    at.send({ type: 'measure' });
    at.type(`1${ENTER}`);
    expect(at.last()?.type).toBe('test-recorded');
    expect(at.view().name).toBe('rest');
    // In the unit of the meter, which was not typed; and what it says.
    expect(at.message()).toMatch(/^In the record: .*, 1 V/);
  });

  it('takes a circuit', () => {
    const at = pages({ advisor: false });
    at.send(READ);
    at.act('any-test');
    expect(at.message()).toContain('no other test can be set up');
    expect(at.over()).toEqual([]);
  });

  it('keeps what was typed wrong to be clipped in as a message, and stays', () => {
    const at = pages({ free: true });
    at.act('any-test');
    at.send(BY_HAND);
    at.send({ type: 'line', line: 'clipped-in' }, { type: 'text', text: 'here there spoon' });
    expect([at.over(), at.message()]).toEqual([
      ['any-test', 'clip'],
      expect.stringContaining('"spoon"'),
    ]);
    at.send({ type: 'text', text: 'sensor.signal battery.negative 470 ohm' });
    expect(at.view()).toMatchObject({ name: 'any-test', form: { setup: { bridges: [{}] } } });
  });
});

describe('a conclusion of one’s own', () => {
  it('in free order is a suspect or words', () => {
    const named = pages({ free: true });
    named.send({ type: 'own-conclusion' });
    expect(named.over()).toEqual(['suspects']);
    const worded = pages({ free: true, advisor: false });
    worded.send({ type: 'own-conclusion' }, { type: 'text', text: 'mouse in the harness' });
    expect(worded.over()).toEqual(['own']);
    worded.send(ACCEPT);
    expect(worded.last()).toMatchObject({ type: 'concluded', ownWords: 'mouse in the harness' });
  });
});

describe('the tests after the repair', () => {
  function concluded() {
    const at = pages();
    at.send(READ);
    at.type(`0.02${ENTER}`);
    at.send(ACCEPT, { type: 'retest' });
    return at;
  }

  it('lie over the session at rest, one after the other, then their verdict', () => {
    const at = concluded();
    expect(at.view()).toMatchObject({ name: 'caution', aside: 'after the repair, test 1 of 2' });
    at.send(READ);
    at.type(`5${ENTER}`);
    expect(at.message()).toBe('The last test passes now.');
    expect(at.view()).toMatchObject({ name: 'step', again: { progress: 'test 2 of 2' } });
    at.type('1');
    expect(at.view().name).toBe('verdict');
    at.send({ type: 'last-again' });
    expect(at.view()).toMatchObject({ name: 'step', step: { id: 'light' } });
    at.type('1');
    at.send(ACCEPT);
    expect(at.last()).toMatchObject({ type: 'session-closed', verdict: 'cured' });
    expect(at.view().name).toBe('rest');
  });

  it('are left and found again, and may begin a session that is opened for them', () => {
    const at = concluded();
    at.act('pause');
    expect(at.view().name).toBe('rest');
    const begun = pages({}, {}, true);
    expect(begun.over()).toEqual(['retest']);
  });

  it('have keys of their own: what does not belong there says so', () => {
    const at = concluded();
    at.send(READ);
    at.act('note');
    expect(at.message()).toContain('not while testing after the repair');
    at.act('cannot');
    at.send({ type: 'text', text: 'out of reach' });
    expect(at.last()).toMatchObject({ type: 'retest-impossible', reason: 'out of reach' });
    expect(at.message()).toBe('The last test was not done.');
  });
});

describe('a disk that refuses', () => {
  it('keeps what was wanted, tries it again, and gives it up only by leaving', () => {
    const at = pages();
    at.send(READ);
    at.driver.fillDisk(2);
    at.type(`5${ENTER}`);
    expect(at.view()).toMatchObject({ name: 'disk', wanted: { type: 'perform' } });
    at.send({ type: 'retry' });
    expect(at.over()).toEqual(['disk']);
    expect(at.wants({ type: 'leave' })).toEqual({ type: 'leave' });
    at.send({ type: 'retry' });
    expect(at.last()).toMatchObject({ type: 'reading-recorded', typed: '5' });
    expect(at.view()).toMatchObject({ name: 'step', step: { id: 'light' } });
  });

  it('is left for another folder', () => {
    const at = pages();
    at.send(READ);
    at.driver.fillDisk(9);
    at.type(`5${ENTER}`);
    at.send({ type: 'folder', folder: '/stick' });
    expect(at.last()).toMatchObject({ type: 'reading-recorded', typed: '5' });
    expect(at.driver.path()).toContain('/stick/');
  });

  it('under the cautions of a test leads back to that test', () => {
    const at = pages();
    at.send(READ);
    at.send({ type: 'proposal', proposal: FAKE_ADVISOR.nextTests(at.driver.session())[2]! });
    at.driver.fillDisk(1);
    at.send(READ);
    expect(at.over()).toEqual(['test', 'disk']);
    at.send({ type: 'retry' });
    expect(at.view().name).toBe('test');
  });
});

describe('a key that came too early', () => {
  it('answers nothing and says so', () => {
    const at = pages();
    at.send(READ);
    at.type(`5${ENTER}`);
    at.type('1', { isSeen: false, isDeliberate: false });
    expect(at.last()?.type).toBe('reading-recorded');
    expect(at.message()).toContain('before this was on the screen');
  });
});

it('leaves when it is told to', () => {
  const at = pages();
  at.send({ type: 'leave' });
  expect(at.left()).toBe(1);
});
