/** A session for another program on the standard streams: calls in, answers out, nothing else on the output. */
import { safeText } from '../../source/safe-text.ts';
import type { OpenedSession } from '../../ui/app-services.ts';
import { answerUnread, CODES } from '../../ui/rpc/json-rpc.ts';
import { lineSplitter, type SplitLine } from '../../ui/rpc/line-splitter.ts';
import { type RpcServer, type RpcServices, rpcServer } from '../../ui/rpc/rpc-server.ts';
import { EXIT, type Io } from '../command.ts';
import { afterTheSession } from './after-the-session.ts';
import { elsewhereWords } from './finish.ts';
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
  const server = rpcServer(services, begun);
  // Whoever reads the answers may be gone without a word.
  process.stdout.prependListener('error', () => void leave(server, io));
  const code = await serveInput(server, io);
  const saved = leave(server, io);
  const opened = server.opened();
  if (opened && !opened.preview && !opened.drill)
    await afterTheSession(opened, desk, { ...io, out: io.err });
  return saved ? code : EXIT.wrongInput;
}

/** Calls one after the other, and no more of the input than is being worked on. */
async function serveInput(server: RpcServer, io: Io): Promise<number> {
  const splitter = lineSplitter(LINE_MOST);
  const answer = async (line: SplitLine) => {
    const answered = await answerTo(server, line);
    if (answered !== null) io.out(`${answered}\n`);
  };
  let signalled: number | null = null;
  const signal = new Promise<null>((resolve) => {
    const stop = (code: number) => () => {
      signalled = code;
      resolve(null);
    };
    process.once('SIGTERM', stop(EXIT.done));
    process.once('SIGINT', stop(EXIT.interrupted));
  });
  const input = process.stdin[Symbol.asyncIterator]();
  while (signalled === null) {
    const next = await Promise.race([input.next(), signal]);
    if (next === null) break;
    const lines = next.done ? [splitter.end()] : splitter.push(next.value as Buffer);
    for (const line of lines) if (line && signalled === null) await answer(line);
    if (next.done) return signalled ?? EXIT.done;
  }
  process.stdin.destroy();
  return signalled ?? EXIT.done;
}

async function answerTo(server: RpcServer, line: SplitLine): Promise<string | null> {
  if ('text' in line) return line.text.trim() === '' ? null : server.answer(line.text);
  return line.odd === 'too-long'
    ? answerUnread(CODES.request, `a message has at most ${LINE_MOST} bytes`)
    : answerUnread(CODES.parse, 'this line is no UTF-8');
}

/** Pauses an open session and closes its file; false when the pause could not be saved. */
function leave(server: RpcServer, io: Io): boolean {
  const opened = server.opened();
  if (!opened) return true;
  const { driver } = opened;
  const paused =
    driver.session().status === 'open' && !driver.isElsewhere()
      ? driver.perform({ type: 'pause' })
      : null;
  driver.close();
  if (driver.isElsewhere()) io.err(`${elsewhereWords(safeText(opened.name()))}\n`);
  if (!paused || paused.ok) return true;
  io.err(`ohmward: ${safeText(paused.words)}\n  ${safeText(paused.fix)}\n`);
  return false;
}
