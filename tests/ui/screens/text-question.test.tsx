/** A question answered with a line of text calls nothing wrong before anything was typed. */
import { expect, it } from 'vitest';
import { TextQuestion } from '../../../src/ui/screens/text-question.tsx';
import { openTestScreen } from '../in-process.ts';

it('an empty field is no mistake, a typed one is judged', async () => {
  const nothing = () => {};
  const screen = await openTestScreen(
    <TextQuestion
      title="Drive"
      question="How was it?"
      message={null}
      check={(text) => ({ ok: false, words: `"${text}" is no drive` })}
      onAnswer={nothing}
      onClose={nothing}
    />,
    { columns: 60, rows: 16 },
  );
  expect(await screen.text()).not.toContain('is no drive');
  await screen.send('walk');
  expect(await screen.text()).toContain('! "walk" is no drive');
  await screen.send('\r');
  expect(await screen.text()).toContain('! "walk" is no drive');
  await screen.send('\x15\r');
  expect(await screen.text()).toContain('! Nothing is typed yet');
});
