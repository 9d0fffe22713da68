/**
 * What an author's text says otherwise than the setup of its step. The proof checks the setup and the hands obey the
 * text, so a plug, a lead or a resistor that only the text knows is a test that nobody has proved.
 */
import type { Circuit } from '../circuit/circuit.ts';
import type { Probe, Setup } from '../circuit/test.ts';
import { formatQuantity } from '../quantity/format-quantity.ts';
import { parseQuantity } from '../quantity/parse-quantity.ts';
import { namedPlaces } from './bind-text.ts';
import { andWords } from './draw-graph.ts';
import { clausesOf, partsIn, strangePlainPlaces } from './plain-places.ts';
import type { ExpectedRange, MeasureUnit } from './procedure.ts';
import { touched } from './setup-say.ts';
import { resistanceWords } from './test-words.ts';

/** One contradiction, and the way out of it. */
export interface AgainstSetup {
  readonly words: string;
  readonly fix: string;
}

/**
 * All contradictions in `text`, which has its needs filled in; none where nothing is read or only eyes look. Of several
 * `probes`, which are watched one after another, each may be the one that is meant.
 */
export function againstSetup(
  text: string,
  setup: Setup,
  probes: readonly Probe[],
  circuit: Circuit | null,
): AgainstSetup[] {
  const [probe] = probes;
  if (probe === undefined || probe.kind === 'inspect') return [];
  const places = probes.flatMap((one) => touched(setup, one));
  const found = [
    ...strangePlaces(text, places),
    ...(probes.length > 1 ? [] : swappedLeads(text, probe)),
    ...otherOhms(text, setup),
    ...otherPlugs(text, setup, circuit),
    ...otherKey(text, setup),
    ...leadsElsewhere(text, setup, probes, circuit),
  ];
  return [...new Map(found.map((one) => [one.words, one])).values()];
}

/** What is said of a good reading, and the value. */
const SAID_GOOD =
  /\b(?:must|should|ought to|has to|have to|normally|expect(?:ed)?|good is)\b[^.;]{0,60}?(?<![\d.])(\d{1,9}(?:\.\d{1,9})?\s?[munµkM]?(?:V|A|ohm|Hz)\b)/gi;

/** Values that `text` calls good and that lie outside of what is good at the step; only of the unit that is read there. */
export function againstLimits(
  text: string,
  good: ExpectedRange | null,
  unit: MeasureUnit,
): AgainstSetup[] {
  if (good === null) return [];
  return [...text.matchAll(SAID_GOOD)].flatMap(([, typed]) => {
    const said = parseQuantity(typed!);
    const isOther =
      said?.unit === unit &&
      (said.value < (good.low ?? Number.NEGATIVE_INFINITY) ||
        said.value > (good.high ?? Number.POSITIVE_INFINITY));
    if (!isOther) return [];
    return [
      {
        words: `the text says ${typed}, and good is ${rangeWords(good, unit)}`,
        fix: 'leave the value out: the step shows what is good on the car at hand',
      },
    ];
  });
}

function rangeWords({ low, high }: ExpectedRange, unit: MeasureUnit): string {
  const shown = (value: number) => formatQuantity({ value, unit }, { ascii: true });
  if (low === null) return high === null ? 'any value' : `below ${shown(high)}`;
  return high === null ? `${shown(low)} and more` : `${shown(low)} to ${shown(high)}`;
}

function strangePlaces(text: string, places: readonly string[]): AgainstSetup[] {
  return namedPlaces(text)
    .filter((place) => !places.includes(place))
    .map((place) => ({
      words: `the text names "{${place}}", where this step has no lead and no bridge`,
      fix: 'leads and bridges are worded by the program: leave the place out, or change "measure" or "bridge"',
    }));
}

/** The words before a place that say which lead it is of. */
const RED = /\b(?:red lead|scope tip)\b[^.{}]*\{([^{}]+)\}/i;
const BLACK = /\b(?:black lead|scope ground|ground clip)\b[^.{}]*\{([^{}]+)\}/i;

function swappedLeads(text: string, probe: Probe): AgainstSetup[] {
  if (!('plus' in probe)) return [];
  return (
    [
      ['red lead', RED, probe.plus],
      ['black lead', BLACK, probe.minus],
    ] as const
  ).flatMap(([lead, words, place]) => {
    const said = words.exec(text)?.[1];
    if (said === undefined || said === place) return [];
    return [
      {
        words: `the text puts the ${lead} on "{${said}}", and the step measures with it on "{${place}}"`,
        fix: 'leave the leads out of the text: the program words them',
      },
    ];
  });
}

/** `10 ohm`, `3.3k`, `ten-ohm`, `two kilohm`. */
const SMALL =
  'one|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty|thirty|fifty|hundred';
const OHMS = new RegExp(
  `(?<![\\w.])((?:\\d{1,9}(?:\\.\\d{1,9})?|(?:${SMALL})(?:[- ]hundred)?))[\\s-]?(k|M|kilo?-?|mega?-?)?(?:[\\s-]?(?:ohms?\\b|Ω)|(?<=[kM])\\b)`,
  'gi',
);
const NUMBERS: Readonly<Record<string, number>> = {
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
  twelve: 12,
  fifteen: 15,
  twenty: 20,
  thirty: 30,
  fifty: 50,
  hundred: 100,
};
/** Where ohms are those of something that is clipped in, and not of a reading. */
const CLIPPED = /\bresistor\b|\b(?:clip|bridge|load|jumper)\b/i;

function otherOhms(text: string, { bridges }: Setup): AgainstSetup[] {
  const clipped = bridges.flatMap(({ through }) =>
    typeof through === 'string' ? [] : [through.ohms],
  );
  const said = clausesOf(text).flatMap((clause) =>
    CLIPPED.test(clause) ? [...clause.matchAll(OHMS)] : [],
  );
  return said.flatMap(([value, number, prefix = '']) => {
    if (clipped.includes(ohmsOf(number!, prefix))) return [];
    const has = clipped.length === 0 ? 'none' : clipped.map(resistanceWords).join(', ');
    return [
      {
        words: `the text says a resistor of ${value}, and the step clips in ${has}`,
        fix: 'write it as "bridge: { from: ..., to: ..., through: ... }", which the program puts into words, and leave it out of the text',
      },
    ];
  });
}

function ohmsOf(number: string, prefix: string): number {
  const factors = number
    .toLowerCase()
    .split(/[- ]/)
    .map((word) => NUMBERS[word] ?? Number(word));
  const scale = prefix === '' ? 1 : /^k/i.test(prefix) ? 1e3 : 1e6;
  return factors.reduce((product, one) => product * one, scale);
}

/** A connector taken off, or said to be off, with the rest of its clause. */
const TAKEN_OFF =
  /\b(?:unplug|disconnect)\b.*|\b(?:take|pull|slide)\b.*\b(?:plug|connector)\b.*\b(?:off|out|apart)\b.*/i;
/** The same of a part that is named; without one it may be any connector, or none that is plugged. */
const OPENED =
  /\b(?:open|separate|pull)\b.*\b(?:plug|connector)\b.*|\b(?:is|with)\b.*\b(?:unplugged|disconnected)\b.*|\b(?:unplugged|disconnected)$/i;
const PLUGGED_IN = /\bplug\b.*\bin\b|\bplugged (?:back )?in\b/i;
const NOT = /\b(?:not|never|don't|without)\b/i;

function otherPlugs(text: string, { unplugged }: Setup, circuit: Circuit | null): AgainstSetup[] {
  return clausesOf(text).flatMap((clause) => {
    if (NOT.test(clause)) return [];
    const named = partsIn(clause, circuit);
    const closed = PLUGGED_IN.test(clause) ? named.filter((part) => unplugged.includes(part)) : [];
    if (closed.length > 0)
      return [
        {
          words: `the text says "${clause}", and the step has ${andWords(closed.map((part) => `"${part}"`))} unplugged`,
          fix: 'take it out of "unplug", or leave it out of the text',
        },
      ];
    const isOff = TAKEN_OFF.test(clause);
    if (PLUGGED_IN.test(clause) || !(isOff || (named.length > 0 && OPENED.test(clause)))) return [];
    const strange = named.filter((part) => !unplugged.includes(part));
    if (strange.length > 0)
      return [
        {
          words: `the text says "${clause}", and the step leaves ${andWords(strange.map((part) => `"${part}"`))} plugged in`,
          fix: `write "unplug: [${[...unplugged, ...strange].join(', ')}]", which the program puts into words and proves, or leave it out of the text`,
        },
      ];
    if (named.length > 0 || unplugged.length > 0) return [];
    return [
      {
        words: `the text says "${clause}", but the step unplugs nothing`,
        fix: 'write "unplug: [PART]", which the program puts into words, or leave it out of the text',
      },
    ];
  });
}

/** Of a key that the text turns more than once the last position counts; one that it turns once is told with the state. */
const KEY = /\bkey (?:is |stays )?(on|off)\b/gi;

function otherKey(text: string, { state }: Setup): AgainstSetup[] {
  const said = [...text.matchAll(KEY)].map(([, position]) => position!.toLowerCase());
  const last = said.at(-1);
  if (last === undefined || new Set(said).size < 2) return [];
  if (state !== 'key-on' && state !== 'key-off') return [];
  if (state === `key-${last}`) return [];
  return [
    {
      words: `the text says last that the key is ${last}, and the step reads with "${state}"`,
      fix: 'change "state", or leave it out of the text',
    },
  ];
}

function leadsElsewhere(
  text: string,
  setup: Setup,
  probes: readonly Probe[],
  circuit: Circuit | null,
): AgainstSetup[] {
  if (circuit === null) return [];
  return strangePlainPlaces(text, setup, probes, circuit).map(({ clause, lead, place, has }) => ({
    words: `the text says "${clause}", and the step has ${lead} on ${has.map((id) => `"${id}"`).join(' or ')}, not on "${place}"`,
    fix: 'leads and bridges are worded by the program: leave the place out, or change "measure" or "bridge"',
  }));
}
