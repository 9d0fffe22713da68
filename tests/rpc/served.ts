/** A session or a drill served in this process, in memory; every answer is held against the published schemas. */

import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { expect } from 'vitest';
import { beginDrill } from '../../src/commands/drill/open-drill.ts';
import { type Desk, findSubject } from '../../src/commands/session/open-desk.ts';
import { beginSession } from '../../src/commands/session/open-session.ts';
import { levelNamed } from '../../src/drill/levels.ts';
import type { Disk } from '../../src/log/disk.ts';
import { emptyJob, type Job } from '../../src/procedure/job.ts';
import type { LevelName, SessionEvent } from '../../src/session/events.ts';
import { isProblem } from '../../src/source/problem.ts';
import type { OpenedSession } from '../../src/ui/app-services.ts';
import { rpcServer } from '../../src/ui/rpc/rpc-server.ts';
import { libraryDesk } from '../library-desk.ts';

const ajv = new Ajv({
  strict: true,
  strictTypes: false,
  strictRequired: false,
  allowUnionTypes: true,
  discriminator: true,
});
for (const word of ['defaultSnippets', 'x-choices']) ajv.addKeyword(word);
for (const name of ['session-event', 'rpc-answer', 'rpc'])
  ajv.addSchema(JSON.parse(readFileSync(`docs/schema/${name}.schema.json`, 'utf8')));

/** The library, with sessions in memory. */
export const DESK = await libraryDesk();

/** As far as the tests look into it; its shape is the schema's affair. */
export interface Told {
  readonly [key: string]: unknown;
  readonly state: ToldState;
  readonly events: readonly SessionEvent[];
}
export interface ToldState {
  readonly [key: string]: unknown;
  readonly status: string;
  readonly step: {
    readonly [key: string]: unknown;
    readonly id: string;
    readonly kind: string;
    readonly test: Readonly<Record<string, unknown>>;
    readonly outcomes: readonly Readonly<Record<string, unknown>>[];
    readonly shows: string | null;
  };
  readonly cautions: readonly {
    readonly id: string;
    readonly word: string;
    readonly text: string;
  }[];
}

/** What comes back of a call: its result, or the error with code and data. */
export interface Answered {
  readonly result?: Readonly<Record<string, unknown>>;
  readonly error?: {
    readonly code: number;
    readonly message: string;
    readonly data?: Readonly<Record<string, unknown>>;
  };
}

export interface Served {
  readonly opened: OpenedSession;
  readonly call: (method: string, params?: object) => Promise<Answered>;
  /** Of a call that has to succeed. */
  readonly result: (method: string, params?: object) => Promise<Told>;
  /** Of a call that has to be refused: the code of the data where there is one, else the standard's. */
  readonly refusal: (method: string, params?: object) => Promise<string | number>;
  readonly line: (text: string) => Promise<string | null>;
  readonly lastEvent: () => SessionEvent;
}

/** A server over an open session. */
export function served(opened: OpenedSession): Served {
  const bug = (error: unknown) => {
    throw error;
  };
  const server = rpcServer(
    {
      program: 'ohmward test',
      kind: 'session',
      procedures: () => [],
      sheet: () => ({ terminals: [], parts: [], values: [], faults: [] }),
      bug,
      begin: null,
    },
    opened,
  );
  let sent = 0;
  const call = async (method: string, params?: object): Promise<Answered> => {
    sent += 1;
    const message = { jsonrpc: '2.0', id: sent, method, ...(params ? { params } : {}) };
    const line = await server.answer(JSON.stringify(message));
    const answer = JSON.parse(line!) as Answered & { readonly id: number };
    expect(answer.id).toBe(sent);
    fits('rpc-answer.schema.json', answer);
    if (answer.result) {
      fits(`rpc-answer.schema.json#/definitions/results/properties/${method}`, answer.result);
      for (const event of (answer.result['events'] ?? []) as readonly object[])
        fits('session-event.schema.json', { ...event, prev: null });
    }
    return answer;
  };
  return {
    opened,
    call,
    result: async (method, params) => {
      const { result, error } = await call(method, params);
      if (error) throw new Error(`${method}: ${JSON.stringify(error)}`);
      return result as Told;
    },
    refusal: async (method, params) => {
      const { error } = await call(method, params);
      if (!error) throw new Error(`${method} was not refused`);
      return (error.data?.['code'] as string | undefined) ?? error.code;
    },
    line: server.answer,
    lastEvent: () => opened.driver.session().events.at(-1)!,
  };
}

function fits(schema: string, value: unknown): void {
  const validate = ajv.getSchema(schema);
  if (!validate) throw new Error(`no schema ${schema}`);
  const fitting = validate(value);
  if (!fitting) throw new Error(`${ajv.errorsText(validate.errors)}\n${JSON.stringify(value)}`);
}

/** A session that a program begins; on a simulated vehicle where a fault is named. */
export function newSession(
  subject: string,
  fault: string | null,
  { job = emptyJob('does not start'), desk = DESK }: { job?: Job; desk?: Desk } = {},
): Served {
  const found = findSubject(desk, subject);
  if (isProblem(found)) throw new Error(found.problem);
  const bench = fault === null ? null : { fault, seed: 1 };
  const opened = beginSession(desk, { subject: found, job, bench, by: 'program' });
  if (isProblem(opened)) throw new Error(opened.problem);
  return served(opened);
}

/** A drill that a program begins. */
export function newDrill(subject: string, level: LevelName, seed: number, desk = DESK): Served {
  const opened = beginDrill(desk, {
    subject,
    level: levelNamed(level),
    seed,
    student: 'Ada Example',
    assignment: null,
    by: 'program',
  });
  if (isProblem(opened)) throw new Error(opened.problem);
  return served(opened);
}

/** The desk over a disk that is full when told to be. */
export function fillable(): { readonly desk: Desk; readonly fill: (isFull: boolean) => void } {
  let isFull = false;
  const disk: Disk = {
    ...DESK.disk,
    write: (file, bytes) => {
      if (isFull) throw Object.assign(new Error('full'), { code: 'ENOSPC' });
      return DESK.disk.write(file, bytes);
    },
  };
  return {
    desk: { ...DESK, disk },
    fill: (full) => {
      isFull = full;
    },
  };
}

export const PERSON = 'R. Example';

/** Acknowledges what is pending, one caution a call. */
export async function acknowledge(
  { result }: Served,
  cautions: readonly { readonly id: string }[],
  of: object = {},
): Promise<void> {
  for (const { id } of cautions)
    await result('acknowledge', { caution: id, person: PERSON, ...of });
}

/** Answers with what the simulated vehicle shows, up to a step of that id or a conclusion. */
export async function goTo(one: Served, wanted: string): Promise<ToldState> {
  for (let count = 0; count < 100; count += 1) {
    const { state } = await one.result('state');
    if (state.step.id === wanted || state.step.kind === 'conclude') return state;
    await acknowledge(one, state.cautions);
    await one.result(state.step.kind === 'act' ? 'done' : 'take');
  }
  throw new Error(`never came to ${wanted}`);
}
