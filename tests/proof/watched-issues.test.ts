/** Questions that wake a fault by hand: what is watched must show it, in the state that the step names. */
import { describe, expect, it } from 'vitest';
import type { Probe, Setup } from '../../src/circuit/test.ts';
import type { AskStep, Step } from '../../src/procedure/procedure.ts';
import type { ProofFacts } from '../../src/proof/proof-facts.ts';
import { watchedIssues } from '../../src/proof/watched-issues.ts';
import { shipped, trees } from '../library/shipped.ts';

type Changed = { readonly setup?: Partial<Setup>; readonly watched?: readonly Probe[] };

/** What is told of a shipped tree in which one question is changed. */
function told(name: string, id?: string, { setup = {}, watched }: Changed = {}) {
  const { linked, model } = shipped(name);
  const step = (id ? linked.procedure.steps[id] : undefined) as AskStep | undefined;
  const { watched: _, ...bare } = step ?? ({} as AskStep);
  const changed: Step | null = step
    ? {
        ...bare,
        setup: { ...step.setup, ...setup },
        ...(watched?.length === 0 ? {} : { watched: watched ?? step.watched! }),
      }
    : null;
  const steps = { ...linked.procedure.steps, ...(changed ? { [changed.id]: changed } : {}) };
  const facts = { linked: { ...linked, procedure: { ...linked.procedure, steps } }, model };
  return watchedIssues(facts as unknown as ProofFacts);
}
const SIGNAL: Probe = { kind: 'volts', plus: 'module.signal', minus: 'battery.negative' };
const KEY_ON = { state: 'key-on', target: 'still' } as const;

describe('the shipped trees', () => {
  it.each(trees.map(({ draft }) => draft.procedure))('%s wakes only what shows', (name) => {
    expect(told(name).map(({ words }) => words)).toEqual([]);
  });
});

describe('a wiggle step', () => {
  it('with the engine off hides what opens while the output is off', () => {
    const issues = told('hall-no-signal', 'wake-second/wiggle', {
      setup: KEY_ON,
      watched: [SIGNAL],
    });
    expect(issues.map(({ code, severity }) => `${severity} ${code}`)).toEqual(
      ['plug', 'harness', 'module-plug'].map(() => 'error unseen-when-woken'),
    );
    // an output that is off part of the turn; a circuit file says how long, 20 to 80 % of it
    expect(issues.flatMap(({ words, notes = [] }) => [words, ...notes]).join()).toMatch(
      /contact\.sensor\.signal\.open \(shows in [2-6]\d %\)/,
    );
  });

  it('at idle hides no signal, and a second round is needed for a feed that is lifted', () => {
    const [issue, ...more] = told('hall-no-signal', 'wake-second/wiggle', {
      watched: [{ kind: 'counts', input: 'module.signal' }],
    });
    expect(more).toEqual([]);
    expect(issue!.words).toContain('wire.feed.short-to-battery (shows in 0 %)');
  });

  it('with the module off wakes no contact of its plug', () => {
    const ohms: Probe = { kind: 'ohms', plus: 'module.signal-plus', minus: 'module.signal-minus' };
    const issues = told('reluctor-no-signal', 'wake/running', {
      setup: { state: 'key-off', target: 'still', unplugged: ['module'] },
      watched: [ohms],
    });
    const words = issues.map((issue) => issue.words).join('\n');
    expect(words).toContain('contact.module.signal-plus.open (shows in 0 %)');
    expect(words).toContain('wire.plus.short-to-ground (shows in 0 %)');
  });

  it('of a track is held against the module’s own number, which its pin hides', () => {
    const issues = told('throttle-position', 'wake/wiggle', { watched: [SIGNAL] });
    expect(issues.map(({ words }) => words).join()).toContain('contact.module.signal.open');
  });

  it('that names faults and has nothing watched is told', () => {
    expect(told('hall-no-signal', 'wake-second/heat', { watched: [] })).toMatchObject([
      { code: 'nothing-watched', severity: 'warning' },
    ]);
  });
});
