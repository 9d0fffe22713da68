/** Pages of the guide that are made from the library and from a sample session. Run by scripts/guide.mjs. */
import { readFileSync } from 'node:fs';
import { parseLine } from '../../src/log/event-line.ts';
import { sha256 } from '../../src/log/hash.ts';
import { USUAL_MINUTES } from '../../src/procedure/build-step.ts';
import type { ProcedureDraft, Step } from '../../src/procedure/generated/procedure.mjs';
import { isTask, stepOf } from '../../src/procedure/procedure.ts';
import { formatQuantity } from '../../src/quantity/format-quantity.ts';
import { parseReading } from '../../src/quantity/parse-reading.ts';
import { createAdvisor } from '../../src/session/create-advisor.ts';
import type { ReadingRecorded, SessionEvent } from '../../src/session/events.ts';
import { replay } from '../../src/session/evolve.ts';
import { modelFor } from '../../src/session/session-model.ts';
import { library } from './shipped.ts';

/** The page of all families, in Markdown. */
export function familiesPage(): string {
  const drafts = library.procedures
    .files()
    .flatMap(({ value }) => (value?.draft.needs === undefined ? [] : [value.draft]));
  const byName = new Map(drafts.map((draft) => [draft.procedure, draft]));
  return `${[
    '# Sub-procedures',
    '',
    'Made by `node scripts/guide.mjs`; do not edit. These are the files in `procedures/families`: parts of a tree that are',
    'written once. A tree calls one with `use`, gives it what it needs with `with`, and says in `results` where each result',
    'goes ([writing-procedures.md](writing-procedures.md)). Minutes are those of the authors, from the shortest way through to',
    'the longest; steps that cannot be done and that a tree passes over take less.',
    '',
    '| name | what it answers | minutes | results |',
    '| --- | --- | --: | --- |',
    ...drafts.map(
      (draft) =>
        `| [${draft.procedure}](#${draft.procedure}) | ${draft.title} | ${minuteWords(draft, byName)} | ${resultsOf(draft).join(', ')} |`,
    ),
    '',
    ...drafts.flatMap((draft) => familySection(draft, byName)),
  ].join('\n')}`;
}

type Drafts = ReadonlyMap<string, ProcedureDraft>;

function familySection(draft: ProcedureDraft, byName: Drafts): string[] {
  const { procedure, title, about = '', needs = {} } = draft;
  const uses = Object.values(draft.steps).flatMap(({ use }) => (use === undefined ? [] : [use]));
  return [
    `## ${procedure}`,
    '',
    `${title} ${about.trim()} ${minuteWords(draft, byName)} minutes.`,
    '',
    ...Object.entries(needs).map(([name, words]) => `- needs \`${name}\`: ${words}`),
    `- results: ${resultsOf(draft).join(', ')}`,
    ...(uses.length > 0 ? [`- uses: ${[...new Set(uses)].join(', ')}`] : []),
    '',
  ];
}

/** The results of its steps, in the order of the file, each once. */
function resultsOf({ steps }: ProcedureDraft): string[] {
  const results = Object.values(steps).flatMap(({ result }) =>
    result === undefined ? [] : [result],
  );
  return [...new Set(results)];
}

/** Least and most minutes from its start to a result, with what it uses; one number where they are the same. */
function minuteWords(draft: ProcedureDraft, byName: Drafts): string {
  const [least, most] = minutesOf(draft, byName);
  return least === most ? String(most) : `${least} to ${most}`;
}

function minutesOf({ start, steps }: ProcedureDraft, byName: Drafts): [number, number] {
  const from = (id: string): [number, number] => {
    const step = steps[id];
    if (!step || step.result !== undefined) return [0, 0];
    const own =
      step.use === undefined ? readMinutes(step) : minutesOf(byName.get(step.use)!, byName);
    const rest = waysOn(step).map(from);
    if (rest.length === 0) return own;
    return [
      own[0] + Math.min(...rest.map(([least]) => least)),
      own[1] + Math.max(...rest.map(([, most]) => most)),
    ];
  };
  return from(start);
}

function readMinutes({ minutes }: Step): [number, number] {
  const taken = minutes ?? USUAL_MINUTES;
  return [taken, taken];
}

/** Steps that come next when this one could be done. */
function waysOn({ outcomes = {}, results = {}, go }: Step): string[] {
  const after = Object.values(outcomes).map((outcome) => outcome.go);
  return [...after, ...Object.values(results), ...(go === undefined ? [] : [go])];
}

const SAMPLE = 'sessions/sample-starved-throttle';
/** The reading that the page follows: the sensor's feed while its neighbour is unplugged. */
const FOLLOWED = 'dragged';
const LISTED = 4;

/** The page that follows one reading of a sample session through the program, in Markdown. */
export function readingPage(): string {
  const lines = readFileSync(`${SAMPLE}.jsonl`, 'utf8').trimEnd().split('\n');
  const events = lines.map((line) => eventOf(line));
  const at = events.findIndex(
    (event) => event.type === 'reading-recorded' && event.step === FOLLOWED,
  );
  const event = events[at] as ReadingRecorded;
  return `${[
    '# One reading, from the keys to the papers',
    '',
    `Made by \`node scripts/guide.mjs\` from the sample session \`${SAMPLE}.jsonl\`; do not edit. The feed of a`,
    'throttle sensor is down. A technician unplugs the intake pressure sensor, which shares it, and types what the meter then',
    'shows at the throttle sensor. This is all that happens to that reading, and where in `src` it happens. Nothing flows back: what a screen or a paper shows is worked out from the events alone.',
    '',
    ...fenced(WHOLE_WAY),
    ...typedPart(event),
    ...judgedPart(events.slice(0, at), event),
    ...eventPart(lines, at),
    ...weighedPart(events, at),
    ...paperPart(event),
  ].join('\n')}`;
}

const WHOLE_WAY = [
  ' ┌─────────┐   ┌─────────┐   ┌──────────┐   ┌───────────┐   ┌────────────┐',
  ' │ 1 typed │──>│ 2 value │──>│ 3 judged │──>│ 4 event   │──>│ 5 chain    │',
  ' │ ui      │   │ quantity│   │ session/ │   │ session/  │   │ log: on    │',
  ' │         │   │         │   │ decide   │   │ events    │   │ the disk   │',
  ' └─────────┘   └─────────┘   └──────────┘   └───────────┘   └─────┬──────┘',
  '                                                                  │',
  '       ┌────────────────────┬─────────────────────┬───────────────┤ evolve',
  '       v                    v                     v               v',
  ' ┌───────────┐        ┌──────────┐          ┌──────────┐    ┌────────────┐',
  ' │ 6 weighed │───────>│ 7 advice │─────────>│ 8 screen │    │ 9 papers   │',
  ' │ suspects  │        │ suspects │          │ ui       │    │ records    │',
  ' └───────────┘        └──────────┘          └──────────┘    └────────────┘',
];

function typedPart({ typed, value, unit }: ReadingRecorded): string[] {
  const parsed = parseReading(typed, { unit: unit as 'V', dc: true });
  if (parsed.status !== 'read' || parsed.quantity.value !== value)
    throw new Error(`"${typed}" is not understood`);
  return [
    '## Typed, and understood (`src/quantity/parse-reading.ts`)',
    '',
    ...fenced([
      ` "${typed}"  ──>  number and digits  ──>  prefix and unit  ──>  ${value} ${unit}`,
      '             what was typed is kept as it was typed, next to the value',
    ]),
    'Anything that could mean two things is asked back, never guessed.',
    '',
  ];
}

function judgedPart(before: readonly SessionEvent[], event: ReadingRecorded): string[] {
  const session = replay(before);
  const step = stepOf(session.opened.procedure!, event.step);
  if (!isTask(step) || step.kind !== 'measure') throw new Error(`${event.step} measures nothing`);
  const outcome = step.outcomes.find(({ name }) => name === event.outcome)!;
  const good = step.outcomes.find(({ name }) => name === 'good')!;
  return [
    '## Judged (`src/session/judge-step.ts`)',
    '',
    ...fenced([
      ...scale(event.value as number, good.from!),
      '',
      `   chance that the true value is good: ${event.judgement!.chance}`,
      `   verdict: ${event.judgement!.verdict}      outcome: ${outcome.name} (${outcome.words})`,
      `   next step: ${event.go}`,
    ]),
    'A reading so near to a limit that the meter cannot tell is called borderline instead.',
    '',
  ];
}

/** The reading and the limit of good values on a line of volts. */
function scale(value: number, limit: number): string[] {
  const at = (volts: number) => Math.round(10 * volts);
  const line = [...'─'.repeat(at(6))];
  line[at(limit)] = '┼';
  line[at(value)] = '●';
  const volts = (number: number) => formatQuantity({ value: number, unit: 'V' });
  return [
    `   ├${line.join('')}>`,
    `   0 V${' '.repeat(at(limit) - 9)}good from ${volts(limit)}; ● ${volts(value)}`,
  ];
}

function eventPart(lines: readonly string[], at: number): string[] {
  const prev = JSON.parse(lines[at]!).prev as string;
  if (sha256(lines[at - 1]!) !== prev)
    throw new Error('the sample is not chained as this page says');
  const shown = Object.entries(JSON.parse(lines[at]!) as Record<string, unknown>)
    .filter(([key]) => !['at', 'elapsed', 'prev', 'seq'].includes(key))
    .map(([key, value]) => `   │ ${`"${key}": ${JSON.stringify(value)}`.padEnd(64)} │`);
  const rule = '─'.repeat(66);
  return [
    '## An event, and its place in the chain (`src/session/events.ts`, `src/log`)',
    '',
    ...fenced([
      `   ┌${rule}┐`,
      `   │ ${'"at": time, "elapsed": ms, "seq": number, "prev": hash'.padEnd(64)} │`,
      ...shown,
      `   └${rule}┘`,
      '',
      '   line before            this line              next line',
      '   ┌───────────┐          ┌───────────┐          ┌───────────┐',
      '   │ { ... }   │─SHA-256─>│ prev: ... │─SHA-256─>│ prev: ... │',
      '   └───────────┘          └───────────┘          └───────────┘',
    ]),
    'The line is written and synced before the next step appears. Changing any earlier line changes every hash after it.',
    '',
  ];
}

function weighedPart(events: readonly SessionEvent[], at: number): string[] {
  const sessions = [replay(events.slice(0, at)), replay(events.slice(0, at + 1))] as const;
  const [{ opened, meter }] = sessions;
  const advisor = createAdvisor(modelFor(opened.circuit!, meter), opened);
  const [before, after] = sessions.map((session) => advisor.suspects(session).rows);
  const next = advisor.nextTests(sessions[1])[0];
  const bars = after!.slice(0, LISTED).map(({ repair, words, chance }) => {
    const was = before!.find((row) => row.repair === repair)?.chance ?? 0;
    return `   ${percent(was)}  ->  ${percent(chance)}  ${bar(chance)}  ${words}`;
  });
  return [
    '## Weighed, and what to do next (`src/suspects`)',
    '',
    'For each fault the circuit says what this meter would show there, in many cars. The chance of a fault is multiplied by',
    'how likely it makes the reading (Bayes), and all chances are scaled to sum to 1:',
    '',
    ...fenced([
      '    before      after',
      ...bars,
      '',
      `   ${next?.bits === null ? 'a test that would prove it' : 'the test that tells most for its minutes'}:`,
      `   ${next ? `${next.words} (${next.minutes} min)` : 'none: no test at hand tells these apart'}`,
    ]),
    'What is assumed and computed: [maths.md](maths.md), from section 5.',
    '',
  ];
}

function paperPart(event: ReadingRecorded): string[] {
  const rows = readFileSync(`${SAMPLE}.md`, 'utf8').split('\n');
  const row = rows.find((line) => line.startsWith('|') && line.includes(`| ${event.typed} |`));
  if (!row) throw new Error('the transcript does not show the reading');
  const cells = row.split('|').map((cell) => cell.trim());
  const names = ['', 'No., time', 'Test', 'Where', 'Expected', 'Found', 'Judgement'];
  return [
    '## On the screen and on paper (`src/ui`, `src/records`)',
    '',
    'The screen draws the state that all events together give: ![A step with a reading being judged](pictures/step.svg)',
    '![The suspects after a few readings](pictures/suspects.svg)',
    '',
    'Every paper (transcript, PDF, CSV, JSON) is made from one view of the same events:',
    '',
    ...fenced(
      names.flatMap((name, index) =>
        index === 0 ? [] : [`   ${name.padEnd(10)} ${masked(cells[index] ?? '')}`],
      ),
    ),
  ];
}

function eventOf(line: string): SessionEvent {
  const parsed = parseLine(new TextEncoder().encode(line));
  if ('flaw' in parsed) throw new Error(parsed.flaw);
  return parsed.event as unknown as SessionEvent;
}

/** The time of day changes with every new sample. */
function masked(cell: string): string {
  return cell.replace(/\d\d:\d\d:\d\d/, 'time');
}

function percent(chance: number): string {
  const rounded = (100 * chance).toFixed(1);
  const words = rounded === '100.0' && chance < 1 ? '> 99.9' : rounded;
  return `${words} %`.padStart(8);
}

function bar(chance: number): string {
  return '█'.repeat(Math.round(20 * chance)).padEnd(20, '·');
}

function fenced(lines: readonly string[]): string[] {
  return ['```text', ...lines, '```', ''];
}
