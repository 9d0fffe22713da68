/** The state of a drill: nothing but the fold of its events. */
import { AT_THE_START } from '../suspects/optimum.ts';
import { type Situation, situationAfter } from '../suspects/test-cost.ts';
import type {
  CautionPassedOver,
  DrillDiagnosed,
  DrillEvent,
  DrillMeasured,
  DrillOpened,
  DrillRevealed,
  TestStopped,
} from './drill-events.ts';
import { knownTest } from './drill-test.ts';
import { type Level, levelNamed } from './levels.ts';

export interface Drill {
  readonly status: 'open' | 'diagnosed' | 'revealed';
  readonly opened: DrillOpened;
  readonly level: Level;
  readonly readings: readonly DrillMeasured[];
  readonly stopped: readonly TestStopped[];
  readonly passedOver: readonly CautionPassedOver[];
  /** Minutes at the vehicle by the cost model. */
  readonly minutes: number;
  readonly situation: Situation;
  readonly acknowledged: { readonly state: string; readonly ids: readonly string[] };
  /** Step of the procedure to be followed next; null without a procedure. */
  readonly step: string | null;
  readonly diagnosed: DrillDiagnosed | null;
  readonly revealed: DrillRevealed | null;
  /** Milliseconds on the clock, over all sittings. */
  readonly clockMs: number;
  /** `elapsed` of the event before, in the present sitting. */
  readonly lastElapsed: number;
  readonly events: readonly DrillEvent[];
}

/** The state after the first event. */
export function openDrill(opened: DrillOpened): Drill {
  return {
    status: 'open',
    opened,
    level: levelNamed(opened.level),
    readings: [],
    stopped: [],
    passedOver: [],
    minutes: 0,
    situation: AT_THE_START,
    acknowledged: { state: '', ids: [] },
    step: opened.procedure?.start ?? null,
    diagnosed: null,
    revealed: null,
    clockMs: 0,
    lastElapsed: opened.elapsed,
    events: [opened],
  };
}

/** The state after one more event. */
export function evolveDrill(before: Drill, event: DrillEvent): Drill {
  const drill = { ...before, ...clockAfter(before, event), events: [...before.events, event] };
  switch (event.type) {
    case 'drill-cautions-read': {
      const same = drill.acknowledged.state === event.state ? drill.acknowledged.ids : [];
      const ids = [...new Set([...same, ...event.cautions.map(({ id }) => id)])];
      return { ...drill, acknowledged: { state: event.state, ids } };
    }
    case 'drill-caution-passed-over':
      return { ...drill, passedOver: [...drill.passedOver, event] };
    case 'drill-measured':
      return {
        ...drill,
        // The engine begins to turn anew for each test.
        acknowledged:
          event.test.setup.state === 'cranking' ? { state: '', ids: [] } : drill.acknowledged,
        readings: [...drill.readings, event],
        minutes: drill.minutes + event.minutes,
        situation: situationAfter(knownTest(event.test, drill.opened.meter, null), drill.situation),
        step: event.go ?? drill.step,
      };
    case 'drill-test-stopped':
      return { ...drill, stopped: [...drill.stopped, event] };
    case 'drill-step-followed':
      return { ...drill, minutes: drill.minutes + event.minutes, step: event.go };
    case 'drill-diagnosed':
      return { ...drill, status: 'diagnosed', diagnosed: event };
    case 'drill-revealed':
      return { ...drill, status: 'revealed', revealed: event };
    case 'drill-opened':
    case 'drill-noted':
    case 'drill-resumed':
    case 'recovered':
    case 'segment-continued':
      return drill;
  }
}

/** A drill from its events; null when the first one opens none. */
export function replayDrill(events: readonly DrillEvent[]): Drill | null {
  const [first, ...rest] = events;
  return first?.type === 'drill-opened' ? rest.reduce(evolveDrill, openDrill(first)) : null;
}

/** Each sitting counts its own milliseconds from its first event on. */
function clockAfter(
  { clockMs, lastElapsed }: Drill,
  { type, elapsed }: DrillEvent,
): Pick<Drill, 'clockMs' | 'lastElapsed'> {
  if (type === 'drill-resumed' || type === 'recovered') return { clockMs, lastElapsed: elapsed };
  return { clockMs: clockMs + Math.max(0, elapsed - lastElapsed), lastElapsed: elapsed };
}
