/** Pins and colours are asked for what this car has, by the name of where its sensor sits. */
import { expect, test } from 'vitest';
import { emptyJob } from '../../../src/procedure/job.ts';
import { replaceablesOf } from '../../../src/procedure/read-repair.ts';
import { harnessTerminals } from '../../../src/procedure/read-terminal.ts';
import type { Form } from '../../../src/ui/parts/form-state.ts';
import { textField } from '../../../src/ui/parts/text-field-state.ts';
import { jobOf, jobSheet } from '../../../src/ui/screens/job-sheet-state.ts';
import { withPins } from '../../../src/ui/screens/pin-fields.ts';
import { shipped } from '../../circuit/shipped.ts';

const HALL = shipped('hall-module-fed');
const terminals = harnessTerminals(HALL);
const JOB = emptyJob('x');
const typed = (sheet: Form, texts: Readonly<Record<string, string>>): Form =>
  withPins(
    {
      ...sheet,
      fields: sheet.fields.map((field) =>
        field.kind === 'text' && texts[field.key] !== undefined
          ? { ...field, field: textField(texts[field.key]!) }
          : field,
      ),
    },
    terminals,
    HALL,
    JOB,
  );
const labels = (sheet: Form) =>
  sheet.fields.filter(({ key }) => key.startsWith('terminal ')).map(({ label }) => label);

test.each([
  ['a code', { codes: 'P0340' }, 'bank 1 camshaft A'],
  ['the position', { position: 'exhaust camshaft bank 2' }, 'bank 2 exhaust camshaft'],
])('%s puts the sensor at its shaft', (_, texts, place) => {
  const sheet = typed(jobSheet(JOB, terminals, HALL), texts);
  expect(labels(sheet)).toContain(`feed at the ${place} position sensor`);
  expect(labels(sheet).join()).not.toContain('crankshaft');
});

test('pins of a neighbour are asked once it is named, and not before', () => {
  const sheet = jobSheet(JOB, terminals, HALL);
  const isAsked = (one: Form) => labels(one).join().includes('throttle');
  expect(labels(sheet)).toContain('feed at the crankshaft position sensor');
  expect(isAsked(sheet)).toBe(false);
  expect(isAsked(typed(sheet, { shares: 'nothing' }))).toBe(false);
  const named = typed(sheet, { shares: 'throttle position sensor: feed' });
  expect(isAsked(named)).toBe(true);
  expect(isAsked(typed(named, { shares: 'oil pressure sensor: feed' }))).toBe(false);
});

test('what a ready-made job says of a neighbour stays', () => {
  const job = { ...JOB, terminals: { 'throttle-position.feed': { pin: '1', colour: 'RD' } } };
  const sheet = jobSheet(job, terminals, HALL);
  expect(labels(sheet)).toContain('feed at the throttle position sensor');
  expect(jobOf(sheet, job, replaceablesOf(HALL), HALL).terminals).toEqual(job.terminals);
});
