/** A finished session with a text of the caller's choice in every field that holds one. */
import type { MeasureStep, Procedure, Step } from '../../src/procedure/procedure.ts';
import { KEY_ON } from '../circuit/setup.ts';
import { begin, CIRCUIT, JOB, PROCEDURE, type Walk } from './sample-session.ts';

/** `text(name)` gives the words of a field; typed readings too. */
export function fullWalk(text: (field: string) => string): Walk {
  const start = begin({
    id: text('id'),
    program: text('program'),
    person: text('person'),
    shop: text('shop'),
    instruments: [text('instrument')],
    meter: { ...begin().session.meter, name: text('meter') },
    procedure: procedure(text),
    circuit: {
      ...CIRCUIT,
      title: text('circuit'),
      terminals: CIRCUIT.terminals.map((one) =>
        one.id === 'sensor.feed' ? { ...one, words: text('terminal') } : one,
      ),
    },
    job: {
      ...JOB,
      name: text('job name'),
      complaint: text('complaint'),
      codes: [text('code')],
      vehicle: {
        words: text('vehicle'),
        vin: text('vin'),
        plate: text('plate'),
        odometer: text('odometer'),
        drive: 'combustion',
      },
      order: text('order'),
      customer: text('customer'),
      earlierRepairs: [{ words: text('earlier repair'), part: text('earlier part') }],
      circumstances: {
        failsWithIt: text('fails with it'),
        recentWork: text('recent work'),
        seen: text('seen'),
        freezeFrame: [text('freeze frame')],
      },
      terminals: { 'sensor.feed': { pin: text('pin'), colour: text('colour') } },
      notes: text('job notes'),
    },
  });
  return start.do(
    { type: 'acknowledge-cautions', readBy: text('read by') },
    { type: 'record-reading', typed: text('typed'), value: 4.97 },
    { type: 'cannot-do', reason: text('reason') },
    { type: 'choose-outcome', outcome: 'yes' },
    { type: 'mark-done' },
    { type: 'record-reading', typed: '-0.42', value: -0.42 },
    { type: 'add-note', text: text('note') },
    {
      type: 'record-test',
      test: {
        setup: KEY_ON,
        probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
      },
      typed: text('test typed'),
      shown: { kind: 'number', value: -1.5, unit: 'V' },
      expected: null,
    },
    { type: 'record-reading', typed: 'nothing', value: 0 },
    {
      type: 'conclude',
      weighed: {
        proven: true,
        // As a file of an early version holds them: what is made when shown holds no text of a stranger.
        evidence: [
          {
            counted: true,
            said: {
              test: text('evidence test'),
              where: text('evidence where'),
              found: text('evidence found'),
              pointsTo: text('evidence points'),
            },
          },
        ],
        ruledOut: [{ said: { words: text('ruled out'), by: text('ruled out by') } }],
      },
    },
    {
      type: 'record-retest',
      step: 'speed',
      typed: text('retest typed'),
      value: 810,
      look: null,
      outcome: 'some',
    },
    // The light was not looked at again.
    { type: 'close', verdict: 'no-retest' },
  );
}

function procedure(text: (field: string) => string): Procedure {
  const steps: Record<string, Step> = { ...PROCEDURE.steps };
  const feed = steps['feed'] as MeasureStep;
  const [caution] = feed.cautions;
  steps['feed'] = {
    ...feed,
    title: text('step title'),
    cautions: [{ ...caution!, say: text('caution') }],
    outcomes: feed.outcomes.map((one) =>
      one.name === 'good' ? { ...one, words: text('outcome') } : one,
    ),
  };
  steps['signal-open'] = {
    id: 'signal-open',
    kind: 'conclude',
    title: text('conclusion'),
    faults: [text('fault')],
    say: 'Show it.',
    repair: text('repair'),
    customer: text('customer words'),
    retest: ['speed', 'light'],
  };
  return { ...PROCEDURE, title: text('procedure'), steps };
}
