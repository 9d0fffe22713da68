/** Reads earlier work as a person tells it: "Crank sensor replaced, no change" is a sensor in vain, "harness taped" a note. */
import type { Circuit } from '../circuit/circuit.ts';
import type { EarlierRepair, Fitted, RepairEffect } from './job.ts';

/** What of a circuit can have been made new before: a part, a connector, a wire, the wheel. */
export interface Replaceable {
  /** As suspects and job files call it: `sensor`, `connector.sensor`, `wire.signal`, `target`. */
  readonly id: string;
  readonly words: string;
}

/** Everything of this circuit that can. */
export function replaceablesOf({ parts, connectors, wires, target }: Circuit): Replaceable[] {
  return [
    ...parts.map(({ name, words }) => ({ id: name, words })),
    ...connectors.map(({ part, words }) => ({ id: `connector.${part}`, words: bare(words) })),
    ...wires.map(({ name }) => ({
      id: `wire.${name}`,
      words: `${name.replaceAll('-', ' ')} wire`,
    })),
    ...(target ? [{ id: 'target', words: `wheel at the ${target.at}` }] : []),
  ];
}

function bare(words: string): string {
  return words.replace(/^the /, '');
}

/** Things by the name that stands for them here. What is no wheel, plug or wire is called by its own last word. */
const NOUNS: Readonly<Record<string, string>> = {
  sensor: 'sensor',
  sensors: 'sensor',
  sender: 'sensor',
  pickup: 'sensor',
  module: 'module',
  ecu: 'module',
  ecm: 'module',
  pcm: 'module',
  fuse: 'fuse',
  relay: 'relay',
  wheel: 'wheel',
  ring: 'wheel',
  reluctor: 'wheel',
  connector: 'connector',
  plug: 'connector',
  socket: 'connector',
  wire: 'wire',
  cable: 'wire',
};
const REPLACED = /^(?:replaced|renewed|changed|exchanged|swapped|fitted|installed|new)$/;
/** A connector or a wire is also made good without being replaced. */
const MENDED = /^(?:repaired|mended|cleaned|refitted)$/;
/** Then it was not done, or only talked about. */
const NOT_DONE =
  /^(?:no|not|never|nothing|without|should|must|needs?|will|would|could|may|maybe|perhaps|to|unless|if|\w+n't)$/;
/** Not the thing itself changed, but what it shows. */
const OF_THE_THING = /^(?:readings?|values?|volt\w*|outputs?|signals?|data|plausibility|noise)$/;
/** Words beside a thing that say no more of it: "exhaust cam sensor, twice", among what was done, was replaced twice. */
const BESIDE =
  /^(?:the|a|an|its|one|two|three|\d+x?|x\d*|once|twice|times|already|again|both|position|side|bank|shaft|by|another|shop|garage)$/;
/** Things of which the bare name among earlier repairs can only mean a new one; a connector or a wire may have been mended. */
const RENEWED: readonly string[] = ['sensor', 'module', 'fuse', 'relay', 'wheel'];
const LINKS = /^(?:of|at|on|to|for|in|from|by|with|behind|under|near)$/;
/** Words that tell one thing from another of its kind: they must belong to the part that is meant. */
const TELLING =
  /^(?:crank\w*|cam\w*|throttle|pedal|accelerator|knock|oxygen|lambda|temp\w*|pressure|air|mass|map|maf|oil|coolant|fuel|abs|brake\w*|engine|gear\w*|trans\w*|body|main|vehicle|speed|left|right|front|rear|upper|lower|intake|exhaust|steering|rain|park\w*)$/;

/** Sides of an engine: a sensor is not the one of the other side, but may well be of a side that its circuit does not name. */
const OTHER_SIDE: Readonly<Record<string, string>> = { intake: 'exhaust', exhaust: 'intake' };

/** What earlier work changed, as people say it; the first that fits. */
const EFFECT_WORDS: readonly (readonly [RepairEffect, RegExp])[] = [
  [
    'for-a-while',
    /\b(?:(?:helped |ok |fine |good |cured |better )?for a (?:while|time|day|week|month)|(?:helped|better|ok|fine) at first|only (?:helped|lasted) (?:briefly|a day|a week)|(?:fault|code|it|problem|complaint) (?:came|comes) back(?: later| after)?)\b/i,
  ],
  [
    'nothing',
    /\b(?:no (?:change|difference|effect|improvement|better|help|success|cure)|nothing changed|(?:made|makes|making) no difference|did(?:n't| not) (?:help|change|cure|fix|work)(?: anything| it)?|in vain|without (?:effect|success|change|result|improvement)|(?:still )?(?:the )?same (?:fault|code|problem|complaint)|still (?:there|the same))\b/i,
  ],
  [
    'cured',
    /\b(?:cured (?:it|then)|fixed it|it was (?:cured|fixed|gone)|code (?:stayed away|was gone))\b/i,
  ],
];

/** What was fitted, as people say it. Plain "new" says no more than "replaced". */
const FITTED_WORDS: readonly (readonly [Fitted, RegExp])[] = [
  [
    'second-hand',
    /\b(?:second[ -]?hand|used (?:one|part|sensor|module)|from a (?:scrap\w{0,8}|breaker\w{0,8}|donor)|salvage)\b/i,
  ],
  [
    'other-make',
    /\b(?:(?:other|another|different) (?:make|brand)|after[ -]?market|pattern part|non[ -](?:original|genuine|oem)|copy|clone)\b/i,
  ],
  ['new', /\b(?:genuine|original|oem|from the (?:maker|dealer))\b/i],
];

/** The repair, with the part when one thing of the circuit was made new; else a note. `part: words` names it outright. */
export function readRepair(text: string, parts: readonly Replaceable[]): EarlierRepair {
  const colon = text.indexOf(':');
  const name = text.slice(0, Math.max(0, colon)).trim();
  const outright = /^[\w. -]+$/.test(name) ? meantBy(name.toLowerCase(), parts) : null;
  const said = { ...effectIn(text), ...fittedIn(text) };
  if (outright)
    return { words: text.slice(colon + 1).trim() || 'replaced', part: outright, ...said };
  const told = clausesOf(withoutEffect(text)).map((clause) => partIn(clause, parts));
  const [part, ...more] = [...new Set(told.filter((one) => one !== null))];
  return { words: text, part: part !== undefined && more.length === 0 ? part : null, ...said };
}

function effectIn(text: string): Pick<EarlierRepair, 'changed'> {
  const changed = EFFECT_WORDS.find(([, said]) => said.test(text))?.[0];
  return changed === undefined ? {} : { changed };
}

function fittedIn(text: string): Pick<EarlierRepair, 'fitted'> {
  const fitted = FITTED_WORDS.find(([, said]) => said.test(text))?.[0];
  return fitted === undefined ? {} : { fitted };
}

/** "Replaced, no change" was done: what it changed must not read as if it was not. */
function withoutEffect(text: string): string {
  return EFFECT_WORDS.reduce((left, [, said]) => left.replace(said, ','), text);
}

/** What was understood of all that was typed, for the person to check. */
export function repairsRemark(
  repairs: readonly EarlierRepair[],
  parts: readonly Replaceable[],
): string {
  return repairs
    .map((repair) => {
      const { words, part } = repair;
      const what = parts.find(({ id }) => id === part)?.words;
      if (what === undefined) return noteWords(words);
      const done = part?.includes('.') ? 'made good' : 'replaced';
      const more = outcomeOfRepair(repair);
      return `Understood: the ${what} was ${done}${more === '' ? '' : `, ${more}`}.`;
    })
    .join(' ');
}

function noteWords(words: string): string {
  const things = words.toLowerCase().match(/[\p{L}\d]+/gu) ?? [];
  const named = new Set(things.flatMap((word) => NOUNS[word] ?? []));
  return named.size > 1
    ? `Kept as a note only: "${words}" names more than one thing. Write each by itself, with ; between.`
    : `Kept as a note only: "${words}" names no part of this circuit as replaced.`;
}

const FITTED_SAID: Readonly<Record<Fitted, string>> = {
  new: 'by a new one',
  'second-hand': 'by a used one',
  'other-make': 'by an aftermarket one',
};
const CHANGED_SAID: Readonly<Record<RepairEffect, string>> = {
  nothing: 'which changed nothing',
  'for-a-while': 'which helped for a while',
  cured: 'which fixed it then',
};

/** What was fitted and what it changed: `by a new one, which changed nothing`; empty where nobody said it. */
export function outcomeOfRepair({ fitted, changed }: EarlierRepair): string {
  return [fitted && FITTED_SAID[fitted], changed && CHANGED_SAID[changed]]
    .filter((one) => one !== undefined)
    .join(', ');
}

function meantBy(name: string, parts: readonly Replaceable[]): string | null {
  return parts.find(({ id, words }) => id === name || words === name)?.id ?? null;
}

/** What stands between commas; what is joined by "and" belongs together, and then names two things. */
function clausesOf(text: string): string[][] {
  return text
    .toLowerCase()
    .split(/[,.!()]|\b(?:but|then)\b/)
    .map((clause) => clause.match(/[\p{L}\d']+|[?&+]/gu) ?? []);
}

function partIn(words: readonly string[], parts: readonly Replaceable[]): string | null {
  const at = words.findIndex((word) => word in NOUNS);
  if (at < 0 || words.some((word) => NOT_DONE.test(word) || word === '?')) return null;
  if (words.some((word) => OF_THE_THING.test(word) && !isWireName(word, words, parts))) return null;
  // "sensor connector" is a connector, "connector of the sensor" too.
  let end = at;
  while (words[end + 1] !== undefined && words[end + 1]! in NOUNS) end += 1;
  const wheelOfASensor = words[at] === 'wheel' && words[at + 1] === 'speed';
  if (wheelOfASensor && words[at + 2] === 'sensor') end = at + 2;
  const kind = NOUNS[words[end]!]!;
  const others = words.slice(end + 1).filter((word) => word in NOUNS);
  const linked = LINKS.test(words[end + 1] ?? '');
  if (others.length > 0 && !linked) return null;
  const isBare =
    RENEWED.includes(kind) &&
    words.every((word) => word in NOUNS || TELLING.test(word) || BESIDE.test(word));
  const isDone =
    isBare ||
    words.some(
      (word, place) =>
        (REPLACED.test(word) && (word !== 'new' || besideThe(words, place, at, end))) ||
        (MENDED.test(word) && (kind === 'connector' || kind === 'wire')),
    );
  return isDone ? chosenPart(kind, words, parts) : null;
}

/** "new sensor", "new crank sensor", "sensor is new": not "new noise from the sensor". */
function besideThe(words: readonly string[], place: number, at: number, end: number): boolean {
  const between = place < at ? words.slice(place + 1, at) : words.slice(end + 1, place);
  return !between.some((word) => LINKS.test(word));
}

function isWireName(word: string, words: readonly string[], parts: readonly Replaceable[]) {
  return (
    words.some((one) => NOUNS[one] === 'wire') && parts.some(({ id }) => id === `wire.${word}`)
  );
}

function chosenPart(
  kind: string,
  words: readonly string[],
  parts: readonly Replaceable[],
): string | null {
  const discriminating = words.filter(
    (word) => TELLING.test(word) || isWireName(word, words, parts),
  );
  const fits = parts.filter((part) => kindOf(part) === kind && hasAll(part, discriminating));
  // Without more words the sensor is the one that the circuit is about, and a connector that of the sensor.
  const plain = discriminating.length === 0 && !words.some((word) => NOUNS[word] === 'module');
  const usual = kind === 'sensor' ? 'sensor' : kind === 'connector' ? 'connector.sensor' : null;
  if (plain && usual && fits.some(({ id }) => id === usual)) return usual;
  const named = fits.filter(({ words: own }) => !words.includes('module') || /module/.test(own));
  return named.length === 1 ? named[0]!.id : null;
}

function kindOf({ id, words }: Replaceable): string {
  if (id.startsWith('connector.')) return 'connector';
  if (id.startsWith('wire.')) return 'wire';
  if (id === 'target') return 'wheel';
  return words.split(' ').find((word) => word in NOUNS && NOUNS[word] !== 'wheel') ?? '';
}

function hasAll({ words }: Replaceable, discriminating: readonly string[]): boolean {
  const own = words.split(/[ -]/);
  return discriminating.every((word) => {
    const other = OTHER_SIDE[word];
    if (other !== undefined && own.includes('camshaft')) return !own.includes(other);
    return own.some((one) => one.startsWith(word.replace(/shaft$/, '')));
  });
}
