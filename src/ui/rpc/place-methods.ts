/** Location of a short along a wire: how it is measured, and what was read. */

import { pendingTestCautions, testCautionsInShort } from '../../session/pending-cautions.ts';
import { mustBeOff, shortFlaw, testOfShort } from '../../session/place-short.ts';
import { readDrops, stretchOf } from '../../session/read-short.ts';
import { shortSteps, shortsOf } from '../../session/short-steps.ts';
import type { OpenedSession } from '../app-services.ts';
import { adviceOf } from '../screens/pages-state.ts';
import type { CallFailure, Outcome } from './json-rpc.ts';
import type { Methods, Params } from './method.ts';
import { performCall, refusedCall } from './refused.ts';
import { cautionViews, readViews } from './state-view.ts';

export const PLACE_METHODS: Methods<'prepare-place' | 'place'> = {
  'prepare-place': { where: 'session', run: prepare },
  place: { where: 'session', run: place },
};

function noCircuit(): CallFailure {
  return refusedCall(
    'no-circuit',
    'this session has no circuit model, so there is no wire to measure along',
  );
}

function prepare(
  opened: OpenedSession,
  { wire, touches, from, to }: Params<'prepare-place'> = {},
): Outcome {
  const session = opened.driver.session();
  const { circuit } = session.opened;
  if (!circuit) return noCircuit();
  const rows = adviceOf(opened)?.suspects(session).rows ?? [];
  const shorts = shortsOf(circuit, rows).map((one) => ({ wire: one.wire, touches: one.touches }));
  if (wire === undefined || touches === undefined) return { shorts, stretch: null };
  const stretch = stretchOf(circuit, { wire, touches, from, to });
  const flaw = shortFlaw(circuit, stretch, null);
  if (flaw) return refusedCall('no-place', flaw[0], flaw[1]);
  const test = testOfShort(circuit, stretch, 'from');
  return {
    shorts,
    stretch,
    unplug: mustBeOff(circuit, stretch),
    steps: shortSteps(session, stretch),
    test,
    cautions: cautionViews(opened, pendingTestCautions(session, test)),
    readEarlier: readViews(opened, testCautionsInShort(session, test)),
  };
}

function place(
  opened: OpenedSession,
  { wire, touches, from, to, drops: said, unplugged }: Params<'place'>,
): Outcome {
  const session = opened.driver.session();
  const { circuit } = session.opened;
  if (!circuit) return noCircuit();
  const stretch = stretchOf(circuit, { wire, touches, from, to });
  const flaw = shortFlaw(circuit, stretch, null);
  if (flaw) return refusedCall('no-place', flaw[0], flaw[1]);
  const read = readDrops(said);
  if ('fix' in read) return refusedCall('not-two-drops', read.words, read.fix);
  const { typed, ...drops } = read;
  return performCall(
    opened,
    { type: 'place-short', stretch, unplugged, typed, drops },
    pendingTestCautions(session, testOfShort(circuit, stretch, 'from')),
  );
}
