/** What any front end does once the disk has refused: goes on in another folder, with what a drill had in hand. */
import type { DrillAction } from '../drill/drill-act.ts';
import type { DrillPerformed } from '../drill/drill-desk.ts';
import type { Performed } from '../session/driver.ts';
import type { OpenedSession } from './app-services.ts';

/** Leaves a session: saves what the disk refused where it can be, pauses what is open, closes the file. */
export function leaveSession(opened: OpenedSession): void {
  const { driver } = opened;
  if (driver.unsaved()) carryOnIn(opened, null);
  if (driver.session().status === 'open' && !driver.isElsewhere())
    driver.perform({ type: 'pause' });
  driver.close();
}

/** Begins the next part of the session in `folder`, null for wherever it can be, and saves there what was refused. */
export function carryOnIn({ driver, drill }: OpenedSession, folder: string | null): Performed {
  return drill ? asPerformed(driver, drill.carryOnIn(folder)) : driver.continueIn(folder);
}

/** An action at the bench of a drill, told as a command is. */
export function actAt({ driver, drill }: OpenedSession, action: DrillAction): Performed {
  if (!drill) throw new Error('act-at: this session is not a drill');
  return asPerformed(driver, drill.act(action));
}

function asPerformed(driver: OpenedSession['driver'], { refused }: DrillPerformed): Performed {
  if (!refused) return { ok: true, session: driver.session() };
  const { words, fix, disk } = refused;
  return { ok: false, words, fix, disk, refusal: null };
}
