/** What a job sheet says shares feed, ground or plug with the sensor: read against the circuit, in its own lines or as one text. */
import { type Circuit, sensorOf } from '../circuit/circuit.ts';
import { readToleranced } from '../circuit/read-value.ts';
import { type Neighbour, withNeighbours, withSisterLevel } from '../circuit/with-neighbours.ts';
import { nameFix } from '../source/nearest-name.ts';
import { SHARED, type Shared, type ShareSaid, type ShareWorks } from './job.ts';

/** What is wrong with one line, and what to write instead; words without a full stop. */
export interface ShareProblem {
  readonly index: number;
  readonly words: string;
  readonly fix: string;
}

/** How the one text is written. */
export const SHARES_HINT =
  'Its feed, ground or connector, separated by ; for example oil sensor: feed, ground, works, how: live data. For a sister sensor: sister 4.98 V, its signal unplugged. Or: nothing.';

/** That nothing shares anything. */
const NOTHING = /^(?:nothing|none)\.?$/i;

/** The circuit with what is told of it, or what is wrong with what is said. */
export function fitNeighbours(
  circuit: Circuit,
  said: readonly ShareSaid[],
): { readonly circuit: Circuit; readonly problem: ShareProblem | null } {
  let made = circuit;
  const names = new Set<string>();
  for (const [index, one] of said.entries()) {
    const wrong = wrongIn(circuit, one, names);
    if (wrong) return { circuit, problem: { index, ...wrong } };
    const neighbour = sharing(circuit, one);
    names.add(neighbour.name);
    if (neighbour.feed || neighbour.ground) made = withNeighbours(made, [neighbour]);
    const level = one.sister === undefined ? null : levelOf(one.sister);
    if (level === null) continue;
    const narrowed = withSisterLevel(made, level);
    if (!narrowed)
      return {
        circuit,
        problem: {
          index,
          words: `no resistor of this circuit leads to the open level of the ${one.name}, ${one.sister}`,
          fix: 'leave it out, unless it is of the same kind, with its connector off and the key on',
        },
      };
    made = narrowed;
  }
  return { circuit: made, problem: null };
}

/** The part of the circuit that is meant: its own by name or words, else one that is called like it. */
export function neighbourOf(
  { parts }: Pick<Circuit, 'parts'>,
  name: string,
): Pick<Neighbour, 'name' | 'words'> {
  const words = name.trim().replace(/^the /i, '');
  const slug = slugOf(words);
  const has = parts.find(
    (part) =>
      part.kind === 'neighbour' &&
      (part.name === slug || part.words.toLowerCase() === words.toLowerCase()),
  );
  return { name: has?.name ?? slug, words: has?.words ?? words };
}

function sharing(circuit: Circuit, { name, shares }: ShareSaid): Neighbour {
  return {
    ...neighbourOf(circuit, name),
    feed: shares.includes('feed') || shares.includes('reference'),
    ground: shares.includes('ground'),
  };
}

function slugOf(words: string): string {
  const slug = words
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^[^a-z]+|-+$/g, '');
  return slug === '' ? 'neighbour' : slug;
}

/** Names that other things of a circuit have. */
const TAKEN = ['battery', 'splice', 'wire', 'contact', 'target', 'connector', 'harness'];

function wrongIn(
  circuit: Circuit,
  one: ShareSaid,
  before: ReadonlySet<string>,
): Omit<ShareProblem, 'index'> | null {
  const { name, words, feed, ground } = sharing(circuit, one);
  const said = `"${one.name.trim()}"`;
  const odd = one.shares.find((each) => !SHARED.includes(each));
  if (odd !== undefined)
    return {
      words: `"${odd}" is not something that ${said} can share`,
      fix: nameFix(odd, [...SHARED]),
    };
  if (one.shares.length === 0)
    return {
      words: `it does not say what ${said} shares with the sensor`,
      fix: `name it after a colon: ${SHARED.join(', ')}`,
    };
  if (before.has(name)) return { words: `${said} is there twice`, fix: 'put it all on one line' };
  const isOther = circuit.parts.some((part) => part.name === name && part.kind !== 'neighbour');
  if (isOther || TAKEN.includes(name))
    return {
      words: `${said} has the same name as something else in this circuit`,
      fix: 'give it another name, for example by what it measures',
    };
  const { name: sensor, words: ours } = sensorOf(circuit);
  const has = (...roles: readonly string[]) =>
    circuit.wires.some(
      ({ role, from, to }) =>
        roles.includes(role) && [from, to].some((end) => end.startsWith(`${sensor}.`)),
    );
  if (feed && !has('reference', 'supply'))
    return {
      words: `the ${ours} has no feed that the ${words} could share`,
      fix: 'name what else both have, or leave it out',
    };
  if (ground && !has('ground'))
    return {
      words: `the ${ours} has no ground that the ${words} could share`,
      fix: 'name what else both have, or leave it out',
    };
  if (one.sister !== undefined && levelOf(one.sister) === null)
    return { words: `"${one.sister}" is not a voltage`, fix: 'write it like 4.98 V' };
  return null;
}

function levelOf(text: string): number | null {
  const read = readToleranced(text, 'V');
  return read.ok && read.value.nominal > 0 ? read.value.nominal : null;
}

/** The text for what a job file says; `nothing` where nothing shares. */
export function sharesText(said: readonly ShareSaid[] | undefined): string {
  if (!said) return '';
  if (said.length === 0) return 'nothing';
  return said
    .map(({ name, shares, works, how, sister }) => {
      const items = [
        ...shares,
        ...(works === undefined || works === 'not-known' ? [] : [works]),
        ...(sister === undefined ? [] : [`sister ${sister}`]),
        ...(how === undefined ? [] : [`how: ${how}`]),
      ];
      return `${name}: ${items.join(', ')}`;
    })
    .join('; ');
}

/** What the one text says, line by line; undefined for an empty one. What it does not understand is left to `fitNeighbours`. */
export function sharesSaid(text: string): readonly ShareSaid[] | undefined {
  const typed = text.trim();
  if (typed === '') return undefined;
  if (NOTHING.test(typed)) return [];
  return typed
    .split(';')
    .map((one) => one.trim())
    .filter((one) => one !== '')
    .map(lineSaid);
}

const WORKS: Readonly<Record<string, ShareWorks>> = {
  works: 'works',
  ok: 'works',
  fails: 'fails',
  'fails too': 'fails',
  'does not work': 'fails',
  'not known': 'not-known',
  unknown: 'not-known',
};

function lineSaid(line: string): ShareSaid {
  const [, how] = /[,:]\s*how:\s*(.{1,200})$/i.exec(line) ?? [];
  const rest = how === undefined ? line : line.slice(0, line.search(/[,:]\s*how:/i));
  const colon = rest.indexOf(':');
  const name = (colon < 0 ? rest : rest.slice(0, colon)).trim();
  const items = (colon < 0 ? '' : rest.slice(colon + 1))
    .split(',')
    .map((item) => item.trim().toLowerCase())
    .filter((item) => item !== '');
  const sister = items.find((item) => item.startsWith('sister'));
  const works = items.flatMap((item) => WORKS[item] ?? []).at(0);
  const shares = items.filter((item) => item !== sister && !Object.hasOwn(WORKS, item));
  return {
    name,
    shares: [...new Set(shares)] as Shared[],
    ...(works && { works }),
    ...(how !== undefined && { how: how.trim() }),
    ...(sister !== undefined && { sister: sister.replace(/^sister\s*/, '').replace(/v$/, 'V') }),
  };
}
