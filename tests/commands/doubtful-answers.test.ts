import { expect, it } from 'vitest';
import { runAnswers } from '../../src/commands/session/run-unattended.ts';
import { loadAnswers } from '../../src/session/answers-file.ts';
import { fakeSession } from '../ui/screens/fake-services.ts';

it('a reading with the leads swapped is taken from an answers file, with a warning at its place', async () => {
  const { opened, driver } = fakeSession();
  const { value } = loadAnswers('answers:\n  - acknowledge: true\n  - reading: -4.97\n', 'a.yaml');
  const warnings: string[] = [];
  expect(await runAnswers(opened, value!, (words) => void warnings.push(words))).toBeNull();
  expect(warnings).toHaveLength(1);
  expect(warnings[0]).toContain('a.yaml:3:');
  expect(warnings[0]).toContain('the leads look swapped');
  expect(driver.events().at(-1)).toMatchObject({ type: 'reading-recorded', typed: '-4.97' });
});
