/**
 * What the customer is told on the telephone: three sentences, each resting on what was measured, and what it costs by the
 * rates of the shop. What nobody has measured is not said.
 */
import { SIGNAL_WORDS } from '../procedure/procedure.ts';
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
    conclusion.nothingFound
      ? nothingSentence(record, conclusion)
      : foundSentence({ lines, tests }, conclusion),
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

/**
 * The testing up to the conclusion, and what the repair costs: the estimate where its hours or parts are named with the
 * answer about the work, else the price lines that are of this repair by their words, or each that it may take. Where nothing was found, no line; none at all without
 * rates.
 */
export function callPrices(
  minutes: CallMinutes,
  rates: Rates | null,
  { conclusion, work }: Pick<SessionRecord, 'conclusion' | 'work'>,
): readonly string[] {
  if (!rates) return [];
  const { clock } = minutes;
  const hour = `${priceWords(rates.hour, rates)} an hour`;
  const worked = workedMinutes(minutes);
  const how = clock === null ? ', estimated at standard times' : ' by the clock';
  const soFar =
    worked === 0
      ? `Work: ${hour}.`
      : `Testing up to the conclusion: ${worked} min${how}, ${priceWords((worked * rates.hour) / 60, rates)} at ${hour}.`;
  const estimate = estimateWords(work.at(-1)?.words ?? '', minutes, rates);
  if (estimate !== null) return [soFar, estimate];
  const lines = conclusion?.nothingFound ? [] : linesFor(conclusion, rates);
  return [
    soFar,
    ...lines.map(({ words, price }) => `${words}, if it is needed: ${priceWords(price, rates)}.`),
  ];
}

/** The price lines all of whose words the conclusion or its repair has; every line where that is none. */
function linesFor(conclusion: SessionRecord['conclusion'], { lines }: Rates): Rates['lines'] {
  const { title = '', repair = '' } = conclusion ?? {};
  const said = new Set(wordsOf(`${title} ${withoutCautions(repair)}`));
  const fitting = lines.filter(({ words }) => {
    const own = wordsOf(words);
    return own.length > 0 && own.every((word) => said.has(word));
  });
  return fitting.length > 0 ? fitting : lines;
}

/** In small letters, one of several as one of them: `connectors` is `connector`. */
function wordsOf(text: string): string[] {
  return (text.toLowerCase().match(/\p{L}{3,}/gu) ?? []).map((word) => word.replace(/s$/, ''));
}

/** Work that is named by its hours: `1.5 h`, `2 hours`. */
const HOURS = /(?<![\d.,])(\d{1,3}(?:[.,]\d{1,2})?) ?(?:h|hours?)(?![\p{L}\p{N}])/iu;

/**
 * What a repair comes to with the testing, of the hours and price lines that are named in `said`, each once; null where
 * none is, or no rates are set.
 */
export function estimateWords(
  said: string,
  minutes: CallMinutes,
  rates: Rates | null,
): string | null {
  if (!rates) return null;
  const hours = Number(HOURS.exec(said)?.[1]?.replace(',', '.') ?? 0);
  let left = said.toLowerCase();
  const named = [...rates.lines]
    .sort((a, b) => b.words.length - a.words.length)
    .filter(({ words }) => {
      if (words === '' || !left.includes(words.toLowerCase())) return false;
      // Of "sensor connector" a line "connector" is not named as well.
      left = left.replaceAll(words.toLowerCase(), ';');
      return true;
    });
  if (hours === 0 && named.length === 0) return null;
  const parts: readonly (readonly [string, number])[] = [
    ['testing', (workedMinutes(minutes) * rates.hour) / 60],
    [`${hours} h of work`, hours * rates.hour],
    ...named.map(({ words, price }) => [words, price] as const),
  ];
  const priced = parts.filter(([, price]) => price > 0);
  const all = priced.map(([words, price]) => `${words} ${priceWords(price, rates)}`).join(', ');
  // Of the prices as they are printed, so that the sum comes out.
  const cents = priced.reduce((sum, [, price]) => sum + Math.round(price * 100), 0);
  return `Estimate: ${all}; ${priceWords(cents / 100, rates)} in all.`;
}

function workedMinutes({ clock, estimated }: CallMinutes): number {
  return Math.round(clock ?? estimated ?? 0);
}

/** Where nothing was found there is nothing that shows it; that all was right is said only where all was. */
function nothingSentence(
  { lines, tests }: Pick<SessionRecord, 'lines' | 'tests'>,
  { title }: RecordConclusion,
): string {
  const judged = [
    ...lines.filter(({ standing }) => standing === 'standing'),
    ...tests.filter(({ afterRepair }) => !afterRepair),
  ].filter(({ verdict }) => verdict !== null);
  const isAllRight = judged.length > 0 && judged.every(isRight);
  return `The result: ${said(title)}${isAllRight ? '; what was tested was right when it was tested' : ''}.`;
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
  const shown = `${said(first.test)}, found ${first.found}${right}`;
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

function takesSentence(session: Session, conclusion: RecordConclusion): string {
  const { repair, title, place, customer, nothingFound } = conclusion;
  // The repair then tells the shop where to look on.
  if (nothingFound && customer !== '') return customer;
  const takes = `What it needs: ${said(repair === '' ? title : withoutCautions(repair))}`;
  if (place !== '') return `${takes}; the location is ${place}.`;
  return isAlongWire(session)
    ? `${takes}; exactly where along the wire shows only once the harness is opened, and more may turn up there.`
    : `${takes}.`;
}

/** Cautions stand behind the repair and are for who does it. */
function withoutCautions(repair: string): string {
  return repair.replace(CAUTIONS, '');
}
const CAUTIONS = new RegExp(` ?(?:${SIGNAL_WORDS.join('|')}): [^]*$`);

/** Every fault that the conclusion names lies somewhere along a wire. */
function isAlongWire({ concluded, opened }: Session): boolean {
  const named = (opened.circuit?.faults ?? []).filter(({ id }) => concluded?.faults.includes(id));
  return named.length > 0 && named.every((fault) => fault.class === 'wire');
}

function notNeededSentence({ concluded, opened }: Session, conclusion: RecordConclusion): string {
  const ruledOut = conclusion.ruledOut.filter(({ assumed }) => !assumed);
  const out = new Set(
    (concluded?.ruledOut ?? []).flatMap((line) => ('repair' in line ? [line.repair] : [])),
  );
  const quoted = (repairs: Session['opened']['job']['earlierRepairs']) =>
    repairs.map(({ words }) => `"${unstopped(words)}"`).join(' and ');
  const inVain = opened.job.earlierRepairs.filter(({ changed }) => changed === 'nothing');
  const isShown = ({ part }: (typeof inVain)[number]) =>
    part !== null && out.has(`${part}.replace`);
  const shown = quoted(inVain.filter(isShown));
  const told = quoted(inVain.filter((one) => !isShown(one)));
  const vain = [
    ...(shown === '' ? [] : [`; ${shown} made no difference, and the tests show why`]),
    ...(told === '' ? [] : [`; ${told} changed nothing, as we were told`]),
  ].join('');
  if (ruledOut.length === 0) return `The tests have not ruled out any other repair yet${vain}.`;
  // What costs most is what somebody would be afraid of.
  const isPart = ({ words }: (typeof ruledOut)[number]) => /^Replace /.test(words);
  const named = [...ruledOut.filter(isPart), ...ruledOut.filter((one) => !isPart(one))]
    .slice(0, NAMED)
    .map(({ words }) => said(words));
  const rest = ruledOut.length - named.length;
  const more = rest > 0 ? `; and ${rest} more` : '';
  const lead = conclusion.nothingFound
    ? 'Nothing calls for these now, since each was right when it was tested'
    : 'Not needed, according to the tests';
  return `${lead}: ${named.join('; ')}${more}${vain}.`;
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
