/** The dialogue of lines says what the screens say, and saves what they save. */
import { describe, expect, it } from 'vitest';
import type { SessionEvent } from '../../src/session/events.ts';
import type { OpenedSession } from '../../src/ui/app-services.ts';
import { plainSession } from '../../src/ui/plain/plain-session.ts';
import { type FakeOptions, fakeSession } from './screens/fake-services.ts';
import { LIVE, SMALL_PROCEDURE } from './screens/small-procedure.ts';

/** Types these lines one after the other; gives what was said and what was saved. */
async function talk(
  lines: readonly string[],
  other: Partial<OpenedSession> = {},
  options: FakeOptions = {},
) {
  const { opened, driver } = fakeSession(options);
  const said: string[] = [];
  const left = [...lines];
  await plainSession(
    { ...opened, ...other },
    {
      say: (line) => said.push(line),
      ask: async (question) => {
        said.push(question);
        const line = left.shift() ?? null;
        if (line === 'fill the disk') {
          driver.fillDisk(1);
          return left.shift() ?? null;
        }
        return line;
      },
    },
  );
  return { said, text: said.join('\n'), events: driver.events() };
}

describe('the plain dialogue', () => {
  it('gives chances as the screens do: what is not nothing is never nothing', async () => {
    const { text } = await talk(['yes', '0.02', 'suspects']);
    expect(text).toContain('  1   86 %  mend the feed wire');
    expect(text).toContain('  3   <1 %  replace the module');
  });

  it('asks about exchanged leads and an over-limit on volts before it takes them', async () => {
    const typed = (events: readonly SessionEvent[]) =>
      events.flatMap((event) => (event.type === 'reading-recorded' ? [event.typed] : []));
    const swapped = await talk(['yes', '-4.97', '4.97']);
    expect(swapped.text).toContain('-4.97 V: the leads look swapped');
    expect(typed(swapped.events)).toEqual(['4.97']);
    expect(typed((await talk(['yes', '-4.97', 'yes'])).events)).toEqual(['-4.97']);
    const over = await talk(['yes', 'OL']);
    expect(over.text).toContain('OL: over limit on a volts range: check the range');
    expect(typed(over.events)).toEqual([]);
  });

  it('says how much proof there is, counted', async () => {
    const { text, events } = await talk(['yes', '0.02', 'conclude 2', 'accept']);
    expect(text).toContain('NOT PROVEN YET: 2 independent pieces of evidence missing.');
    expect(text).toContain('Accepted, not proven: 1 piece of evidence.');
    expect(events.findLast(({ type }) => type === 'concluded')).toMatchObject({
      conclusion: null,
      ownWords: null,
      faults: ['contact.sensor.ground.resistive'],
    });
  });

  it('says nothing of suspects after a reading that could not be saved', async () => {
    const { said } = await talk(['yes', '4.97', 'back', 'fill the disk', '5.01', 'leave']);
    const refused = said.findIndex((line) => line.includes('disk'));
    expect(refused).toBeGreaterThan(0);
    expect(said.slice(refused + 1).join('\n')).not.toContain('rose from');
  });

  it('binds the places of a proposed test, and says what was not done', async () => {
    const { text, events } = await talk(['yes', 'next', 'do 3', 'no']);
    expect(text).toContain('Voltage from sensor ground, pin 3 (BK) to battery negative (2 min)');
    expect(text).toContain(
      'Test light from sensor feed, pin 1 (RD/BU) to battery negative (<1 min)',
    );
    expect(text).toContain('Nothing was done: the cautions were not acknowledged.');
    expect(events.filter(({ type }) => type === 'caution-acknowledged')).toHaveLength(1);
  });

  it('asks for no caution of a proposed test that was read a moment ago in this state', async () => {
    const cautionRules = [{ ...LIVE, states: ['key-on' as const], drives: [], when: [] }];
    const { text, events } = await talk(['yes', 'do 1', '13 mV'], {}, { cautionRules });
    expect(text.match(/Read and understood/g)).toHaveLength(1);
    expect(events.at(-2)).toMatchObject({ type: 'test-recorded', typed: '13 mV' });
  });

  it('sets a proposed test aside, says so, and brings it back', async () => {
    const { text, events } = await talk(['yes', 'aside 2', 'next', 'aside back', 'aside back']);
    expect(events.slice(-3, -1)).toMatchObject([
      { type: 'test-set-aside', aside: true, test: { probe: { kind: 'light' } } },
      { type: 'test-set-aside', aside: false },
    ]);
    expect(text).toContain('. The last one back: aside back');
    expect(text).toContain('No test was set aside.');
  });

  it('sets all that needs a connector aside by its part, told of where a step cannot be done', async () => {
    const { text, events } = await talk(['yes', 'cannot no room', 'aside sensor', 'aside back']);
    expect(text).toMatch(/If nothing can be done at the connector of the .*: aside sensor/);
    expect(text).toMatch(/Set aside: all that needs the connector of the /);
    expect(text).toMatch(/Can be done after all: all that needs the connector of the /);
    expect(events.slice(-3, -1)).toMatchObject([
      { type: 'connector-set-aside', part: 'sensor', aside: true },
      { type: 'connector-set-aside', part: 'sensor', aside: false },
    ]);
    expect((await talk(['yes', 'aside lambda'])).text).toMatch(/aside and its part, of .*sensor/);
  });

  it('sets all that needs a vehicle state aside by its name, told of where a step cannot be done', async () => {
    const { text, events } = await talk(['yes', 'cannot no room', 'aside cranking', 'aside back']);
    expect(text).toMatch(/If the key can't be switched on, in no other step either: aside key-on/);
    expect(text).toContain('Set aside: all that needs cranking or a running engine.');
    expect(text).toContain('Can be done after all: all that needs cranking or a running engine.');
    expect(events.slice(-3, -1)).toMatchObject([
      { type: 'state-set-aside', state: 'cranking', aside: true },
      { type: 'state-set-aside', state: 'cranking', aside: false },
    ]);
    const { text: asked } = await talk(['yes', 'aside starter']);
    expect(asked).toContain('aside key-on, aside cranking, aside running');
  });

  it('draws the wiring, or says that there is none', async () => {
    expect((await talk(['yes', 'sketch'])).text).toContain('reference');
    const without = await talk(['yes', 'sketch'], { sketch: () => [] });
    expect(without.text).toContain(
      'This session has no circuit model, so there is no wiring to show.',
    );
  });
});

describe('a test that was made already', () => {
  it('is asked for when, what it showed and a note', async () => {
    const made = ['made volts sensor.feed battery.negative', '9.30', '4.98', 'at rest'];
    const { text, events } = await talk(made, {}, { free: true });
    expect(text).toContain('Made [before the job], or at what time? ');
    expect(events.find(({ type }) => type === 'test-recorded')).toMatchObject({
      ...{ typed: '4.98', made: '09:30', note: 'at rest' },
    });
  });

  it('is looked for by words', async () => {
    const { text } = await talk(['test live data', 'test xyzzy'], {}, { free: true });
    expect(text).toMatch(/Live data/);
    expect(text).toContain('No test matches "xyzzy".');
  });
});

describe('any test', () => {
  const recorded = (events: readonly SessionEvent[]) =>
    events.flatMap((event) => (event.type === 'test-recorded' ? [event] : []));

  it('is typed as it is arranged, at a step and in free order', async () => {
    const lines = [
      'state key-off',
      'unplug sensor module',
      'test ohms sensor.feed module.reference',
      '0.3',
    ];
    for (const [begin, options] of [
      [['yes'], {}],
      [[], { free: true }],
    ] as const) {
      const { text, events } = await talk([...begin, ...lines], {}, options);
      expect(text).toContain(
        'Arranged: key off; engine control module unplugged; crankshaft position sensor unplugged.',
      );
      expect(recorded(events)).toMatchObject([
        {
          test: {
            setup: { state: 'key-off', unplugged: ['module', 'sensor'] },
            probe: { kind: 'ohms', plus: 'sensor.feed', minus: 'module.reference' },
          },
          typed: '0.3',
          shown: { kind: 'number', value: 0.3, unit: 'ohm' },
          judgement: { verdict: 'good' },
        },
      ]);
    }
  });

  it('is chosen by its number', async () => {
    const { text, events } = await talk(['test', 'test 2', '4.97'], {}, { free: true });
    expect(text).toContain('   2  Volts from feed to ground at the sensor');
    // The list begins with the standard tests, since free order has no step.
    expect(recorded(events)).toMatchObject([
      { test: { probe: { kind: 'volts', plus: 'sensor.feed', minus: 'sensor.ground' } } },
    ]);
  });

  it('is refused with its reason, before anything is asked', async () => {
    const { text, events } = await talk(
      ['state key-on', 'test ohms sensor.feed sensor.ground'],
      {},
      {
        free: true,
      },
    );
    expect(text).toContain("This test can't be done:");
    expect(recorded(events)).toEqual([]);
  });

  it('that moves the harness says so and keeps it', async () => {
    const lines = ['wiggle', 'volts sensor.feed battery.negative', '5'];
    const { text, events } = await talk(lines, {}, { free: true });
    expect(text).toContain('Wiggle the harness and connectors while you watch the instrument.');
    expect(recorded(events)).toMatchObject([{ test: { wiggle: true } }]);
  });

  it('is taken over from the simulated vehicle', async () => {
    const { events } = await talk(
      ['test volts sensor.ground battery.negative', 'take'],
      {},
      {
        free: true,
        bench: true,
      },
    );
    expect(recorded(events)).toMatchObject([{ typed: '13.1 mV', shown: { value: 0.0131 } }]);
  });

  it('cannot be arranged without a circuit', async () => {
    const { text } = await talk(['yes', 'test'], {}, { advisor: false });
    expect(text).toContain('This session has no circuit model');
  });
});

describe('free order', () => {
  it('ends in a conclusion of words, or on a suspect', async () => {
    const said = await talk(['conclude mouse in the harness'], {}, { free: true });
    expect(said.events.at(-1)).toMatchObject({
      type: 'concluded',
      ownWords: 'mouse in the harness',
      faults: [],
    });
    const named = await talk(['conclude 1', 'accept'], {}, { free: true });
    expect(named.events.at(-1)).toMatchObject({ ownWords: null, faults: ['wire.feed.open'] });
  });

  it('takes no line for a reading', async () => {
    const { text } = await talk(['4.97'], {}, { free: true });
    expect(text).toContain('"4.97" is not a command here. All commands: help');
  });
});

describe('words', () => {
  it.each(['constructor', 'toString', '__proto__'])('"%s" is none of them', async (word) => {
    const { text } = await talk([word], {}, { free: true });
    expect(text).toContain(`"${word}" is not a command here`);
  });

  it('hide no answer of the step', async () => {
    // "still" arranges a test, and is an answer where a step has one of that name.
    const step = SMALL_PROCEDURE.steps['follows'];
    if (step?.kind !== 'ask') throw new Error('the small procedure asks there');
    const [yes, no] = step.outcomes;
    const outcomes = [yes!, { ...no!, name: 'still' }];
    const steps = { ...SMALL_PROCEDURE.steps, follows: { ...step, outcomes } };
    const procedure = { ...SMALL_PROCEDURE, start: 'follows', steps };
    const { events } = await talk(['yes', 'still'], {}, { procedure });
    expect(events.at(-2)).toMatchObject({ type: 'look-recorded', outcome: 'still' });
  });
});
