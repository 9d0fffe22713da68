/** What stands behind the pins of a module, as elements. */
import type { ModulePart } from './circuit.ts';
import { GROUND } from './netlist.ts';
import type { Draw, PartEffect, Plan } from './plan.ts';

/** A module's output has its own divider and discharge resistor; it keeps a dead output at 0 V. Common practice, no source. */
const BLEED_OHMS = 100_000;
/** A battery-fed output that is low loses across its worn switch what is missing of this. Common practice, no source. */
const WORN_SWITCH_VOLTS = 12;
/** Two pins of a module on the same copper. */
const JOINT_OHMS = 0.002;

/** Adds the plugged module; without power its outputs and rails are at 0 V. */
export function addModule(
  plan: Plan,
  module: ModulePart,
  powered: boolean,
  own: PartEffect | null,
): void {
  const inside = (pin: string): number => plan.node(`${module.name}.${pin}.pin`);
  const hurt = (mode: PartEffect['mode'], pin: string) => own?.mode === mode && own.at === pin;
  for (const pin of module.inside) {
    const at = inside(pin.name);
    const key = `${module.name}.${pin.name}`;
    const { reference, pull, ground } = pin;
    if (pin.joinedTo !== null) {
      const twin = inside(pin.joinedTo);
      plan.makers.push(() => ({ kind: 'resistor', a: at, b: twin, ohms: JOINT_OHMS }));
    }
    if (reference) {
      plan.makers.push(() => ({ kind: 'resistor', a: at, b: GROUND, ohms: BLEED_OHMS }));
      if (powered && !hurt('reference-dead', pin.name)) {
        const share = hurt('reference-low', pin.name) ? own!.size : null;
        const { volts, series, limit } = reference;
        const from = volts === 'battery' ? plan.node('battery.positive') : GROUND;
        plan.makers.push((draw) => {
          const full = volts === 'battery' ? 0 : draw.value(`${key}.volts`, volts);
          const whole = volts === 'battery' ? WORN_SWITCH_VOLTS : full;
          return {
            kind: 'regulator',
            from,
            out: at,
            volts: share ? full - whole * (1 - draw.size(share)) : full,
            ohms: draw.value(`${key}.series`, series),
            limitAmps: draw.value(`${key}.limit`, limit),
          };
        });
      }
    }
    if (pull && !hurt('pull-missing', pin.name)) {
      const { to, ohms } = pull;
      const resistance = (draw: Draw) => draw.value(`${key}.pull`, ohms);
      if (to.kind === 'volts')
        plan.makers.push((draw) => ({
          kind: 'emf',
          plus: at,
          minus: GROUND,
          volts: powered ? draw.value(`${key}.bias`, to.volts) : 0,
          ohms: resistance(draw),
        }));
      else {
        const rail =
          to.kind === 'pin'
            ? inside(to.pin)
            : to.kind === 'battery' && powered
              ? plan.node('battery.positive')
              : GROUND;
        plan.makers.push((draw) => ({ kind: 'resistor', a: at, b: rail, ohms: resistance(draw) }));
      }
    }
    if (ground && !hurt('ground-open', pin.name))
      plan.makers.push((draw) => ({
        kind: 'resistor',
        a: at,
        b: GROUND,
        ohms: draw.value(`${key}.ground`, ground),
      }));
  }
}
