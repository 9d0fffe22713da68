/** A session for another program on the standard streams: calls in, answers out, nothing else on the output. */
import { safeText } from '../../source/safe-text.ts';
import type { OpenedSession } from '../../ui/app-services.ts';
import { leaveSession } from '../../ui/carry-on.ts';
import { answerUnread, CODES } from '../../ui/rpc/json-rpc.ts';
import { lineSplitter, type SplitLine } from '../../ui/rpc/line-splitter.ts';
import { type RpcServer, type RpcServices, rpcServer } from '../../ui/rpc/rpc-server.ts';
import { EXIT, type Io } from '../command.ts';
import { afterTheSession } from './after-the-session.ts';
import { elsewhereWords, tellUnsaved } from './finish.ts';
import type { Desk } from './open-desk.ts';

/** Bytes of the longest line: no call comes near. */
const LINE_MOST = 1_000_000;

/** Serves until the input ends or a signal comes; then the session is paused and saved. The exit code. */
export async function serveRpc(
  desk: Desk,
  services: RpcServices,
  begun: OpenedSession | null,
  io: Io,
): Promise<number> {
  const signal = awaitSignal();
  const server = rpcServer(services, begun, signal.goesOn);
  // Whoever reads the answers may be gone without a word.
  const unread = () => void leave(server, io);
  process.stdout.prependListener('error', unread);
  const code = await serveInput(server, signal, io);
  signal.off();
  process.stdout.off('error', unread);
  const saved = leave(server, io);
  const opened = server.opened();
  if (opened && !opened.preview && !opened.drill)
    await afterTheSession(opened, desk, { ...io, out: io.err });
  return saved ? code : EXIT.wrongInput;
}

/** Calls one after the other, and no more of the input than is being worked on. */
async function serveInput(server: RpcServer, signal: Signal, io: Io): Promise<number> {
  const splitter = lineSplitter(LINE_MOST);
  const answer = async (line: SplitLine) => {
    const answered = await answerTo(server, line);
    if (answered !== null) io.out(`${answered}\n`);
  };
  const input = process.stdin[Symbol.asyncIterator]();
  let ended = false;
  while (!ended && signal.code() === null) {
    const next = await Promise.race([input.next(), signal.came]);
    if (next === null) break;
    ended = next.done === true;
    const lines = next.done ? [splitter.end()] : splitter.push(next.value as Buffer);
    for (const line of lines) if (line && (await signal.goesOn())) await answer(line);
  }
  if (!ended) process.stdin.destroy();
  return signal.code() ?? EXIT.done;
}

type Signal = ReturnType<typeof awaitSignal>;

/** A signal that ends the program as the end of its input does. */
function awaitSignal() {
  let code: number | null = null;
  let tell: (came: null) => void = () => {};
  const came = new Promise<null>((resolve) => {
    tell = resolve;
  });
  const stopWith = (exit: number) => () => {
    code = exit;
    tell(null);
  };
  const listeners = [
    ['SIGTERM', stopWith(EXIT.done)],
    ['SIGINT', stopWith(EXIT.interrupted)],
  ] as const;
  for (const [name, listener] of listeners) process.once(name, listener);
  return {
    came,
    code: () => code,
    /** A signal is heard only where nothing is computed: between two calls of a flood it gets its turn. */
    goesOn: async () => {
      await new Promise((resolve) => setImmediate(resolve));
      return code === null;
    },
    off: () => {
      for (const [name, listener] of listeners) process.off(name, listener);
    },
  };
}

async function answerTo(server: RpcServer, line: SplitLine): Promise<string | null> {
  if ('text' in line) return line.text.trim() === '' ? null : server.answer(line.text);
  return line.odd === 'too-long'
    ? answerUnread(CODES.request, `a message has at most ${LINE_MOST} bytes`)
    : answerUnread(CODES.parse, 'this line is not UTF-8');
}

/** Pauses an open session and closes its file; false when not everything is saved. Where it went on by itself is told. */
function leave(server: RpcServer, io: Io): boolean {
  const opened = server.opened();
  if (!opened) return true;
  const { driver } = opened;
  const path = driver.path();
  leaveSession(opened);
  if (driver.isElsewhere()) io.err(`${elsewhereWords(safeText(opened.name()))}\n`);
  if (driver.path() !== path) io.err(`The session went on in ${safeText(driver.path())}\n`);
  return !tellUnsaved(opened, io);
}
