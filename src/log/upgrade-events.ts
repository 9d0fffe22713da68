/**
 * Events of earlier versions in today's form: format 1 of sessions, and drills, which had events of their own.
 *
 * Nothing of what comes in has been checked, so nothing is believed here: what is not as it should be is passed on as
 * it stands, and the check that follows names it. What an early version wrote down in its own words is kept as `said`
 * where no fact stands behind it, and dropped where the facts say it again.
 */
import { emptyJob } from '../procedure/job.ts';
import { SESSION_FORMAT } from '../session/events.ts';
import type { StoredEvent } from './event-line.ts';

/** An event in today's form, still to be checked, or in words why there is none. */
export type Upgraded = Keys | string;
type Keys = Readonly<Record<string, unknown>>;

/** Files of format 1 name no version of the rules; theirs are the first. */
const FIRST_RULES = 1;
/** What everybody had at hand before it was said. */
const AT_HAND_ONCE = ['meter', 'live-data', 'lead'];
/** A drill's bench has everything. */
const ON_THE_BENCH = [
  ...AT_HAND_ONCE,
  'test-light',
  'lamp',
  'scope',
  'spare-sensor',
  'resistor',
  'helper',
];

/** All events of a session, in order. */
export function upgradeEvents(stored: readonly StoredEvent[]): Upgraded[] {
  const [first] = stored;
  if (first?.type === 'drill-opened') {
    const drill = new EarlyDrill(first);
    return upgradedBy(stored, (event) => drill.upgraded(event));
  }
  return upgradedBy(stored, sessionEvent);
}

/** Another version of the program may have gone on with the file: each resumption says in which form. */
function upgradedBy(
  stored: readonly StoredEvent[],
  early: (event: StoredEvent) => Upgraded,
): Upgraded[] {
  let isEarly = stored[0]?.['format'] === 1;
  return stored.map((event) => {
    if (event.type === 'session-resumed') isEarly = !('format' in event || 'rules' in event);
    return isEarly ? early(event) : event;
  });
}

function unknown({ type }: StoredEvent): string {
  return `is of the type "${type}", which format 1 does not have`;
}

/** One event of a session of format 1. */
function sessionEvent(event: StoredEvent): Upgraded {
  switch (event.type) {
    case 'session-opened':
      return {
        ...event,
        format: SESSION_FORMAT,
        rules: FIRST_RULES,
        by: 'person',
        instruments: withThoseAtHand(event['instruments']),
        cautionRules: [],
        vehicle: vehicleOf(event['vehicle']),
      };
    case 'session-resumed':
      return { ...event, format: SESSION_FORMAT, rules: FIRST_RULES, by: 'person' };
    case 'instruments-changed':
      return { ...event, instruments: withThoseAtHand(event['instruments']) };
    case 'reading-recorded':
      return withCapture({ ...event, judgement: judgementOf(event['judgement']) });
    case 'look-recorded':
    case 'retest-recorded':
      return withCapture(event);
    case 'extra-reading': {
      const { words: _words, expected = null, judgement = null, ...rest } = event;
      const typed = isKeys(event['shown']) && event['shown'].kind === 'look' ? '' : event['typed'];
      const told = { typed, expected, judgement: judgementOf(judgement) };
      return withCapture({ ...rest, type: 'test-recorded', ...told });
    }
    case 'concluded':
      return concluded(event);
    case 'session-closed':
      return without(event, 'words');
    case 'caution-acknowledged':
    case 'step-done':
    case 'step-impossible':
    case 'step-reopened':
    case 'note-added':
    case 'session-paused':
    case 'retest-impossible':
    case 'recovered':
    case 'segment-continued':
      return event;
    default:
      return unknown(event);
  }
}

function withThoseAtHand(instruments: unknown): unknown {
  return Array.isArray(instruments)
    ? [...new Set<unknown>([...instruments, ...AT_HAND_ONCE])]
    : instruments;
}

function vehicleOf(vehicle: unknown): unknown {
  if (!isKeys(vehicle) || !('comesAndGoes' in vehicle)) return vehicle;
  const { comesAndGoes, ...rest } = vehicle;
  return { ...rest, intermittent: comesAndGoes };
}

function judgementOf(judgement: unknown): unknown {
  return isKeys(judgement) ? without(judgement, 'words') : judgement;
}

/** The title of a tree's conclusion stands in the tree, that of named faults in the circuit; of one's own in words it is all there is. */
function concluded(event: StoredEvent): Keys {
  const { title, repair, evidence, ruledOut, ...rest } = event;
  const isOwn = rest['conclusion'] === null && isEmpty(rest['faults']);
  const own = typeof title === 'string' ? title.trim() : title;
  const more = typeof repair === 'string' ? repair.trim() : '';
  const isMore = typeof own === 'string' && more !== '' && more !== own;
  return {
    ...rest,
    ownWords: isOwn ? (isMore ? `${own}: ${more}` : own) : null,
    evidence: each(evidence, ({ counted = true, ...said }) => ({ counted, said })),
    ruledOut: each(ruledOut, (said) => ({ said })),
  };
}

/** Findings of a capture were sentences. */
function withCapture(event: Keys): Keys {
  const { capture } = event;
  if (!isKeys(capture)) return event;
  const { words, pairs, ...rest } = capture;
  const findings = asSaid(words);
  const phases = pairs === undefined ? {} : { phases: asSaid(pairs) };
  return { ...event, capture: { ...rest, findings, ...phases } };
}

function asSaid(sentences: unknown): unknown {
  return Array.isArray(sentences) ? sentences.map((said: unknown) => ({ said })) : sentences;
}

/** A drill of the time when drills had events of their own. Its events are upgraded in their order. */
class EarlyDrill {
  private readonly circuit: Keys;
  private readonly steps: Keys;
  private readonly meter: Keys;
  /** Where the procedure stood. */
  private step: unknown;

  constructor(opened: StoredEvent) {
    this.circuit = keysOf(opened['circuit']);
    this.meter = keysOf(opened['meter']);
    const procedure = keysOf(opened['procedure']);
    this.steps = keysOf(procedure['steps']);
    this.step = procedure['start'] ?? null;
  }

  upgraded(event: StoredEvent): Upgraded {
    const { seq, prev, at, elapsed } = event;
    const as = (type: string, keys: Keys) => ({ type, ...keys, seq, prev, at, elapsed });
    switch (event.type) {
      case 'drill-opened':
        return as('session-opened', this.opened(event));
      case 'drill-cautions-read': {
        const { state, cautions } = event;
        return as('caution-acknowledged', { step: null, state, cautions });
      }
      case 'drill-caution-passed-over':
        return as('caution-passed-over', { cautions: event['cautions'] });
      case 'drill-measured':
        return as(...this.measured(event));
      case 'drill-test-stopped':
        return as('test-stopped', { test: testOf(event['test']), hazard: event['hazard'] });
      case 'drill-step-followed':
        return as(...this.followed(event));
      case 'drill-noted':
        return as('note-added', { step: this.step, text: event['text'] });
      case 'drill-resumed':
        return as('session-resumed', {
          program: event['program'],
          format: SESSION_FORMAT,
          rules: FIRST_RULES,
          by: handOf(event),
        });
      case 'drill-diagnosed':
        return as('concluded', this.diagnosed(event['repairs']));
      case 'drill-revealed':
        return {
          ...event,
          type: 'answer-revealed',
          score: each(event['score'], (part) => without(part, 'why')),
        };
      case 'recovered':
      case 'segment-continued':
        return event;
      default:
        return unknown(event);
    }
  }

  private opened(event: StoredEvent): Keys {
    const { program, id, student, level, seed, commitment, assignment } = event;
    const { complaint, earlierRepair, circuit, procedure, meter } = event;
    const earlierRepairs =
      earlierRepair === null ? [] : [{ words: this.repairWords(earlierRepair), part: null }];
    return {
      format: SESSION_FORMAT,
      rules: FIRST_RULES,
      program,
      by: handOf(event),
      id,
      person: student,
      shop: '',
      instruments: ON_THE_BENCH,
      meter,
      job: { ...emptyJob(''), complaint, earlierRepairs },
      procedure,
      circuit,
      cautionRules: [],
      vehicle: { kind: 'drill', level, seed, commitment, earlierRepair, assignment },
    };
  }

  private repairWords(repair: unknown): unknown {
    const fault = this.faults().find((one) => one['repair'] === repair);
    return fault?.['repairWords'] ?? repair;
  }

  private faults(): Keys[] {
    const { faults } = this.circuit;
    return Array.isArray(faults) ? faults.map(keysOf) : [];
  }

  /** What was measured for a step answers it where it led on; all else is a test of the student's own. */
  private measured(event: StoredEvent): [type: string, keys: Keys] {
    const { step, go, found, capture } = event;
    const shown = keysOf(event['shown']);
    const taken = capture === undefined ? {} : { capture };
    const isLook = shown['kind'] === 'look';
    const asked = go === null ? null : this.stepNamed(step);
    if (asked !== null) {
      this.step = go;
      const outcome = nameOf(outcomesOf(asked).find((one) => answers(one, shown, go)));
      if (isLook)
        return ['look-recorded', withCapture({ step, look: shown['look'], outcome, go, ...taken })];
      const { value, unit } = shown;
      const instrument = this.meter['name'];
      const read = { step, typed: found, value, unit, instrument, judgement: null, outcome, go };
      return ['reading-recorded', read];
    }
    const test = { test: testOf(event['test']), typed: isLook ? '' : found, shown: event['shown'] };
    return ['test-recorded', withCapture({ ...test, expected: null, judgement: null, ...taken })];
  }

  /** Something done or asked; a number that the bench knows nothing of was left out. */
  private followed({ step, words, go }: StoredEvent): [type: string, keys: Keys] {
    const asked = keysOf(this.stepNamed(step));
    this.step = go;
    if (asked['kind'] === 'act') return ['step-done', { step, go }];
    const leading = outcomesOf(asked).filter((one) => one['go'] === go);
    const usual = leading.find((one) => one['name'] === asked['usual']) ?? leading[0];
    return asked['kind'] === 'ask' && usual
      ? ['look-recorded', { step, look: null, outcome: usual['name'], go }]
      : ['step-impossible', { step, reason: words, go }];
  }

  private stepNamed(name: unknown): Keys | null {
    return typeof name === 'string' && Object.hasOwn(this.steps, name)
      ? keysOf(this.steps[name])
      : null;
  }

  /** Repairs were named; each stands for all the faults that it puts right. */
  private diagnosed(repairs: unknown): Keys {
    const named = Array.isArray(repairs) ? repairs : [];
    const faults = this.faults().filter((one) => named.includes(one['repair']));
    return {
      conclusion: null,
      ownWords: null,
      faults: Array.isArray(repairs) ? faults.map((one) => one['id']) : repairs,
      evidence: [],
      ruledOut: [],
      proven: null,
    };
  }
}

function handOf({ fromActions }: StoredEvent): string {
  return fromActions === true ? 'answers-file' : 'person';
}

function testOf(test: unknown): unknown {
  if (!isKeys(test)) return test;
  const { wiggle, ...rest } = test;
  return wiggle === false ? rest : test;
}

function outcomesOf({ outcomes }: Keys): Keys[] {
  return Array.isArray(outcomes) ? outcomes.map(keysOf) : [];
}

/** Whether an outcome of a step is the one that this led to. */
function answers(outcome: Keys, shown: Keys, go: unknown): boolean {
  if (outcome['go'] !== go) return false;
  if (shown['kind'] === 'look') {
    const { looks } = outcome;
    return Array.isArray(looks) && looks.includes(shown['look']);
  }
  const { from, to } = outcome;
  const value = shown['value'] ?? Number.POSITIVE_INFINITY;
  return (
    typeof value === 'number' &&
    (typeof from !== 'number' || value >= from) &&
    (typeof to !== 'number' || value < to)
  );
}

function nameOf(outcome: Keys | undefined): unknown {
  return outcome?.['name'];
}

function isKeys(value: unknown): value is Keys {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function keysOf(value: unknown): Keys {
  return isKeys(value) ? value : {};
}

function isEmpty(value: unknown): boolean {
  return Array.isArray(value) && value.length === 0;
}

function without(keys: Keys, name: string): Keys {
  const { [name]: _gone, ...rest } = keys;
  return rest;
}

/** Each item changed; what is no list, and items that are not of the kind that is changed, as they stand. */
function each(list: unknown, change: (item: Keys) => unknown): unknown {
  return Array.isArray(list)
    ? list.map((item: unknown) => (isKeys(item) ? change(item) : item))
    : list;
}
