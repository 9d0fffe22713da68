/** A drill in hand: its session, driven by what the student does at the simulated vehicle. Screens, dialogue, files and programs act through it. */
import type { Model } from '../circuit/model.ts';
import type { Command } from '../session/command.ts';
import type { Performed, SessionDriver } from '../session/driver.ts';
import { type Debrief, debriefOf } from './debrief.ts';
import {
  type DrillAction,
  type DrillRefusal,
  drillCommands,
  isToReveal,
  levelOfSession,
  revealCommand,
} from './drill-act.ts';
import type { DrillWorld } from './drill-world.ts';
import type { Level } from './levels.ts';

/** A drill that can be acted on; the vehicle's answers stay hidden in it. */
export interface DrillDesk {
  readonly level: Level;
  /** Does it, and saves before it shows. */
  readonly act: (action: DrillAction) => DrillPerformed;
  /** Goes on in another folder after a disk problem, and ends there what the action began that the disk refused. */
  readonly carryOnIn: (folder: string | null) => DrillPerformed;
  /** Brings the answer of a drill that was cut off between its diagnosis and the reveal; nothing otherwise. */
  readonly finish: () => DrillPerformed;
  /** Null until the answer is revealed. */
  readonly debrief: () => Debrief | null;
}

/** Why it had no effect, or only one that says so; `disk`: the disk refused, and nothing has changed. */
export interface DrillPerformed {
  readonly refused:
    | (Omit<DrillRefusal, 'code'> & {
        readonly code: DrillRefusal['code'] | 'disk';
        readonly disk: boolean;
      })
    | null;
}

const DONE: DrillPerformed = { refused: null };

/** A desk over the session of a drill; null for a session that is none. `model` is the circuit's as everybody knows it. */
export function drillDesk(
  driver: SessionDriver,
  world: DrillWorld | null,
  model: Model | null,
): DrillDesk | null {
  const level = levelOfSession(driver.session());
  if (!level || !world || !model) return null;
  let known: Debrief | null = null;
  /** What the bench says of the action that the disk refused, once it is saved. */
  let heldBack: DrillPerformed = DONE;

  const perform = (commands: readonly Command[]): DrillPerformed => {
    for (const command of commands) {
      const done = driver.perform(command);
      if (!done.ok) return notDone(done);
    }
    return DONE;
  };
  /** Weighing every reading takes a second or two, so it is done once. */
  const debrief = (): Debrief => {
    known ??= debriefOf(driver.session(), world);
    return known;
  };
  const finish = (): DrillPerformed =>
    isToReveal(driver.session()) ? perform([revealCommand(world, debrief())]) : DONE;
  return {
    level,
    finish,
    act: (action) => {
      const { commands, refused } = drillCommands(driver.session(), action, world, model);
      const performed = perform(commands);
      const said = refused ? { refused: { ...refused, disk: false } } : DONE;
      heldBack = performed.refused?.disk ? said : DONE;
      if (performed.refused) return performed;
      return refused ? said : finish();
    },
    carryOnIn: (folder) => {
      const moved = driver.continueIn(folder);
      if (!moved.ok) return notDone(moved);
      const said = heldBack;
      heldBack = DONE;
      return said.refused ? said : finish();
    },
    debrief: () => (driver.session().revealed ? debrief() : null),
  };
}

function notDone({ words, fix, refusal, disk }: Extract<Performed, { ok: false }>): DrillPerformed {
  return { refused: { code: refusal?.code ?? 'disk', words, fix, disk } };
}
