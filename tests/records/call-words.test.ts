/** What the customer is told on the telephone, and what they said of the work. */
import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { emptyJob, type Job } from '../../src/procedure/job.ts';
import { fitNeighbours } from '../../src/procedure/read-neighbours.ts';
import { callPrices, callSentences } from '../../src/records/call-words.ts';
import { exportRecord } from '../../src/records/export-record.ts';
import { readRates } from '../../src/records/read-rates.ts';
import { recordForClass } from '../../src/records/record-for-class.ts';
import { recordForCustomer } from '../../src/records/record-for-customer.ts';
import { recordOf } from '../../src/records/session-record.ts';
import type { Command } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import { readWork } from '../../src/session/read-work.ts';
import { KEY_ON } from '../circuit/setup.ts';
import { shipped } from '../circuit/shipped.ts';
import { sessionAfter, when } from '../session/sample-tree.ts';
import { drillWalk } from './sample-drill.ts';
import {
  begin,
  FINISHED,
  fileOf,
  finishedWalk,
  JOB,
  signalAt,
  type Walk,
  weighed,
} from './sample-session.ts';

const record = (walk: Walk) => recordOf(walk.session, fileOf(walk).head);
const paper = (walk: Walk, audience: 'customer' | 'shop') =>
  exportRecord(record(walk), 'markdown', audience);
const YES: Command = {
  type: 'answer-work',
  answer: 'authorised',
  by: ' R. Example ',
  words: ' by telephone, up to 240 EUR ',
};
const WIRE: Command = {
  type: 'conclude',
  own: { words: null, faults: ['wire.signal.open'] },
};

describe('three sentences', () => {
  it('say what was found and shown, what it takes, and what is not needed', () => {
    const { call, conclusion } = record(finishedWalk());
    expect(call).toHaveLength(3);
    const [found, takes, needless] = call;
    expect(found).toMatch(/^We found this: [a-z].+\.$/);
    // what shows it is a reading of the evidence, in the words of the paper for the customer
    const first = conclusion?.evidence[0];
    expect(found).toContain(`found ${first?.found}`);
    expect(takes).toMatch(/^What it needs: /);
    expect(needless).toMatch(
      /^(Not needed, according to the tests: |The tests have not ruled out any other)/,
    );
  });

  it.each([1, 2, 3, 5])(
    'read out two at most of %i repairs that are not needed, and count the others',
    (count) => {
      const walk = finishedWalk();
      const made = record(walk);
      const [one] = made.conclusion?.ruledOut ?? [];
      const ruledOut = Array.from({ length: count }, (_, n) => ({
        ...one!,
        words: `Repair ${n}.`,
      }));
      const [, , needless = ''] = callSentences(walk.session, {
        ...made,
        conclusion: { ...made.conclusion!, ruledOut },
      });
      expect(needless.match(/repair \d/g)).toEqual(['repair 0', 'repair 1'].slice(0, count));
      const more = /; and (\d+) more/.exec(needless)?.[1];
      expect(more).toBe(count > 2 ? String(count - 2) : undefined);
    },
  );

  it('say of the evidence what was not right, wherever it stands', () => {
    const turned = FINISHED.slice(
      0,
      FINISHED.findIndex(({ type }) => type === 'conclude'),
    );
    // Event 9 reads 0.02 V at the feed, event 11 what is right at the module.
    const session = begin().do(...turned, { type: 'conclude', weighed: weighed(11, 9) });
    const [found] = record(session).call;
    expect(found).toContain('found 0.02 V; it should be ');
    expect(found).not.toContain('5.01 V');
  });

  it('call nothing right that was found to show a fault', () => {
    const turned = FINISHED.slice(
      0,
      FINISHED.findIndex(({ type }) => type === 'conclude'),
    );
    const session = begin().do(...turned, { type: 'conclude', weighed: weighed(11) });
    expect(record(session).call[0]).toMatch(/found 5\.01 V; it is the best explanation/);
  });

  it('say that nothing has shown it where nothing has', () => {
    expect(record(begin().do(WIRE)).call[0]).toMatch(
      /^This is our suspicion; no test has shown it yet: /,
    );
  });

  it('say of a fault along a wire that its place shows only once the harness is opened', () => {
    expect(record(begin().do(WIRE)).call[1]).toMatch(/once the harness is opened, and more may/);
  });

  it('say where nothing was found that it is so, and call right only what was', () => {
    const nothing = (walk: Walk) => {
      const made = record(walk);
      const end = { ...made.conclusion!, nothingFound: true as const, title: 'No fault found now' };
      const conclusion = {
        ...end,
        customer: 'Nothing was replaced.',
        repair: 'Replace nothing. Log a drive.',
      };
      return callSentences(walk.session, { ...made, conclusion });
    };
    const good = begin().do(signalAt(4.9), WIRE);
    expect(nothing(good)[0]).toBe(
      'The result: no fault found now; what was tested was right when it was tested.',
    );
    expect(nothing(good)[1]).toBe('Nothing was replaced.');
    expect(nothing(begin().do(WIRE))[0]).toBe('The result: no fault found now.');
    // 0.02 V at the feed is not right.
    expect(nothing(finishedWalk())[0]).toBe('The result: no fault found now.');
  });

  it('tell what was tried in vain, whether the tests show why or it was only told', () => {
    const done = { words: 'sensor replaced.', part: 'sensor', changed: 'nothing' as const };
    const session = begin({ job: { ...JOB, earlierRepairs: [done] } });
    expect(record(session.do(WIRE)).call[2]).toMatch(
      /other repair yet; "sensor replaced" changed nothing, as we were told\.$/,
    );
  });

  it('name a part that is not to be replaced before other repairs', () => {
    const walk = finishedWalk();
    const made = record(walk);
    const [one] = made.conclusion?.ruledOut ?? [];
    const ruledOut = ['Mend the wire.', 'Turn the plug.', 'Replace the sensor.'].map((words) => ({
      ...one!,
      words,
    }));
    const [, , needless] = callSentences(walk.session, {
      ...made,
      conclusion: { ...made.conclusion!, ruledOut },
    });
    expect(needless).toMatch(/: replace the sensor; mend the wire; and 1 more/);
  });

  it('are none before a conclusion and on a drill', () => {
    expect(record(begin()).call).toEqual([]);
    const drill = drillWalk();
    expect(recordOf(drill.session, { seq: 1, hash: '0'.repeat(64) }).call).toEqual([]);
  });
});

/** The customer's record where a broken signal wire was concluded and the feed ruled these repairs out. */
function recordRulingOut(repairs: readonly string[], circuit: Circuit, told: Partial<Job> = {}) {
  const probe = { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' } as const;
  const shown = { kind: 'number', value: 5, unit: 'V' } as const;
  const ruledOut = repairs.map((repair) => ({ repair, by: [2] }));
  const session = sessionAfter(
    [
      { type: 'record-test', test: { setup: KEY_ON, probe }, typed: '5', shown, expected: null },
      {
        ...{ type: 'conclude', own: { words: null, faults: ['wire.signal.open'] } },
        weighed: { evidence: [], ruledOut, proven: false },
      },
    ],
    null,
    { circuit, job: { ...emptyJob('stalls'), ...told } },
  );
  return recordForCustomer(recordOf(session, { seq: 3, hash: '0'.repeat(64) }));
}

it('a neighbour that only the circuit file has is not among what is not needed', () => {
  const repairs = ['throttle-position.replace', 'wire.throttle-feed', 'sensor.replace'];
  const notNeeded = (circuit: Circuit) =>
    recordRulingOut(repairs, circuit).conclusion?.ruledOut.map(({ words }) => words);
  const circuit = shipped('hall-module-fed');
  expect(notNeeded(circuit)).toEqual(['Replace the crankshaft position sensor.']);
  const named = fitNeighbours(circuit, [{ name: 'throttle position sensor', shares: ['feed'] }]);
  expect(notNeeded(named.circuit)).toEqual([
    'Replace the throttle position sensor.',
    'Repair or replace the throttle feed wire.',
    'Replace the crankshaft position sensor.',
  ]);
});

describe('the rates of the shop', () => {
  it('are an hour with its currency, and price lines', () => {
    expect(readRates('96 EUR; module repair 350; sensor plug 38,50')).toEqual({
      hour: 96,
      currency: 'EUR',
      lines: [
        { words: 'module repair', price: 350 },
        { words: 'sensor plug', price: 38.5 },
      ],
    });
    expect(readRates(' ')).toBeNull();
    for (const text of ['96', 'EUR 96', '96 EUR an hour', '96 EUR; plug', '-3 EUR'])
      expect(readRates(text)).toHaveProperty('fix');
  });

  const OPEN = { conclusion: null, work: [] };
  const rates = readRates('90 EUR; plug 38');
  if (!rates || 'fix' in rates) throw new Error('these are rates');

  it('price the minutes worked by the clock', () => {
    // by hand: 24 / 60 of 90
    expect(callPrices({ clock: 24.2, estimated: 40 }, rates, OPEN)).toEqual([
      'Testing up to the conclusion: 24 min by the clock, 36.00 EUR at 90.00 EUR an hour.',
      'plug, if it is needed: 38.00 EUR.',
    ]);
    expect(callPrices({ clock: 24, estimated: 40 }, null, OPEN)).toEqual([]);
  });

  it('quote only the lines of this repair, where their words are its own', () => {
    const lines = [
      { words: 'sensor connector', price: 38 },
      { words: 'engine control module', price: 900 },
      { words: 'Signal wires', price: 60 },
    ];
    const { conclusion } = record(begin().do(WIRE));
    const [, ...quoted] = callPrices(
      { clock: 24, estimated: 40 },
      { ...rates, lines },
      { conclusion, work: [] },
    );
    expect(conclusion?.repair).toContain('signal wire');
    expect(quoted).toEqual(['Signal wires, if it is needed: 60.00 EUR.']);
  });

  it('quote no part where nothing is to be repaired', () => {
    const { conclusion } = record(begin().do(WIRE));
    const nothing = { conclusion: { ...conclusion!, nothingFound: true as const }, work: [] };
    expect(callPrices({ clock: 24, estimated: 40 }, rates, nothing)).toHaveLength(1);
  });

  it.each([
    // by hand: 24 / 60 of 90 are 36; 1.5 h of 90 are 135
    [
      'by telephone, 1.5 h, plug',
      'testing 36.00 EUR, 1.5 h of work 135.00 EUR, plug 38.00 EUR; 209.00 EUR',
    ],
    ['up to 240 EUR; Plug', 'testing 36.00 EUR, plug 38.00 EUR; 74.00 EUR'],
    ['0,5 h', 'testing 36.00 EUR, 0.5 h of work 45.00 EUR; 81.00 EUR'],
    ['sensor plug', 'testing 36.00 EUR, sensor plug 50.00 EUR; 86.00 EUR'],
    ['by telephone, up to 240 EUR', null],
  ])('estimate what is named with the answer: %s', (words, sum) => {
    const more = { ...rates, lines: [...rates.lines, { words: 'sensor plug', price: 50 }] };
    const said = begin().do(WIRE, { ...YES, words });
    const [, ...lines] = callPrices({ clock: 24, estimated: 40 }, more, record(said));
    if (sum === null) expect(lines).toHaveLength(2);
    else expect(lines).toEqual([`Estimate: ${sum} in all.`]);
  });

  it('say where minutes are estimated, and price none that nobody knows', () => {
    expect(callPrices({ clock: null, estimated: 24 }, rates, OPEN)[0]).toBe(
      'Testing up to the conclusion: 24 min, estimated at standard times, 36.00 EUR at 90.00 EUR an hour.',
    );
    expect(callPrices({ clock: null, estimated: null }, rates, OPEN)[0]).toBe(
      'Work: 90.00 EUR an hour.',
    );
  });

  it('stand on the paper for the customer where the shop has set them, and on no class copy', () => {
    const told = begin().do(WIRE, YES);
    const prices = callPrices({ clock: 24, estimated: 40 }, rates, record(told));
    const priced = { ...record(told), prices };
    const sheet = exportRecord(priced, 'markdown', 'customer');
    expect(sheet).toContain('24 min by the clock, 36.00 EUR at 90.00 EUR an hour');
    expect(sheet).toContain('plug, if it is needed: 38.00 EUR');
    expect(sheet).toContain('up to 240 EUR');
    const shop = exportRecord({ ...priced, minutes: 31.5 }, 'markdown', 'shop');
    expect(shop).toContain('plug, if it is needed: 38.00 EUR');
    // Two kinds of minutes on one paper, each by its name.
    expect(shop).toContain('24 min by the clock');
    expect(shop).toContain('- **Standard time:** 32 min for the tests up to the conclusion');
    expect(paper(told, 'customer')).not.toContain('an hour');
    expect(JSON.stringify(recordForClass(priced))).not.toContain('EUR an hour');
  });
});

describe('what the customer said about the work', () => {
  const open = begin().do(WIRE);

  it('is an event, and the last one counts', () => {
    const said = open.do({ ...YES, answer: 'declined' }, YES);
    expect(said.session.work).toMatchObject([
      { answer: 'declined' },
      { answer: 'authorised', by: 'R. Example', words: 'by telephone, up to 240 EUR' },
    ]);
    expect(said.session.status).toBe('concluded');
    expect(paper(said, 'customer')).toMatch(
      /authorised by R\. Example; by telephone, up to 240 EUR/,
    );
    expect(paper(said, 'customer')).not.toContain('Signature');
    expect(paper(said, 'shop')).toMatch(/declined by R\. Example/);
    expect(paper(open, 'customer')).toContain('Signature');
    const noted = said.do({ type: 'add-note', text: 'R. Example will come at five.' });
    expect(JSON.stringify(recordForClass(record(noted)))).not.toContain('R. Example');
  });

  it('is asked anew where the conclusion is another one', () => {
    const other = begin().do(
      { type: 'acknowledge-cautions' },
      { type: 'record-reading', typed: '0', value: 0 },
      WIRE,
      YES,
      { type: 'go-back' },
    );
    expect(other.session.work).toEqual([]);
  });

  it('is refused before a conclusion, of a closed record, on a drill, and of nobody', () => {
    const code = (walk: Pick<Walk, 'session'>, command: Command) => {
      const decision = decide(walk.session, command, when(1));
      return decision.ok ? null : decision.refusal.code;
    };
    expect(code(begin(), YES)).toBe('not-concluded');
    expect(code(finishedWalk(), YES)).toBe('not-open');
    expect(code(drillWalk(), YES)).toBe('no-customer');
    expect(code(open, { ...YES, by: ' ' })).toBe('empty-text');
  });

  it('is typed as one line', () => {
    expect(readWork('Authorized by R. Example, by telephone, up to 240 EUR')).toEqual({
      type: 'answer-work',
      answer: 'authorised',
      by: 'R. Example',
      words: 'by telephone, up to 240 EUR',
    });
    expect(readWork('declined: R. Example')).toMatchObject({
      answer: 'declined',
      by: 'R. Example',
    });
    expect(readWork('yes')).toHaveProperty('fix');
    expect(readWork('authorised up to 240 EUR')).toMatchObject({
      words: 'it does not say by whom',
    });
    expect(readWork('authorised by Upton & Sons')).toMatchObject({ by: 'Upton & Sons' });
    expect(readWork('authorised by')).toHaveProperty('fix');
  });
});

it('a caution for who does the repair is not read out', () => {
  const wheel = shipped('hall-module-fed').faults.find(({ id }) => id === 'target.displaced')!;
  const repair = 'Check the wheel. WARNING: Before you turn it: ignition off. CAUTION: Stop.';
  const faults = shipped('hall-module-fed').faults.map((fault) =>
    fault === wheel ? { ...fault, repairWords: repair } : fault,
  );
  const session = sessionAfter(
    [{ type: 'conclude', own: { words: null, faults: ['target.displaced'] }, weighed: NO_PROOF }],
    null,
    { circuit: { ...shipped('hall-module-fed'), faults } },
  );
  const { call } = recordOf(session, { seq: 2, hash: '0'.repeat(64) });
  expect(call[1]).toBe('What it needs: check the wheel.');
});
const NO_PROOF = { evidence: [], ruledOut: [], proven: false };

it('swapped wires are not needed only where somebody worked on the car', () => {
  const repairs = ['leads.swap', 'sensor.replace'];
  const notNeeded = (told: Partial<Job>) => {
    const made = recordRulingOut(repairs, shipped('hall-module-fed'), told);
    const lines = made.conclusion?.ruledOut.map(({ words }) => words) ?? [];
    return [...lines, ...made.call].filter((words) => words.includes('swapped wires')).length;
  };
  expect(notNeeded({})).toBe(0);
  expect(notNeeded({ circumstances: { recentWork: 'nothing' } })).toBe(0);
  expect(notNeeded({ circumstances: { recentWork: 'clutch' } })).toBeGreaterThan(0);
  const replaced = { words: 'sensor replaced', part: 'sensor', outcome: '' };
  expect(notNeeded({ earlierRepairs: [replaced] })).toBeGreaterThan(0);
});
