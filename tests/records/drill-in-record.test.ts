/** What the record of a drill says before the answer is known, and after. */
import { describe, expect, it } from 'vitest';
import { recordForClass } from '../../src/records/record-for-class.ts';
import { recordOf } from '../../src/records/session-record.ts';
import { transcriptOf } from '../../src/records/transcript.ts';
import { drillWalk, openDrillWalk } from './sample-drill.ts';
import { fileOf, finishedWalk, type Walk } from './sample-session.ts';

const recordFrom = (walk: Walk) => recordOf(walk.session, fileOf(walk).head);

it('a session on another vehicle is none', () => {
  expect(recordFrom(finishedWalk()).drill).toBeNull();
});

describe('while the drill goes on', () => {
  const record = recordFrom(openDrillWalk());

  it('tells level, assignment and seal, and no answer', () => {
    expect(record).toMatchObject({ vehicle: 'drill', status: 'open', conclusion: null });
    expect(record.drill).toMatchObject({
      level: 'blind',
      assignment: { name: 'spring term', part: 2, limitMinutes: 30 },
      answer: null,
      debrief: null,
    });
  });

  it('tells what the bench stopped and which cautions were passed over', () => {
    expect(record.drill?.stopped).toMatchObject([
      {
        event: 5,
        hazard: 'ohms-on-live',
        words: 'an ohmmeter on a live circuit or on electronics',
        where: 'sensor feed, pin 1 (RD/BU) to battery negative',
      },
    ]);
    expect(record.drill?.passedOver).toMatchObject([
      { event: 6, cautions: ['The engine turns: keep hands and hair away.'] },
    ]);
    const text = transcriptOf(record);
    expect(text).toContain('# Drill record');
    expect(text).toContain('Stopped by the bench as dangerous');
    expect(text).toContain('passed over: The engine turns: keep hands and hair away.');
  });

  it('on a level that hides what is good, says nothing of it, at steps and at tests', () => {
    // Not by what other rules said of it either.
    const otherwise = { seq: 3, rules: 1, of: 'reading', was: 'low', today: 'good' } as const;
    const walk = openDrillWalk();
    const hidden = recordOf(walk.session, fileOf(walk).head, [otherwise]);
    expect(hidden.lines[0]).toMatchObject({ event: 3 });
    expect(hidden.lines[0]).not.toHaveProperty('today');
    for (const made of [...record.lines, ...record.tests])
      expect(made).toMatchObject({
        expected: '',
        expectedRange: null,
        verdict: null,
        judgement: '',
      });
    // The words of an outcome are a verdict too.
    expect(record.lines[0]?.outcome).toBe('');
    expect(record.lines[0]?.found).toBe('4.97 V');
    expect(record.tests[0]?.found).toBe('20 mV');
  });

  it('on the other levels says it', () => {
    const shown = recordFrom(openDrillWalk({ level: 'unnamed' }));
    expect(shown.lines[0]).toMatchObject({ expected: '4.75 to 5.25 V', verdict: 'good' });
    expect(shown.lines[0]?.outcome).not.toBe('');
    expect(shown.tests[0]).toMatchObject({ expected: '4.7 to 5.2 V', verdict: 'low' });
  });
});

describe('once the answer is known', () => {
  const record = recordFrom(drillWalk());

  it('tells what was in the vehicle beside the diagnosis, and what it earned', () => {
    expect(record).toMatchObject({
      status: 'closed',
      cause: 'The signal wire is broken',
      correction: 'Repair or replace the signal wire.',
    });
    expect(record.drill?.answer).toMatchObject({
      faults: [{ id: 'wire.ground.open', words: 'the ground wire is broken' }],
      repairs: ['Repair or replace the ground wire.'],
      right: false,
      points: 4,
      minutes: 12.5,
      yardstickMinutes: 6,
    });
    const text = transcriptOf(record);
    expect(text).toContain('NOT RIGHT, 4 of 100 points');
    expect(text).toContain('diagnosis 0 of 40; safety 4 of 15');
    expect(text).toContain('12.5, the best plan 6');
    expect(text).not.toContain('no test after the repair has closed this session');
  });

  it('shows what is good on every level', () => {
    expect(record.lines[0]).toMatchObject({ expected: '4.75 to 5.25 V', verdict: 'good' });
  });

  it('a drill that was given up says so', () => {
    const walk = openDrillWalk().do({ type: 'conclude', own: { words: null, faults: [] } });
    expect(recordFrom(walk)).toMatchObject({
      cause: 'Given up without a diagnosis',
      correction: '',
      conclusion: { faults: [] },
    });
  });
});

it('a copy for a class names no student, not in the assignment either', () => {
  const assignment = { name: 'for Ilvy Tarrant', part: 1, limitMinutes: null };
  const copy = recordForClass(recordFrom(drillWalk({ assignment })));
  expect(JSON.stringify(copy)).not.toContain('Tarrant');
  expect(copy.drill).toMatchObject({
    assignment: { name: 'for [removed]', part: 1, limitMinutes: null },
    answer: { points: 4, at: '' },
  });
});
