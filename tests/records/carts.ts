/** Carts at work for tests of the shared database: each writes session after session and shares the one it is at. */
import { appendFileSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { sessionFileName } from '../../src/files/safe-name.ts';
import { sealEvent } from '../../src/log/event-line.ts';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { sessionPaths, shareSessions } from '../../src/records/shared/share-folder.ts';

const EVENTS_PER_SESSION = 50;
/** Every so many events a cart shares the session that it is at. */
const EVENTS_PER_ROUND = 5;
const OPENED_AT = '2031-05-06T09:00:00Z';

export interface Cart {
  readonly name: string;
  /** By session the lines that were written, which are what must be in the database in the end. */
  readonly written: ReadonlyMap<string, readonly string[]>;
  /** Writes so many events. A database that is away never stops it: what could not be sent waits for a later round. */
  readonly work: (events: number) => Promise<void>;
  /** Shares all sessions, and waits so long for a database that is away. */
  readonly share: (patienceMs: number) => ReturnType<typeof shareSessions>;
}

/** A cart with a folder of its own in `home`; `onEvent` hears of each event written. */
export function startCart(name: string, home: string, url: string, onEvent: () => void): Cart {
  const folder = join(home, name);
  mkdirSync(folder);
  const written = new Map<string, string[]>();
  const shareThese = (paths: readonly string[], patienceMs: number) => {
    const patience = { patienceMs, pausesMs: [20, 100] };
    return shareSessions({ disk: nodeDisk, url, paths, cart: name, patience });
  };
  /** The event of that place in all of the cart's work, sealed behind the one before it. */
  const write = (at: number, prev: string | null): { path: string; hash: string } => {
    const session = Math.floor(at / EVENTS_PER_SESSION);
    const seq = (at % EVENTS_PER_SESSION) + 1;
    const id = `${name}-session-${session}`;
    const time = { at: OPENED_AT, elapsed: at };
    const event =
      seq === 1
        ? { type: 'session-opened', id, ...time }
        : { type: 'note-added', step: 's', text: `Ω ${name} ${at} '"\\ \u0000`, ...time };
    const { line, hash } = sealEvent(event, seq, seq === 1 ? null : prev);
    const number = (session + 1).toString(16).padStart(8, '0');
    const path = join(folder, sessionFileName(OPENED_AT, 'x', number));
    appendFileSync(path, `${line}\n`);
    written.set(id, [...(written.get(id) ?? []), line]);
    onEvent();
    return { path, hash };
  };
  return {
    name,
    written,
    work: async (events) => {
      let prev: string | null = null;
      for (let at = 0; at < events; at += 1) {
        const { path, hash } = write(at, prev);
        prev = hash;
        if (at % EVENTS_PER_ROUND === 0) await shareThese([path], 0);
      }
    },
    share: (patienceMs) => {
      const listed = sessionPaths(folder);
      return shareThese('paths' in listed ? listed.paths : [], patienceMs);
    },
  };
}

/** A harm that is done so many times, and how. */
export interface Harm {
  readonly times: number;
  /** The times it was done now: none where there was nothing to harm. */
  readonly done: () => Promise<number>;
}

/**
 * Does all harms, each spread evenly over the work, and what is left of them once the work is done: its progress is from
 * 0 to 1. Resolves to the times that each was done.
 */
export async function doHarms(harms: readonly Harm[], progress: () => number): Promise<number[]> {
  const done = harms.map(() => 0);
  while (harms.some(({ times }, which) => done[which]! < times)) {
    let isIdle = true;
    for (const [which, harm] of harms.entries()) {
      if (done[which]! >= Math.ceil(harm.times * progress())) continue;
      const now = await harm.done();
      done[which]! += now;
      if (now > 0) isIdle = false;
    }
    if (isIdle) await new Promise((resolve) => setTimeout(resolve, 5));
  }
  return done;
}
