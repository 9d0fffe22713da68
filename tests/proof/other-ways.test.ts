/**
 * Every answer of every question, and up to two steps that could not be done. All six changes of the Hall tree passed
 * the proof when it followed the usual answers only.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { isRequired, standingConclusion } from '../../src/procedure/procedure.ts';
import { otherWays } from '../../src/proof/other-ways.ts';
import { tooManyWays } from '../../src/proof/prove-procedure.ts';
import { checkTree, link, modelFor, tree } from './library.ts';

const HALL = readFileSync('procedures/hall-no-signal.yaml', 'utf8');

function found(text: string) {
  return checkTree(tree(text), 32).issues.filter(
    ({ code }) => code === 'answer-loses' || code === 'untold-end',
  );
}
function changed(from: string, to: string): string {
  expect(HALL).toContain(from);
  return HALL.replace(from, to);
}

test('the Hall tree holds on all of them', () => {
  expect(found(HALL)).toEqual([]);
});

describe('an answer that leads to an end which excludes the fault', () => {
  test.each([
    [
      'low or high',
      'code-kinds: [low, high], go: feed }',
      'code-kinds: [low, high], go: sensor-bad }',
    ],
    [
      'range',
      'code-kinds: [range, correlation], go: picture-first }',
      'code-kinds: [range, correlation], go: sensor-bad }',
    ],
    [
      'intermittent',
      'code-kinds: [intermittent], go: counts-first }',
      'code-kinds: [intermittent], go: sensor-bad }',
    ],
    [
      'a harness that drops out',
      'harness: harness, module-plug: module-plug, sensor: sensor-bad }',
      'harness: sensor-bad, module-plug: module-plug, sensor: sensor-bad }',
    ],
  ])('%s sent to the sensor is an error at the answer', (_, from, to) => {
    const issues = found(changed(from, to));
    expect(issues.map(({ code, severity }) => `${severity} ${code}`)).toContain(
      'error answer-loses',
    );
    const [first] = issues;
    expect(first?.words).toMatch(/ends? at "sensor-bad", which excludes (it|them)/);
    expect(first?.notes?.[0]).toMatch(/^one such path: prepare, .*, sensor-bad$/);
  });

  test('the words name the fault, and an end that holds it', () => {
    const [first] = found(
      changed('code-kinds: [low, high], go: feed }', 'code-kinds: [low, high], go: sensor-bad }'),
    );
    expect(first?.words).toBe(
      'with "low-or-high" of "code", a healthy circuit, wire.feed.open, wire.feed.resistive and 40 more end at "sensor-bad", which excludes them',
    );
    expect(first?.at.line).toBe(HALL.slice(0, HALL.indexOf('low-or-high:')).split('\n').length);
    expect(first?.fix).toContain('"only-with" and "because"');
  });
});

test('every answer that leads there is told at once', () => {
  const issues = found(
    changed(
      'code-kinds: [low, high], go: feed }',
      'code-kinds: [low, high], go: sensor-bad }',
    ).replace('[intermittent], go: counts-first', '[intermittent], go: sensor-bad'),
  );
  expect(issues.map(({ words }) => words.match(/^with "([^"]*)" of "code"/)?.[1])).toEqual([
    'low-or-high',
    'intermittent',
  ]);
});

test('a fault that came when it was moved must not end at "no fault found"', () => {
  const issues = found(
    changed(
      'nothing: plug-last, plug: sensor-plug, harness: harness,',
      'nothing: plug-last, plug: plug-last, harness: no-fault,',
    ),
  );
  const words = issues.map((issue) => issue.words).join('\n');
  expect(words).toMatch(
    /with "plug" of "\S+\/wiggle".*contact\.sensor\.feed\.open.* end at "no-fault", that no fault was found, though the answer says that one of them came/,
  );
  expect(words).toMatch(/with "harness" of "\S+\/wiggle".*wire\.feed\.open.* end at "no-fault"/);
});

describe('a step that cannot be done', () => {
  test.each([
    ['sent to "no fault found"', '    cannot: sensor-or-signal', '    cannot: no-fault'],
    [
      'and not compared, sent to the sensor',
      'no-signal: intermittent, not-compared: intermittent }',
      'no-signal: intermittent, not-compared: sensor-bad }',
    ],
  ])('%s is an error at its "cannot"', (_, from, to) => {
    const issues = found(changed(from, to));
    expect(issues.length).toBeGreaterThan(0);
    expect(new Set(issues.map(({ code }) => code))).toEqual(new Set(['untold-end']));
  });

  test('two of them are tried together', () => {
    const lost = HALL.replaceAll(/^ {4}requires: .*\n {4}otherwise: .*\n/gm, '');
    const pairs = found(lost).filter(({ words }) => / and .* can't be done/.test(words));
    expect(pairs.length).toBeGreaterThan(5);
  });

  test('an end that requires it gives way to the one that leaves it open', () => {
    const { linked } = link(tree(HALL));
    const stands = (id: string, ...skipped: string[]) =>
      standingConclusion(linked!.procedure, id, (conclusion) =>
        skipped.some((one) => isRequired(conclusion, one)),
      );
    expect(stands('no-fault')).toBe('no-fault');
    expect(stands('no-fault', 'picture/scope')).toBe('not-told');
    expect(stands('no-fault', 'picture/live-data')).toBe('no-fault');
    expect(stands('not-told', 'picture/scope')).toBe('not-told');
  });
});

test('which faults can give an answer follows from its declaration; without one any can', () => {
  const { linked } = link(tree(HALL));
  const { steps } = linked!.procedure;
  const under = (id: string, name: string) => {
    const step = steps[id];
    return step?.kind === 'ask' ? step.outcomes.find((one) => one.name === name)?.under : null;
  };
  expect(under('code', 'circuit')).toBeUndefined();
  expect(under('intermittent/wiggle', 'nothing')).toBeUndefined();
  const harness = under('intermittent/wiggle', 'harness')!;
  expect(harness).toContain('wire.signal.open');
  expect(harness).not.toContain('healthy');
  expect(harness.every((id) => id.startsWith('wire.'))).toBe(true);
});

test('questions beyond counting are walked as well: sixteen of two answers each', () => {
  const asks = Array.from(
    { length: 16 },
    (_, at) => `  ask-${at}:
    test: interview
    say: Is it so?
    why: Who knows.
    outcomes:
      yes: { go: ask-${at + 1} }
      no: { go: ${at === 15 ? 'wrong' : `ask-${at + 1}`} }
    usual: yes
`,
  );
  const text = `procedure: long
title: Many questions
circuit: hall-module-fed
start: ask-0
steps:
${asks.join('')}  ask-16:
    test: interview
    say: And?
    why: The end.
    outcomes: { one: { go: open }, other: { go: open } }
  open: { title: Open, conclude: ["*"], say: Nothing., repair: None. }
  wrong: { title: Wrong, conclude: [sensor.dead], say: Nothing., repair: None. }
`;
  const wrong = ['with "no" of "ask-15"'];
  expect(found(text).map(({ words }) => words.split(',')[0])).toEqual(wrong);
});

test('more ways of a fault than are followed are an error, since its shares are not known', () => {
  const { linked } = link(tree(HALL));
  const way = { fault: 'healthy', verdict: 'right', lostAt: null, samples: [0], share: 0 } as const;
  const all = (count: number) =>
    Array.from({ length: count }, () => ({
      ...way,
      visits: [],
      end: { kind: 'concluded', step: 'no-fault' } as const,
    }));
  expect(tooManyWays(linked!, all(2047))).toEqual([]);
  expect(tooManyWays(linked!, all(2048))).toMatchObject([
    { code: 'too-many-ways', severity: 'error' },
  ]);
});

test('a fault that comes and goes reads as a healthy circuit until it is woken', () => {
  const { linked } = link(tree(HALL));
  const model = modelFor(linked!.circuit!, 32);
  const ends = new Map<string, Set<string>>();
  otherWays(linked!.procedure, model, ({ fault, end, sleeping }) => {
    if (sleeping) ends.set(fault, (ends.get(fault) ?? new Set()).add(end));
  });
  expect([...ends.get('wire.signal.open')!].sort()).toContain('harness');
  expect(ends.get('wire.signal.open')).not.toContain('sensor-plug');
  expect(ends.get('contact.sensor.signal.open')).toContain('sensor-plug');
  expect(ends.has('module.signal.input-dead')).toBe(false);
});
