/** What the methods of a session are made of. */
import type { OpenedSession } from '../app-services.ts';
import type { Call as SentCall } from './generated/rpc.mjs';
import type { Outcome } from './json-rpc.ts';

/** Name of a call that a program may send. */
export type MethodName = SentCall['method'];

/** Parameters of a method, as its schema has them. */
export type Params<M extends MethodName> = NonNullable<
  Extract<SentCall, { readonly method: M }>['params']
>;

/** A call whose parameters fit its method. */
export type Call<M extends MethodName = MethodName> = {
  readonly [K in M]: { readonly method: K; readonly params: Params<K> };
}[M];

/** Methods that need no session. */
export const DESK_METHODS = ['hello', 'procedures', 'sheet', 'begin'] as const;
export type DeskMethod = (typeof DESK_METHODS)[number];

/** Name of a call on the session in hand. */
export type SessionMethod = Exclude<MethodName, DeskMethod>;

/** One call on a session: where it is allowed, and what it does. */
export interface Method<M extends SessionMethod> {
  /** The vehicle of a drill answers by itself: what a person would say of another one has no place there. */
  readonly where: 'anywhere' | 'session' | 'drill';
  /** `program` is the name and version of this one. */
  readonly run: (
    opened: OpenedSession,
    params: Params<M>,
    program: string,
  ) => Outcome | Promise<Outcome>;
}

/** A table of calls: what each does, and where it is allowed. */
export type Methods<M extends SessionMethod = SessionMethod> = {
  readonly [K in M]: Method<K>;
};
