/** Cautions that an author asks for by name: before a step, before each step of a sub-procedure, with a repair. */
import { expect, test } from 'vitest';
import { loadCautions } from '../../src/procedure/cautions.ts';
import { isTask } from '../../src/procedure/procedure.ts';
import { link, tree } from '../proof/library.ts';

const text = (used: string, concluded: string) => `procedure: wet-wheel
title: Work on a wheel
circuit: current-two-wire
start: look
steps:
  look:
    use: look-at-wheel
    cautions: [${used}]
    with: { wheel: the ring }
    results: { sound: done, faulty: worn }
  worn:
    cautions: [${concluded}]
    conclude: [target.damaged]
    say: The ring is damaged.
    repair: Battery off, then fit a new one.
    retest: [look/eyes]
  done:
    conclude: []
    say: Nothing was seen.
    repair: Nothing to repair yet.
`;

test('stand before each step of what is used, and are said with the repair', () => {
  const { linked, issues } = link(tree(text('raised-wheel', 'battery-off')));
  expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
  const { steps } = linked!.procedure;
  const inner = Object.values(steps).filter(isTask);
  expect(inner.map(({ id }) => id)).toEqual(['look/eyes']);
  expect(inner[0]!.cautions.map(({ id }) => id)).toContain('raised-wheel');
  const { worn } = steps;
  expect(worn?.kind === 'conclude' && worn.repair).toMatch(
    /^Battery off, then fit a new one\. CAUTION: Before the battery comes off: ignition off/,
  );
});

test('that are not there are told where they are written', () => {
  const { issues } = link(tree(text('raised-wheels', 'battery-of')));
  const found = issues.filter(({ code }) => code === 'unknown-caution');
  expect(found.map(({ at, fix }) => [at.line, fix])).toEqual([
    [8, 'did you mean "raised-wheel"?'],
    [12, 'did you mean "battery-off"?'],
  ]);
});

test('a hazard of one’s own is named "other", and speaks for no work that has its own caution', () => {
  const own = loadCautions(
    'cautions:\n  tines:\n    word: WARNING\n    hazards: [other]\n    say: The tines turn with the wheel.\n',
    'cautions.yaml',
  );
  expect(own.issues).toEqual([]);
  expect(own.value?.rules[0]?.hazards).toEqual(['other']);
  const odd = loadCautions(
    'cautions:\n  tines:\n    word: WARNING\n    hazards: [turning-tines]\n    say: The tines turn with the wheel.\n',
    'cautions.yaml',
  );
  expect(odd.issues[0]).toMatchObject({ code: 'unknown-choice' });
  expect(odd.issues[0]?.fix).toContain('or "other" for a hazard that none of these names');
});
