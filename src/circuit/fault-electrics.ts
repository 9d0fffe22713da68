/** What a fault is to the solver: resistances made worse, something joined anew, another target. */
import { effectsOf, type Fault, type PartMode, type TargetMode } from './circuit.ts';
import type { Worse } from './rig.ts';

/** Of a fault that does something else: its rig is its own. */
export const NOTHING_WORSE: readonly Worse[] = [];

const worsened = new WeakMap<Fault, readonly Worse[]>();

/** The resistances that a fault makes worse, where it does nothing else; else nothing. */
export function worseOf(fault: Fault | null): readonly Worse[] {
  if (fault === null) return NOTHING_WORSE;
  const known = worsened.get(fault);
  if (known) return known;
  const worse = effectsOf(fault).map((effect): Worse | null => {
    if (effect.kind === 'wire-resistive') return { key: `wire.${effect.wire}`, more: effect.ohms };
    if (effect.kind === 'contact-resistive')
      return { key: `contact.${effect.terminal}`, more: effect.ohms };
    if (effect.kind === 'part' && effect.mode === 'contact-resistive')
      return { key: `${effect.part}.ohms`, more: effect.size };
    return null;
  });
  const made = worse.every((one) => one !== null) ? worse : NOTHING_WORSE;
  worsened.set(fault, made);
  return made;
}

const blowing = new WeakMap<Fault, boolean>();

/** Whether a fuse may blow by it. */
export function canBlow(fault: Fault | null): fault is Fault {
  if (fault === null) return false;
  const can = blowing.get(fault) ?? joinsAnew(fault);
  blowing.set(fault, can);
  return can;
}

/**
 * Less current flows through a worse contact or a broken wire, with another target, or in a part in which something is
 * missing or stands at one end: only what is joined anew blows a fuse.
 */
function joinsAnew(fault: Fault): boolean {
  return effectsOf(fault).some((effect) =>
    effect.kind === 'part'
      ? JOINING.includes(effect.mode)
      : effect.kind === 'wire-short' || effect.kind === 'wires-swapped',
  );
}
const JOINING: readonly PartMode[] = ['shorted', 'shorted-turns', 'leads-swapped'];

/** What a fault of a ring does to the signal: nothing passes, as without it; too little passes; pulses are uneven. */
const ACTS_AS: Partial<Readonly<Record<TargetMode, TargetMode>>> = {
  reversed: 'missing',
  weak: 'gap-wide',
  runout: 'damaged',
};

/** The fault is this one of the target, or acts on the signal as this one does. */
export function isTarget(fault: Fault | null, mode: TargetMode): boolean {
  return effectsOf(fault).some(
    (one) => one.kind === 'target' && (ACTS_AS[one.mode] ?? one.mode) === mode,
  );
}

/** The signal comes at the wrong place of the turn. */
export function shiftsTiming(fault: Fault | null): boolean {
  return (
    isTarget(fault, 'displaced') ||
    effectsOf(fault).some((one) => one.kind === 'part' && one.mode === 'leads-swapped')
  );
}
