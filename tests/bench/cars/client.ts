/** A session of the program in this process, spoken to through its JSON-RPC front end as another program would. */

import type { Circuit } from '../../../src/circuit/circuit.ts';
import type { Test } from '../../../src/circuit/test.ts';
import { type Desk, findSubject, linkSubject } from '../../../src/commands/session/open-desk.ts';
import { beginSession } from '../../../src/commands/session/open-session.ts';
import { STANDARD_SETTINGS } from '../../../src/files/settings.ts';
import { emptyJob } from '../../../src/procedure/job.ts';
import { isProblem } from '../../../src/source/problem.ts';
import { testEntries } from '../../../src/suspects/test-entries.ts';
import { rpcServer } from '../../../src/ui/rpc/rpc-server.ts';
import { libraryDesk } from '../../library-desk.ts';

/** The state, as far as the bench looks into it; docs/formats.md has all of it. */
export interface State {
  readonly status: string;
  readonly minutes: number;
  readonly step: StepSeen | null;
  readonly cautions: readonly CautionSeen[];
  readonly path: readonly { readonly step: string }[];
  readonly diagnosis: DiagnosisSeen | null;
  readonly concluded: { readonly faults: readonly string[]; readonly proven: boolean } | null;
}
export interface StepSeen {
  readonly id: string;
  readonly kind: string;
  readonly title: string;
  readonly cannot?: boolean;
  readonly faults?: readonly string[];
  /** How the scope is set, and from where on waves are full. */
  readonly scope?: string | null;
  /** At a conclusion: a test that is better than to accept it, or what the readings speak for instead. */
  readonly first?: { readonly test: Test } | null;
  readonly instead?: { readonly words: string; readonly faults: readonly string[] } | null;
  /** An answer that its repeats contradict, to be taken back. */
  readonly overturned?: { readonly place: number } | null;
  readonly outcomes?: readonly {
    readonly name: string;
    readonly looks?: readonly string[];
  }[];
  readonly test?: {
    readonly setup: Test['setup'];
    readonly probe: Test['probe'] | null;
    readonly wiggle?: true;
    readonly unit: string | null;
    readonly level?: string;
  };
}
export interface CautionSeen {
  readonly id: string;
}
export interface DiagnosisSeen {
  readonly leading: readonly { readonly repair: string; readonly chance: number }[];
  readonly explained: boolean;
  /** Told by programs that know it: the car is not as described. */
  readonly misfit?: unknown;
  /** How a search goes on for a fault that comes and goes and does not come; told by programs that know it. */
  readonly asleep?: {
    readonly first: { readonly test: Test } | null;
    readonly end: string | null;
  } | null;
}
export interface ProposalSeen {
  readonly id: string;
  readonly test: Test;
  readonly needs: readonly string[];
}

export interface Refused {
  readonly code: string;
  readonly message: string;
}

/** What comes back of a call. */
export interface Reply {
  readonly state?: State;
  readonly [key: string]: unknown;
}

export interface Client {
  /** The result; throws where the call is refused. */
  readonly call: (method: string, params?: object) => Promise<Reply>;
  /** The result, or the code of the refusal. */
  readonly tried: (method: string, params?: object) => Promise<Reply | Refused>;
  /** Milliseconds spent in the program so far. */
  readonly spentMs: () => number;
}

let desk: Promise<Desk> | null = null;

/** The library, with sessions in memory. */
export function sharedDesk(): Promise<Desk> {
  desk ??= libraryDesk('ohmward bench');
  return desk;
}

/** A circuit of the library. */
export async function libraryCircuit(name: string): Promise<Circuit> {
  const circuit = (await sharedDesk()).library.circuits.get(name);
  if (!circuit) throw new Error(`cars: the library has no circuit "${name}"`);
  return circuit;
}

/** Every test that the program knows on a procedure, or on a circuit in free order: the steps and the standard tests. */
export async function testsOn(subject: string): Promise<Test[]> {
  const opening = await sharedDesk();
  const found = findSubject(opening, subject);
  if (isProblem(found)) throw new Error(found.problem);
  const linked = linkSubject(opening, found, emptyJob('').vehicle.drive);
  if (isProblem(linked)) throw new Error(linked.problem);
  const { circuit, procedure } = linked;
  if (!circuit) throw new Error(`cars: ${subject} is on no circuit`);
  return testEntries(circuit, procedure, STANDARD_SETTINGS.meter).map(({ test }) => test);
}

/** Begins a session on a procedure, or on a circuit in free order. */
export async function beginClient(subject: string): Promise<Client> {
  const opening = await sharedDesk();
  const found = findSubject(opening, subject);
  if (isProblem(found)) throw new Error(found.problem);
  const job = emptyJob('does not run as it should');
  const opened = beginSession(opening, { subject: found, job, bench: null, by: 'program' });
  if (isProblem(opened)) throw new Error(opened.problem);
  const server = rpcServer(
    {
      program: 'ohmward bench',
      kind: 'session',
      procedures: () => [],
      sheet: () => ({ terminals: [], parts: [], values: [], faults: [] }),
      bug: (error) => {
        throw error;
      },
      begin: null,
    },
    opened,
  );
  let sent = 0;
  let ms = 0;
  const tried = async (method: string, params: object = {}): Promise<Reply | Refused> => {
    sent += 1;
    const start = performance.now();
    const line = await server.answer(JSON.stringify({ jsonrpc: '2.0', id: sent, method, params }));
    ms += performance.now() - start;
    const answer: Answer = JSON.parse(line ?? '{}');
    if (answer.result) return answer.result;
    const { error } = answer;
    return {
      code: error?.data?.code ?? String(error?.code),
      message: `${method}: ${error?.message ?? 'no answer'}`,
    };
  };
  return {
    tried,
    spentMs: () => ms,
    call: async (method, params) => {
      const reply = await tried(method, params);
      if (isRefused(reply)) throw new Error(`${reply.message} (${reply.code})`);
      return reply;
    },
  };
}

interface Answer {
  readonly result?: Reply;
  readonly error?: {
    readonly code: number;
    readonly message: string;
    readonly data?: { readonly code?: string };
  };
}

export function isRefused(reply: Reply | Refused): reply is Refused {
  return typeof reply.message === 'string' && typeof reply['code'] === 'string';
}
