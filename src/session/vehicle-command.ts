/** What a simulated vehicle answered, as the command a person would give. */
import type { Step } from '../procedure/procedure.ts';
import type { Command } from './command.ts';
import type { VehicleAnswer } from './driver.ts';

/** The command that takes the answer over at `step`; null when it does not fit. */
export function vehicleCommand(step: Step, { answer }: VehicleAnswer): Command | null {
  switch (answer.kind) {
    case 'done':
      return { type: 'mark-done' };
    case 'outcome': {
      const { outcome, look } = answer;
      return { type: 'choose-outcome', outcome, ...(look ? { look } : {}) };
    }
    case 'reading': {
      if (step.kind !== 'measure') return null;
      const { typed, value } = answer;
      return { type: 'record-reading', typed, value };
    }
  }
}
