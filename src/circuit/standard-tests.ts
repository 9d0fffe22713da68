/** The sensible tests of a circuit, by rule from its structure: what a technician would think of, and may safely do. */
import type { Circuit } from './circuit.ts';
import { feedTests, fuseTests, groundTests, relayTests, supplyTests } from './feed-tests.ts';
import { jointTests } from './joint-tests.ts';
import { refuseTest } from './refuse-test.ts';
import {
  besideNeighbour,
  continuityTests,
  inspections,
  neighbourTests,
  ownTests,
  spareTests,
} from './sensor-tests.ts';
import {
  biasTests,
  bypassServing,
  injectionTests,
  lentTests,
  patternTests,
  pullFor,
  signalTests,
} from './signal-tests.ts';
import { TestList, type TestOption } from './test-list.ts';

export type { TestFamily, TestOption } from './test-list.ts';

/** All tests that the rules give and the model does not refuse, in the order a technician would think of them. */
export function standardTests(circuit: Circuit): TestOption[] {
  const list = new TestList(circuit);
  const feeds = list.leads.filter(
    ({ wire }) => wire.role === 'reference' || wire.role === 'supply',
  );
  const grounds = list.leads.filter(({ wire }) => wire.role === 'ground');
  const signals = list.leads.filter(({ wire }) => wire.role === 'signal');
  feeds.forEach((feed, index) => {
    feedTests(list, feed, grounds[index] ?? grounds[0]);
  });
  for (const ground of grounds) groundTests(list, ground);
  for (const part of list.circuit.parts) {
    supplyTests(list, part);
    fuseTests(list, part);
    if (part.kind === 'relay') relayTests(list, part);
  }
  for (const signal of signals) signalTests(list, signal);
  patternTests(list, signals);
  for (const lead of [...feeds, ...grounds]) bypassServing(list, lead, signals);
  signals.forEach((signal, index) => {
    injectionTests(list, signal, feeds[index] ?? feeds[0]);
    lentTests(list, signal, feeds[index] ?? feeds[0]);
  });
  for (const signal of signals) biasTests(list, signal, signals);
  for (const lead of list.leads)
    jointTests(list, lead, pullFor(list, lead, feeds[signals.indexOf(lead)] ?? feeds[0]));
  spareTests(list);
  for (const lead of list.leads) continuityTests(list, lead);
  ownTests(list);
  for (const part of list.circuit.parts)
    if (part.kind === 'neighbour') {
      neighbourTests(list, part, feeds);
      if (part.told) besideNeighbour(list, part, feeds, grounds[0]);
    }
  inspections(list);
  return list.options.filter(({ test }) => refuseTest(circuit, test) === null);
}
