import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { readSessionFile } from '../../src/log/read-session-file.ts';
import { atPlaceOf } from '../../src/procedure/place-sensor.ts';
import { calledByRole } from '../../src/procedure/unnamed-neighbours.ts';
import { commandFor, loadAnswers } from '../../src/session/answers-file.ts';
import type { Command } from '../../src/session/command.ts';
import { conclusionWords } from '../../src/session/conclusion-words.ts';
import { createAdvisor } from '../../src/session/create-advisor.ts';
import { decide } from '../../src/session/decide.ts';
import { RULES, SESSION_FORMAT, type SessionOpened } from '../../src/session/events.ts';
import { evolve, openSession } from '../../src/session/evolve.ts';
import type { Session } from '../../src/session/session.ts';
import { LONG } from '../campaign.ts';
import { library, shipped } from './shipped.ts';

const FOLDER = 'sessions';
const files = (ending: string) =>
  readdirSync(FOLDER)
    .filter((name) => name.startsWith('sample-') && name.endsWith(ending))
    .sort();

/** What each demo job comes to. */
const ENDS: Readonly<Record<string, readonly string[]>> = {
  'quarrelling-pedal': ['signals-touch', 'wire.signal-1.short-to-signal-2'],
  'rainy-camshaft': ['sensor-plug', 'contact.sensor.signal.open'],
  'silent-crankshaft': ['signal-wire', 'wire.signal.open'],
  'slipped-wheel': ['wheel-displaced', 'target.displaced'],
  'starved-throttle': ['neighbour-shorted', 'pressure-sensor.shorted'],
};

describe('demo answers', () => {
  it('there is one file for each demo job', () => {
    const jobs = library.jobFiles().map(({ value }) => value?.job.name);
    expect(files('.answers.yaml')).toEqual(jobs.map((name) => `sample-${name}.answers.yaml`));
    expect(Object.keys(ENDS)).toEqual(jobs);
  });

  // Of the pedal, which takes longest, the session that its answers gave is in the file, and that is held below.
  it.each(library.jobFiles().filter(({ value }) => LONG || value?.procedure !== 'pedal-position'))(
    '$path runs by its answers to its conclusion',
    ({ value }) => {
      const { job, procedure } = value!;
      const path = join(FOLDER, `sample-${job.name}.answers.yaml`);
      const { value: answers, issues } = loadAnswers(readFileSync(path, 'utf8'), path);
      expect(issues).toEqual([]);
      expect(answers!.procedure).toBe(procedure);
      const { model } = shipped(procedure!);
      let session = openedWith(procedure!, job);
      const { weigh } = createAdvisor(model, session.opened);
      for (const index of answers!.answers.keys()) {
        const next = () => {
          const command = commandFor(answers!, index, session, { weigh, model });
          if ('severity' in command)
            throw new Error(`${path}:${command.at.line}: ${command.words}`);
          return command;
        };
        const take = (command: Command) => {
          const decision = decide(session, command, { at: '2031-05-06T09:00:00Z', elapsed: index });
          if (!decision.ok)
            throw new Error(`${path}, answer ${index + 1}: ${decision.refusal.code}`);
          for (const event of decision.events) session = evolve(session, event);
        };
        const command = next();
        take(command);
        // The cautions of a test that no step asks for are acknowledged with it.
        if (command.type === 'acknowledge-cautions' && command.test) take(next());
      }
      const [step, fault] = ENDS[job.name]!;
      expect(session.status).toBe('concluded');
      expect(session.trail.at(-1)?.step).toBe(step);
      expect(session.concluded?.faults).toContain(fault);
    },
    120_000,
  );
});

const SAMPLES = new Map<string, ReturnType<typeof readSessionFile>>();

describe('sample sessions', () => {
  const samples = files('.jsonl');

  it('there is one for each demo job, with its transcript', () => {
    for (const name of Object.keys(ENDS)) expect(samples).toContain(`sample-${name}.jsonl`);
    expect(files('.md')).toEqual(samples.map((name) => name.replace('.jsonl', '.md')));
  });

  it.each(samples)('%s is whole and replays to its conclusion', (name) => {
    const read = readSample(name);
    const { session, events, head, log } = read;
    expect(log.verdict).toBe('whole');
    expect(session.concluded).toEqual(events.find(({ type }) => type === 'concluded'));
    expect(session.concluded?.proven).toBeTypeOf('boolean');
    const transcript = readFileSync(join(FOLDER, name.replace('.jsonl', '.md')), 'utf8');
    expect(transcript).toContain(head.hash);
    expect(transcript).toContain(conclusionWords(session)!.title);
  });

  it.each(samples)('%s was written with the trees as they are now', (name) => {
    const read = readSample(name);
    const { procedure, format, job } = read.session.opened;
    expect(format).toBe(SESSION_FORMAT);
    const { linked, model } = shipped(procedure!.name, job.vehicle.drive);
    const placed = atPlaceOf(job, { circuit: model.circuit, procedure: linked.procedure });
    const { steps } = calledByRole(placed, job).procedure!;
    expect(procedure!.steps).toEqual(JSON.parse(JSON.stringify(steps)));
  });
});

/** Read once: what a file derives is worked out again as it is read. */
function readSample(name: string) {
  const known = SAMPLES.get(name) ?? readSessionFile(nodeDisk, join(FOLDER, name));
  SAMPLES.set(name, known);
  if (!known.ok) throw new Error(known.problem.problem);
  return known;
}

function openedWith(procedure: string, job: SessionOpened['job']): Session {
  const { linked, model } = shipped(procedure);
  return openSession({
    type: 'session-opened',
    format: SESSION_FORMAT,
    rules: RULES,
    program: 'test',
    by: 'answers-file',
    id: 'test',
    person: '',
    shop: '',
    instruments: [],
    meter: STANDARD_SETTINGS.meter,
    job,
    ...atPlaceOf(job, { circuit: model.circuit, procedure: linked.procedure }),
    cautionRules: library.cautions,
    vehicle: { kind: 'real' },
    at: '2031-05-06T08:00:00Z',
    elapsed: 0,
  });
}
