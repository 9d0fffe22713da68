/** The debrief in the record of a drill that was walked on the program's own bench. */
import { readFileSync } from 'node:fs';
import AjvModule from 'ajv';
import { expect, it } from 'vitest';
import { debriefLines } from '../../src/drill/drill-words.ts';
import { debriefFrom, withDebrief } from '../../src/records/drill-record.ts';
import { recordForClass } from '../../src/records/record-for-class.ts';
import { recordJson } from '../../src/records/record-json.ts';
import { recordOf } from '../../src/records/session-record.ts';
import { transcriptOf } from '../../src/records/transcript.ts';
import { measure, newDrill, partsChanger } from '../drill/students.ts';

const begun = newDrill(41);
partsChanger(begun);
const session = begun.driver.session();
const bare = recordOf(session, begun.driver.head());
const debrief = debriefFrom(session);
const record = withDebrief(bare, debrief);

it('is the one that the drill itself gave', () => {
  expect(record.drill?.debrief?.lines).toEqual(debriefLines(begun.drill.debrief()!));
  expect(record.drill?.answer?.points).toBe(debrief?.points);
});

it('counts the minutes of the best plan, and names nothing as like the truth that is the truth itself', () => {
  const { yardstick, facts, alike, repairs } = debrief!;
  const minutes = yardstick.steps.map((step) => step.minutes);
  expect(yardstick.minutes).toBeCloseTo(minutes.reduce((sum, one) => sum + one));
  expect(facts.yardstickMinutes).toBeGreaterThan(0);
  expect(alike).toEqual([]);
  expect(repairs).toHaveLength(1);
});

it('says how many times more likely a reading made it: to a tenth below ten, whole above', () => {
  const [note] = debrief!.readings;
  const said = (ratio: number) =>
    debriefLines({
      ...debrief!,
      readings: [{ ...note!, toldNothing: false, proves: false, ratio }],
    })
      .find((line) => line.startsWith(' 1. '))
      ?.match(/\S+(?: \S+)? times|moved other suspects/)?.[0];
  expect([3.14, 12.3, 1200, 1 / 3.14, 1].map(said)).toEqual([
    'repair 3.1 times',
    'repair 12 times',
    'over 999 times',
    'point 3.1 times',
    'moved other suspects',
  ]);
});

it('names each reading by its event', () => {
  const events = record.drill?.debrief?.readings.map(({ event }) => session.events[event - 1]);
  expect(events?.map((event) => event?.type)).toEqual(session.tests.map(({ type }) => type));
  expect(events).toHaveLength(1);
});

it('stands in the transcript line by line, and in no record that nobody asked for it', () => {
  const text = transcriptOf(record);
  expect(text).toContain('## Debrief');
  expect(text).toContain('NOT RIGHT.');
  expect(text).toContain('Next: ');
  expect(transcriptOf(bare)).not.toContain('## Debrief');
});

it('as JSON fits the schema, for a class as well', () => {
  const schema: object = JSON.parse(readFileSync('docs/schema/record.schema.json', 'utf8'));
  const ajv = new AjvModule.default({ strict: true, allowUnionTypes: true });
  const fits = ajv.compile(schema);
  for (const one of [record, recordForClass(record)])
    expect(fits(JSON.parse(recordJson(one))), ajv.errorsText(fits.errors)).toBe(true);
});

it('there is none before the answer is known, and nothing of the answer', () => {
  const open = newDrill(42);
  const { opened } = open.driver.session();
  const { faults } = opened.circuit!;
  const other = faults.find(({ effect }) => effect.kind === 'wire-open')!;
  measure(open, {
    setup: { state: 'key-on', unplugged: [], bridges: [], sensor: 'fitted', target: 'still' },
    probe: { kind: 'inspect', of: other.subject[0]! },
  });
  const now = open.driver.session();
  expect(debriefFrom(now)).toBeNull();
  const text = recordJson(withDebrief(recordOf(now, open.driver.head()), debriefFrom(now)));
  expect(text).toContain('"debrief": null');
  const hidden = faults.filter(({ id }) => open.world.vehicle.hidden.answer.faults.includes(id));
  expect(hidden).toHaveLength(1);
  for (const { id, words, repairWords } of hidden)
    for (const secret of [id, words, repairWords]) expect(text).not.toContain(secret);
});
