/**
 * Drills of the time when drills had events of their own, in the form of sessions. Of what comes in nothing is believed,
 * as in `upgrade-events.ts`.
 */
import { emptyJob } from '../procedure/job.ts';
import { SESSION_FORMAT } from '../session/events.ts';
import {
  AT_HAND_ONCE,
  FIRST_RULES,
  type Upgraded,
  unknownType,
  withCapture,
} from './early-events.ts';
import type { StoredEvent } from './event-line.ts';
import { each, isKeys, type Keys, looseKeysOf, without } from './loose-keys.ts';

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

/** A drill of the time when drills had events of their own. Its events are upgraded in their order. */
export class EarlyDrill {
  private readonly circuit: Keys;
  private readonly steps: Keys;
  private readonly meter: Keys;
  /** Where the procedure stood. */
  private step: unknown;

  constructor(opened: StoredEvent) {
    this.circuit = looseKeysOf(opened['circuit']);
    this.meter = looseKeysOf(opened['meter']);
    const procedure = looseKeysOf(opened['procedure']);
    this.steps = looseKeysOf(procedure['steps']);
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
        return unknownType(event);
    }
  }

  private opened(event: StoredEvent): Keys {
    const { program, id, student, level, seed, commitment, assignment } = event;
    const { complaint, earlierRepair, circuit, procedure, meter } = event;
    const none = emptyJob('');
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
      // Early drills took it for granted.
      job: {
        ...none,
        vehicle: { ...none.vehicle, drive: 'combustion' },
        complaint,
        earlierRepairs,
      },
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
    return Array.isArray(faults) ? faults.map(looseKeysOf) : [];
  }

  /** What was measured for a step answers it where it led on; all else is a test of the student's own. */
  private measured(event: StoredEvent): [type: string, keys: Keys] {
    const { step, go, found, capture } = event;
    const shown = looseKeysOf(event['shown']);
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
    const asked = looseKeysOf(this.stepNamed(step));
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
      ? looseKeysOf(this.steps[name])
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
  return Array.isArray(outcomes) ? outcomes.map(looseKeysOf) : [];
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
