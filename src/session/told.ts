/**
 * What the job sheet tells before any reading, as the table of weights knows it: which answers count, what was understood
 * of free words, and by how much each suspect moves. The numbers stand in `suspects/told-weights.ts`.
 */
import { type Circuit, type Fault, partName, sensorOf } from '../circuit/circuit.ts';
import type { EarlierRepair, Job, ShareSaid } from '../procedure/job.ts';
import { neighbourOf } from '../procedure/read-neighbours.ts';
import { TOLD_MOST, TOLD_WEIGHTS, type ToldGroup, type ToldKey } from '../suspects/told-weights.ts';
import type { TakesAlong } from './told-neighbours.ts';

/** One answer that counts. */
export interface Told {
  readonly key: ToldKey;
  /** The part that an earlier repair made new, or the neighbour that is told of, as it is written. */
  readonly part: string | null;
}

/** Words that a field is understood by; the rest of it is kept as it was written. Any number of them may fit. */
type Meanings = readonly (readonly [ToldKey, RegExp])[];

const RECENT_WORK: Meanings = [
  [
    'recent-work:bearing',
    /\b(?:bearings?|hubs?|drive ?shafts?|cv joints?|brake discs?|knuckles?)\b/i,
  ],
  [
    'recent-work:timing',
    /\b(?:timing|belts?|chains?|cam ?shafts?|phasers?|tensioners?|head gaskets?)\b/i,
  ],
  [
    'recent-work:engine-out',
    /\b(?:(?:engine|gear ?box|transmission) (?:was )?(?:out|swap\w{0,4}|replaced|removed|rebuilt|overhaul\w{0,2})|clutch|flywheel|turbo|cylinder head)\b/i,
  ],
  [
    'recent-work:accident',
    /\b(?:accident|crash\w{0,2}|collision|body ?work|bumper|wing|rear-ended)\b/i,
  ],
  [
    'recent-work:fitted-on',
    /\b(?:radio|alarm|immobili[sz]er|tow ?bar|trailer|remote start|tracker|dash ?cam|auxiliary heater)\b/i,
  ],
  [
    'recent-work:jump-start',
    /\b(?:jump(?:ed|ing)?(?: |-)?(?:start\w{0,3}|leads?)?|boosted|welding|welded|wrong polarity)\b/i,
  ],
  [
    'recent-work:water',
    /\b(?:flood\w{0,3}|water(?! pump)|engine wash|washed|steam clean\w{0,3}|pressure wash\w{0,3})\b/i,
  ],
];

const SEEN: Meanings = [
  [
    'seen:harness-harmed',
    /\b(?:chaf\w{1,5}|rubbed|bare wires?|cut wires?|pinched|melted|burnt|burned|broken wires?|gnawed|bitten|rodents?|martens?|frayed)\b/i,
  ],
  [
    'seen:plug-harmed',
    /\b(?:green|corro\w{2,6}|water|oil(?:y)? in|wet (?:plug|connector)|bent pins?|pins? (?:bent|pushed|backed)\b.{0,10}|loose (?:plug|connector|pins?)|(?:plug|connector) (?:is )?(?:loose|off|wet|oily|dirty)|broken (?:lock|latch|clip))\b/i,
  ],
  [
    'seen:wheel-harmed',
    /\b(?:(?:ring|wheel|reluctor|teeth|tooth) (?:is |are )?(?:cracked|damaged|bent|missing|rusty|loose)|(?:cracked|damaged|bent|missing|rusty|loose) (?:ring|wheel|reluctor|teeth|tooth)|swarf|metal (?:dust|filings|bits) )\b/i,
  ],
  ['seen:fuse-blown', /\b(?:blown fuse|fuse (?:is |was )?blown)\b/i],
  [
    'seen:sensor-harmed',
    /\b(?:sensor (?:is |was )?(?:cracked|damaged|rubbed|swollen|melted|loose)|(?:cracked|damaged|swollen) sensor)\b/i,
  ],
];

/** Then the clause speaks of something that is not so. */
const DENIED =
  /\b(?:no|not|never|nothing|none|without|isn't|wasn't|aren't|ok|fine|good|dry|clean)\b/i;
/** That nothing else fails, or nothing was done. */
const NOTHING_ELSE = /^(?:(?:nothing|none)\b|(?:no|-|no others?)[.!]?$)/i;

/** Every answer of a job that counts, in the order of the sheet. */
export function toldBy({
  earlierRepairs,
  circumstances = {},
  shares,
}: Pick<Job, 'earlierRepairs' | 'circumstances' | 'shares'>): Told[] {
  const { happens = [], failsWithIt = '', recentWork = '', seen = '' } = circumstances;
  const plain = (key: ToldKey): Told => ({ key, part: null });
  return [
    ...earlierRepairs.flatMap(ofRepair),
    ...happens.flatMap((when) => (when === 'always' ? [] : [plain(`happens:${when}`)])),
    ...(failsWithIt === ''
      ? []
      : [plain(saysNothing(failsWithIt) ? 'fails-with-it:nothing' : 'fails-with-it:others')]),
    ...understood(recentWork, RECENT_WORK).map(plain),
    ...understood(seen, SEEN).map(plain),
    ...(shares ?? []).flatMap(ofNeighbour),
    ...(isFeedTold(shares) ? [plain('neighbour:unnamed')] : []),
  ];
}

/** An answer in words that there is nothing to tell. */
export function saysNothing(words: string): boolean {
  return NOTHING_ELSE.test(words.trim());
}

function ofRepair({ part, fitted, changed }: EarlierRepair): Told[] {
  if (part === null) return [];
  return [
    ...(fitted === undefined || fitted === 'new'
      ? []
      : [{ key: `fitted:${fitted}` as const, part }]),
    ...(changed === undefined ? [] : [{ key: `changed:${changed}` as const, part }]),
  ];
}

/** What is told of a neighbour that works or does not; its name as it is written stands for its part. */
function ofNeighbour({ name, shares, works }: ShareSaid): Told[] {
  if (works !== 'works' && works !== 'fails') return [];
  const isOnWire = shares.some((one) => one !== 'plug');
  return [
    ...(isOnWire ? [{ key: `neighbour:${works}` as const, part: name }] : []),
    ...(shares.includes('plug') ? [{ key: `same-plug:${works}` as const, part: null }] : []),
  ];
}

/** Whether it was told what shares the feed of this car, or that nothing does. */
export function isFeedTold(shares: Job['shares']): boolean {
  return shares !== undefined && (shares.length === 0 || shares.some(isFedBy));
}

function isFedBy({ shares }: ShareSaid): boolean {
  return shares.includes('feed') || shares.includes('reference');
}

function understood(text: string, meanings: Meanings): ToldKey[] {
  const clauses = text.split(/[,.;!()\n]/).filter((clause) => !DENIED.test(clause));
  return meanings.flatMap(([key, said]) => (clauses.some((one) => said.test(one)) ? [key] : []));
}

/**
 * Times its weight before, by fault: the product of what was told of it, within bounds. The same part made new twice
 * counts once: a mistake in the choice of a part is made twice as easily.
 */
export function toldFactor(
  circuit: Circuit,
  job: Job,
  takes: TakesAlong,
): (fault: string) => number {
  const told = distinct(toldBy(job));
  const faults = new Map(circuit.faults.map((fault) => [fault.id, fault]));
  const weightOn = (of: ToldGroup, times: number, part: string | null, fault: Fault): number => {
    if (of === 'unnamed-neighbour') return isUnnamed(fault, circuit) ? times : 1;
    if (of === 'other-plugs') return isBeyondPlug(fault, circuit) ? times : 1;
    if (of !== 'taken-along') return isOf(fault, of, part) ? times : 1;
    const named = circuit.parts.find(
      ({ kind, name }) =>
        kind === 'neighbour' && part !== null && name === neighbourOf(circuit, part).name,
    );
    if (!named) return 1;
    const share = takes(fault.id, named.name);
    return 1 - share + share * times;
  };
  return (id) => {
    const fault = faults.get(id);
    if (!fault || told.length === 0) return 1;
    const product = told.reduce(
      (so, { key, part }) =>
        TOLD_WEIGHTS.filter(({ told: by }) => by === key).reduce(
          (all, { of, times }) => all * weightOn(of, times, part, fault),
          so,
        ),
      1,
    );
    return Math.min(TOLD_MOST, Math.max(1 / TOLD_MOST, product));
  };
}

function distinct(told: readonly Told[]): Told[] {
  return [...new Map(told.map((one) => [`${one.key} ${one.part}`, one])).values()];
}

function isOf({ class: kind, repair }: Fault, group: ToldGroup, part: string | null): boolean {
  switch (group) {
    case 'contacts':
      return kind === 'connector' && repair !== 'leads.swap';
    case 'swapped-wires':
      return repair === 'leads.swap';
    case 'wires':
      return kind === 'wire';
    case 'target-place':
      return repair === 'target.align';
    case 'target-gap':
      return repair === 'target.gap';
    case 'other-plugs':
    case 'taken-along':
    case 'unnamed-neighbour':
      return false;
    case 'part':
      return part !== null && (repair === part || repair === `${part}.replace`);
    case 'plug':
      return part !== null && (repair === `connector.${part}` || repair === part);
    case 'sensor':
    case 'module':
    case 'supply':
    case 'neighbour':
    case 'target':
      return kind === group;
  }
}

/** A contact that is not in the sensor's own plug. */
function isBeyondPlug(fault: Fault, circuit: Circuit): boolean {
  return isOf(fault, 'contacts', null) && fault.repair !== `connector.${sensorOf(circuit).name}`;
}

/** A neighbour of the circuit file that nobody has named, or a wire of its own. */
function isUnnamed({ effect }: Fault, { parts, wires }: Circuit): boolean {
  const names = parts.flatMap((part) =>
    part.kind === 'neighbour' && !part.told ? [part.name] : [],
  );
  if (effect.kind === 'part') return names.includes(effect.part);
  if (!('wire' in effect)) return false;
  const wire = wires.find(({ name }) => name === effect.wire);
  return [wire?.from, wire?.to].some((end) => end && names.includes(partName(end)));
}

const GROUP_WORDS: Readonly<Record<ToldGroup, string>> = {
  contacts: 'contacts',
  wires: 'wires',
  'swapped-wires': 'swapped wires',
  sensor: 'the sensor',
  module: 'the module',
  supply: 'fuse and relay',
  neighbour: 'what shares the feed',
  target: 'the wheel',
  'target-place': 'the position of the wheel',
  'target-gap': 'the gap',
  part: 'the part itself',
  plug: 'its contacts',
  'taken-along': 'what would make it fail too',
  'unnamed-neighbour': 'other neighbours',
  'other-plugs': 'contacts beyond its connector',
};

/** Of what these are there is no fault to look for in the circuit: they hang on what was told. */
const OF_WHAT_IS_TOLD: readonly ToldGroup[] = [
  'part',
  'plug',
  'taken-along',
  'unnamed-neighbour',
  'other-plugs',
];

/** What an answer moves in this circuit, in words: `the wheel, contacts and wires likelier`; empty for none. */
export function movedWords(keys: readonly ToldKey[], circuit: Circuit | null): string {
  const isHere = (of: ToldGroup) =>
    circuit === null ||
    OF_WHAT_IS_TOLD.includes(of) ||
    circuit.faults.some((fault) => isOf(fault, of, null));
  const rows = TOLD_WEIGHTS.filter(({ told, of }) => keys.includes(told) && isHere(of));
  const named = (isUp: boolean) => {
    const groups = rows.filter(({ times }) => times > 1 === isUp).map(({ of }) => GROUP_WORDS[of]);
    const all = [...new Set(groups)];
    return [all.slice(0, -1).join(', '), ...all.slice(-1)].filter((one) => one).join(' and ');
  };
  const [up, down] = [named(true), named(false)];
  return [up && `${up} likelier`, down && `${down} less likely`].filter((one) => one).join('; ');
}

/** Whether the sheet speaks of a fault that comes and goes; null where it says neither. */
export function toldIntermittent({ codes, codeStates = {}, circumstances }: Job): boolean | null {
  const happens = circumstances?.happens ?? [];
  if (happens.some((when) => COMING_AND_GOING.has(when))) return true;
  if (happens.includes('always')) return false;
  return codes.length > 0 && codes.every((code) => codeStates[code] === 'history') ? true : null;
}
/** What happens so comes and goes. */
export const COMING_AND_GOING: ReadonlySet<string> = new Set(['cold', 'hot', 'wet', 'bumps']);
