/** What a neighbour on this car speaks for and against, by the circuit; and that a comparison with it comes first. */
import { describe, expect, it } from 'vitest';
import { createModel } from '../../src/circuit/model.ts';
import { tellingNeighbours } from '../../src/circuit/telling-neighbours.ts';
import { emptyJob, type Job, type ShareSaid } from '../../src/procedure/job.ts';
import { fitNeighbours, sharesSaid, sharesText } from '../../src/procedure/read-neighbours.ts';
import { createAdvisor } from '../../src/session/create-advisor.ts';
import { notRuledOut } from '../../src/session/not-ruled-out.ts';
import { toldFactor } from '../../src/session/told.ts';
import { takesAlong } from '../../src/session/told-neighbours.ts';
import { METER, shipped } from '../circuit/shipped.ts';
import { sessionAfter } from './sample-tree.ts';

const OIL = 'oil pressure sensor';
const jobWith = (...shares: readonly ShareSaid[]): Job => ({ ...emptyJob('stalls'), shares });
const fitted = (name: string, job: Job) => {
  const { circuit, problem } = fitNeighbours(shipped(name), job.shares ?? []);
  expect(problem).toBeNull();
  return createModel(tellingNeighbours(shipped(name), circuit), {
    ...{ samples: 4, seed: 1, meter: METER },
  });
};
const factorOf = (name: string, job: Job) => {
  const model = fitted(name, job);
  return toldFactor(model.circuit, job, takesAlong(model));
};

describe('a neighbour on the same feed', () => {
  it('that works speaks against what would make it fail too, and not against the branch of the sensor', () => {
    const job = jobWith({ name: OIL, shares: ['feed', 'ground'], works: 'works' });
    const factor = factorOf('hall-relay-fed', job);
    // by hand, of the drawing: fuse, relay, trunks and any short on the feed are of both; the sensor's own branch is not
    const shared = [
      'fuse.blown',
      'relay.contact-open',
      'wire.feed-trunk.open',
      'wire.ground-trunk.open',
    ];
    for (const id of [...shared, 'wire.feed.short-to-ground', 'oil-pressure-sensor.shorted'])
      expect([id, factor(id)]).toEqual([id, 0.2]);
    for (const id of ['wire.feed.open', 'wire.ground.open', 'wire.signal.open', 'sensor.dead'])
      expect([id, factor(id)]).toEqual([id, 1]);
  });

  it('that fails too speaks for them', () => {
    const job = jobWith({ name: OIL, shares: ['reference'], works: 'fails' });
    const factor = factorOf('hall-module-fed', job);
    expect(factor('module.reference.dead')).toBe(5);
    expect(factor('oil-pressure-sensor.shorted')).toBe(5);
    expect(factor('wire.feed.open')).toBe(1);
  });

  it('of which nobody knows whether it works moves nothing of them', () => {
    for (const works of [undefined, 'not-known'] as const) {
      const job = jobWith({ name: OIL, shares: ['feed'], ...(works && { works }) });
      expect(factorOf('hall-module-fed', job)('module.reference.dead')).toBe(1);
    }
  });

  it('comes in as a suspect, and what the file has and nobody named goes out', () => {
    const factor = factorOf('hall-module-fed', jobWith({ name: OIL, shares: ['feed'] }));
    expect(factor('throttle-position.shorted')).toBe(0.1);
    expect(factor('wire.throttle-feed.short-to-ground')).toBe(0.1);
    expect(factor('oil-pressure-sensor.shorted')).toBe(1);
    expect(factorOf('hall-module-fed', jobWith())('throttle-position.shorted')).toBe(0.1);
    const named = jobWith({ name: 'Throttle position sensor', shares: ['feed'] });
    expect(factorOf('hall-module-fed', named)('throttle-position.shorted')).toBe(1);
  });

  it('in the same plug speaks of the contacts beyond the plug of the sensor', () => {
    const job = jobWith({ name: OIL, shares: ['plug'], works: 'fails' });
    const factor = factorOf('hall-module-fed', job);
    expect(factor('contact.module.signal.open')).toBe(2);
    expect(factor('contact.sensor.signal.open')).toBe(1);
  });
});

it('the comparison that tells most is proposed first, until something was read at a neighbour', () => {
  const job = jobWith({ name: OIL, shares: ['feed'], works: 'works' });
  // the circuit with the fewest suspects
  const model = fitted('current-two-wire', job);
  const begun = sessionAfter([], null, { job, circuit: model.circuit });
  const advisor = createAdvisor(model, begun.opened);
  const firstOf = (session: typeof begun) => advisor.nextTests(session)[0];
  const first = firstOf(begun);
  expect(JSON.stringify(first?.test.probe)).toContain('oil-pressure-sensor.feed');
  expect(first?.why).toMatch(/^what shares its wiring is the reference/);
  const shown = { kind: 'number', value: 5, unit: 'V' } as const;
  const read = sessionAfter(
    [{ type: 'record-test', test: first!.test, typed: '5', shown, expected: null }],
    null,
    { job, circuit: model.circuit },
  );
  expect(firstOf(read)?.why).not.toMatch(/^what shares/);
});

describe('the line of the sheet', () => {
  it.each<[string, readonly ShareSaid[] | undefined]>([
    ['', undefined],
    ['nothing', []],
    ['oil sensor: feed, ground', [{ name: 'oil sensor', shares: ['feed', 'ground'] }]],
    [
      'oil sensor: feed, works, how: its value moves, and no code',
      [
        {
          name: 'oil sensor',
          shares: ['feed'],
          works: 'works',
          how: 'its value moves, and no code',
        },
      ],
    ],
    [
      'cam sensor 2: reference, plug, fails, sister 4.98 V; ABS ring: ground',
      [
        { name: 'cam sensor 2', shares: ['reference', 'plug'], works: 'fails', sister: '4.98 V' },
        { name: 'ABS ring', shares: ['ground'] },
      ],
    ],
  ])('"%s" is read, and written again', (text, said) => {
    expect(sharesSaid(text)).toEqual(said);
    expect(sharesSaid(sharesText(said))).toEqual(said);
  });

  it.each<[string, RegExp]>([
    ['oil sensor', /does not say what "oil sensor" shares/],
    ['oil sensor: fead', /"fead" is not something.*feed/],
    ['oil sensor: feed; Oil sensor: ground', /there twice/],
    ['module: feed', /has the same name as something else/],
    ['oil sensor: feed, sister 3 V', /no resistor of this circuit leads/],
    ['oil sensor: feed, sister low', /"low" is not a voltage/],
  ])('"%s" is told', (text, words) => {
    const { problem } = fitNeighbours(shipped('hall-module-fed'), sharesSaid(text) ?? []);
    expect(`${problem?.words}; ${problem?.fix}`).toMatch(words);
  });

  it('a sensor without a feed or a ground of its own shares none', () => {
    const words = (name: string, text: string) =>
      fitNeighbours(shipped(name), sharesSaid(text) ?? []).problem?.words;
    expect(words('reluctor-two-wire', 'oil sensor: feed')).toMatch(/has no feed/);
    expect(words('current-two-wire', 'oil sensor: ground')).toMatch(/has no ground/);
  });
});

describe('what stays possible beside a conclusion', () => {
  const left = (text: string | null) => {
    const shares = text === null ? undefined : (sharesSaid(text) ?? []);
    const { circuit } = fitNeighbours(shipped('hall-module-fed'), shares ?? []);
    return notRuledOut(circuit, ['wire.signal.open'], [], shares === undefined ? {} : { shares });
  };

  it("names the file's neighbour only where nobody told what shares the feed", () => {
    const throttle = 'Replace the throttle position sensor.';
    expect(left(null)).toContain(throttle);
    expect(left('oil pressure sensor: ground, works')).toContain(throttle);
    expect(left('nothing')).not.toContain(throttle);
    const told = left('exhaust cam sensor: reference, plug, works');
    expect(told).toContain('Replace the exhaust cam sensor.');
    expect(told).not.toContain(throttle);
    expect(told).not.toContain('Repair or replace the throttle feed wire.');
  });
});
