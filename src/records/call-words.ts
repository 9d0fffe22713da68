/**
 * What the customer is told on the telephone: three sentences, each resting on what was measured, and what it costs by the
 * rates of the shop. What nobody has measured is not said.
 */
import type { Session } from '../session/session.ts';
import { clockMinutes } from '../session/worked-time.ts';
import { isProvenToday } from './judged-by.ts';
import { priceWords, type Rates } from './read-rates.ts';
import { recordForCustomer } from './record-for-customer.ts';
import type { RecordConclusion, RecordLine, SessionRecord } from './record-form.ts';

/** What is wrong and what shows it; what it takes; what is not needed. None before a conclusion, and on a drill. */
export function callSentences(session: Session, record: SessionRecord): readonly string[] {
  const { conclusion, lines, tests } = recordForCustomer(record);
  if (session.opened.vehicle.kind === 'drill' || !conclusion) return [];
  return [
    foundSentence({ lines, tests }, conclusion),
    takesSentence(session, conclusion),
    notNeededSentence(session, conclusion),
  ];
}

/** Minutes up to the conclusion: by the clock, and by what such tests take; each null where it is not known. */
export interface CallMinutes {
  readonly clock: number | null;
  readonly estimated: number | null;
}

/** The minutes of a session, as far as they are known. */
export function callMinutes(session: Session, { minutes }: SessionRecord): CallMinutes {
  return { clock: clockMinutes(session), estimated: minutes };
}

/** The testing up to the conclusion, and the price lines; none without rates. */
export function callPrices(
  { clock, estimated }: CallMinutes,
  rates: Rates | null,
): readonly string[] {
  if (!rates) return [];
  const hour = `${priceWords(rates.hour, rates)} an hour`;
  const worked = Math.round(clock ?? estimated ?? 0);
  const how = clock === null ? ', estimated at standard times' : ' by the clock';
  const soFar =
    worked === 0
      ? `Work: ${hour}.`
      : `Testing up to the conclusion: ${worked} min${how}, ${priceWords((worked * rates.hour) / 60, rates)} at ${hour}.`;
  return [
    soFar,
    ...rates.lines.map(({ words, price }) => `${words}: ${priceWords(price, rates)}.`),
  ];
}

function foundSentence(
  { lines, tests }: Pick<SessionRecord, 'lines' | 'tests'>,
  conclusion: RecordConclusion,
): string {
  const { title, evidence, proven, leavesOpen = false } = conclusion;
  const shows = evidence.map((one) => ({
    one,
    made: [...lines, ...tests].find(({ event }) => event === one.reading),
  }));
  // What counts beside what else was read may lie within what is right: on the telephone it shows nothing by itself.
  const { one: first, made } =
    shows.find(({ made: line }) => line && !isRight(line)) ?? shows[0] ?? {};
  if (!first && leavesOpen) return 'We have not found the cause yet.';
  if (!first) return `This is our suspicion; no test has shown it yet: ${said(title)}.`;
  const right = made?.expected && !isRight(made) ? `; it should be ${made.expected}` : '';
  const shown = `${first.test}, found ${first.found}${right}`;
  if (leavesOpen) return `We have not found the cause yet; what we found so far: ${shown}.`;
  return `We found this: ${said(title)}; what shows it: ${shown}${SURE[`${proven && isProvenToday(conclusion)}`]}.`;
}

function isRight({ verdict }: Pick<RecordLine, 'verdict'>): boolean {
  return verdict === 'good' || verdict === 'as expected';
}

/** Nothing is said of it where no circuit could weigh it. */
const SURE = {
  true: '; at least three independent tests agree',
  false: '; it is the best explanation of the test results, not a proof',
  null: '',
} as const;

function takesSentence(session: Session, { repair, title, place }: RecordConclusion): string {
  const takes = `What it needs: ${said(repair === '' ? title : repair)}`;
  if (place !== '') return `${takes}; the location is ${place}.`;
  return isAlongWire(session)
    ? `${takes}; exactly where along the wire shows only once the harness is opened, and more may turn up there.`
    : `${takes}.`;
}

/** Every fault that the conclusion names lies somewhere along a wire. */
function isAlongWire({ concluded, opened }: Session): boolean {
  const named = (opened.circuit?.faults ?? []).filter(({ id }) => concluded?.faults.includes(id));
  return named.length > 0 && named.every((fault) => fault.class === 'wire');
}

function notNeededSentence({ concluded, opened }: Session, conclusion: RecordConclusion): string {
  const { ruledOut } = conclusion;
  if (ruledOut.length === 0) return 'The tests have not ruled out any other repair yet.';
  const named = ruledOut.slice(0, NAMED).map(({ words }) => said(words));
  const rest = ruledOut.length - named.length;
  const more = rest > 0 ? `; and ${rest} more` : '';
  const out = new Set(
    (concluded?.ruledOut ?? []).flatMap((line) => ('repair' in line ? [line.repair] : [])),
  );
  const vain = opened.job.earlierRepairs.filter(
    ({ part, changed }) => changed === 'nothing' && part !== null && out.has(`${part}.replace`),
  );
  const paid = vain.map(({ words }) => `"${unstopped(words)}"`).join(' and ');
  const inVain = paid === '' ? '' : `; ${paid} made no difference, and the tests show why`;
  const lead = conclusion.nothingFound
    ? 'Nothing calls for these now, since each was right when it was tested'
    : 'Not needed, according to the tests';
  return `${lead}: ${named.join('; ')}${more}${inVain}.`;
}
/** More are not read out. */
const NAMED = 2;

/** As it goes on within a sentence: a name of capitals stays as it is. */
function said(words: string): string {
  const text = unstopped(words);
  return /^\p{Lu}(?:\p{Ll}|[ '’])/u.test(text)
    ? `${text.slice(0, 1).toLowerCase()}${text.slice(1)}`
    : text;
}

function unstopped(words: string): string {
  return words.trim().replace(/\.$/, '');
}
