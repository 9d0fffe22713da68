/** A conclusion in words, of shipped procedures. */
import { beforeAll, expect, it } from 'vitest';
import { presentConclusion } from '../../../src/session/session.ts';
import type { OpenedSession } from '../../../src/ui/app-services.ts';
import { conclusionParagraphs, fromTree } from '../../../src/ui/screens/conclusion-words.ts';
import { type SetAnswers, type Shop, shopFor, walkOn } from '../../session/walk-library.ts';

let shop: Shop;
beforeAll(() => {
  shop = shopFor('hall-no-signal');
});

function textAfter(set: SetAnswers): string {
  const session = walkOn(shop, shop.begun, 'sensor.dead', set);
  const opened = { bind: (text: string) => text } as OpenedSession;
  const tree = presentConclusion(session)!;
  return conclusionParagraphs(opened, session, fromTree(session, tree), null)
    .map(({ text }) => text)
    .join('\n');
}

it('says which steps could not be done before it says how sure it is', () => {
  const gaps = textAfter({ 'level/at-plug': 'cannot', 'spare/fitted': 'cannot' });
  expect(gaps).toContain(
    '! Not everything could be tested, so what was not tested may still be at fault. Could not be done: Pull the signal down at the connector; Known-good sensor fitted.',
  );
  expect(gaps).not.toContain('were tested and are good');
  expect(textAfter({})).not.toContain('Not everything could be tested');
});
