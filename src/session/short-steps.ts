/** How the location of a short is measured, in sentences; and which shorts there are to be placed. */
import type { Circuit } from '../circuit/circuit.ts';
import type { TerminalId } from '../circuit/test.ts';
import { terminalWords } from '../procedure/bind-text.ts';
import { undoWords } from '../procedure/test-words.ts';
import type { SuspectRow } from './advisor.ts';
import { mustBeOff, POSTS, placesOn, type ShortStretch, testOfShort } from './place-short.ts';
import type { Session } from './session.ts';
import { standingSetup } from './standing-setup.ts';

/** What is done, in order: first what the last test left on the wires, which would carry some of the current. */
export function shortSteps(session: Session, stretch: ShortStretch): string[] {
  const { circuit, job } = session.opened;
  if (!circuit) return [];
  const at = (id: TerminalId) => {
    const words = terminalWords(id, job, circuit);
    return id.startsWith('battery.') ? words : `the ${words}`;
  };
  const test = testOfShort(circuit, stretch, 'from');
  const [lamp, lead] = test.setup.bridges;
  const undo = undoWords(standingSetup(session), test, job, circuit);
  const parts = mustBeOff(circuit, stretch).map(
    (name) => circuit.parts.find((part) => part.name === name)?.words ?? name,
  );
  return [
    ...(undo === '' ? [] : [undo]),
    `Key off. Unplug everything on both wires: ${parts.join(', ')}. Anything left plugged in draws current of its own.`,
    ...(lead ? [`A fused lead from ${at(lead.from)} to ${at(lead.to)}.`] : []),
    `A fused lead from ${at(lamp!.from)} through a 12 V lamp of 2 or 3 W, which draws 0.1 to 0.3 A, to ${at(stretch.from)}.`,
    `Meter on millivolts along the wire, from ${at(stretch.from)} to ${at(stretch.to)}: tips on the terminals themselves, not on the lamp's clip. That is the first drop.`,
    `Then move the lamp to ${at(stretch.to)}, meter as before: the second drop.`,
    "An ohmmeter can't do this: the whole wire is about 0.1 ohm, as much as the meter leads.",
  ];
}

/** A short that can be placed: the wire, what it touches, and how likely that is. */
export interface ShortChoice extends Pick<ShortStretch, 'wire' | 'touches'> {
  readonly chance: number;
}

/** Shorts of the sensor's wires, the likeliest first; without suspects all are alike. */
export function shortsOf(circuit: Circuit, rows: readonly SuspectRow[]): ShortChoice[] {
  const chances = new Map(
    rows.flatMap(({ faults }) => faults.map(({ id, chance }) => [id, chance])),
  );
  const found = new Map<string, ShortChoice>();
  for (const { id, effect } of circuit.faults) {
    if (effect.kind !== 'wire-short') continue;
    const touches = typeof effect.to === 'object' ? wholeOf(circuit, effect.to.wire) : effect.to;
    const wire = wholeOf(circuit, effect.wire);
    if (placesOn(circuit, wire).length === 0) continue;
    const isPost = (POSTS as readonly string[]).includes(touches);
    if (!isPost && placesOn(circuit, touches).length === 0) continue;
    const key = `${wire} ${touches}`;
    const chance = (chances.get(id) ?? 0) + (found.get(key)?.chance ?? 0);
    found.set(key, { wire, touches, chance });
  }
  return [...found.values()].sort((a, b) => b.chance - a.chance);
}

function wholeOf({ wires }: Circuit, name: string): string {
  return wires.find((one) => one.name === name)?.of ?? name;
}
