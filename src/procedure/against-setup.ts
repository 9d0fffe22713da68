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
import type { ExpectedRange, MeasureUnit } from './procedure.ts';
import { touched } from './setup-say.ts';
import { resistanceWords } from './test-words.ts';

/** One contradiction, and the way out of it. */
export interface AgainstSetup {
  readonly words: string;
  readonly fix: string;
}

/** All contradictions in `text`, which has its needs filled in; none where nothing is read or only eyes look. */
export function againstSetup(
  text: string,
  setup: Setup,
  probe: Probe | null,
  circuit: Circuit | null,
): AgainstSetup[] {
  if (probe === null || probe.kind === 'inspect') return [];
  const found = [
    ...strangePlaces(text, touched(setup, probe)),
    ...swappedLeads(text, probe),
    ...otherOhms(text, setup),
    ...otherPlugs(text, setup, circuit),
    ...leadsElsewhere(text, touched(setup, probe), circuit),
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

/** `10 ohm resistor` or `3.3k resistor` beside a bridge through another one. */
const RESISTOR =
  /(?<![\d.])(\d{1,9}(?:\.\d{1,9})?\s?(?:[kM]?(?:ohms?\b|Ω)|[kM]\b))[^.]{0,200}?\bresistor/gi;

function otherOhms(text: string, { bridges }: Setup): AgainstSetup[] {
  const clipped = bridges.flatMap(({ through }) =>
    typeof through === 'string' ? [] : [through.ohms],
  );
  return [...text.matchAll(RESISTOR)].flatMap(([, value]) => {
    const said = parseQuantity(value!.replace(/([kM])$/, '$1ohm').replace(/ohms$/i, 'ohm'));
    if (said?.unit !== 'ohm' || clipped.includes(said.value)) return [];
    const has = clipped.length === 0 ? 'none' : clipped.map(resistanceWords).join(', ');
    return [
      {
        words: `the text says a ${value} resistor, and the step clips in ${has}`,
        fix: 'write it as "bridge: { from: ..., to: ..., through: ... }", which the program puts into words, and leave it out of the text',
      },
    ];
  });
}

/** A connector taken off, with the rest of its clause; not where it must stay on. */
const TAKEN_OFF =
  /(?<!\b(?:not|never|don't|without) )\b(?:(?:unplug|disconnect)\b[^.,;:]{0,80}|(?:take|pull)\b[^.,;:]{0,80}?\b(?:plug|connector)\b[^.,;:]{0,80}?\boff\b[^.,;:]{0,80})/gi;

function otherPlugs(text: string, { unplugged }: Setup, circuit: Circuit | null): AgainstSetup[] {
  return [...text.matchAll(TAKEN_OFF)].flatMap(([clause]) => {
    const named = partsIn(clause, circuit);
    const strange = named.filter((part) => !unplugged.includes(part));
    if (strange.length > 0)
      return [
        {
          words: `the text says "${clause.trim()}", and the step leaves ${andWords(strange.map((part) => `"${part}"`))} plugged in`,
          fix: `write "unplug: [${[...unplugged, ...strange].join(', ')}]", which the program puts into words and proves, or leave it out of the text`,
        },
      ];
    if (named.length > 0 || unplugged.length > 0) return [];
    return [
      {
        words: `the text says "${clause.trim()}", but the step unplugs nothing`,
        fix: 'write "unplug: [PART]", which the program puts into words, or leave it out of the text',
      },
    ];
  });
}

/** Where a connector is probed from behind. */
const BACK_PROBED = /\bback-?probe\b[^.,;:]{0,80}/gi;

function leadsElsewhere(
  text: string,
  places: readonly string[],
  circuit: Circuit | null,
): AgainstSetup[] {
  const parts = places.map((place) => place.split('.')[0]!);
  return [...text.matchAll(BACK_PROBED)].flatMap(([clause]) =>
    partsIn(clause, circuit)
      .filter((part) => !parts.includes(part))
      .map((part) => ({
        words: `the text says "${clause.trim()}", and the step has no lead at "${part}"`,
        fix: 'change "measure", or leave it out of the text',
      })),
  );
}

/** Parts with a connector that the words name, each by its plain name or its key: `the module`, `the rake controller`. */
function partsIn(words: string, circuit: Circuit | null): string[] {
  const said = words.toLowerCase();
  return (circuit?.parts ?? [])
    .filter((part) =>
      [part.name, part.words].some((name) => new RegExp(`\\bthe ${escaped(name)}\\b`).test(said)),
    )
    .map(({ name }) => name);
}

function escaped(name: string): string {
  return name.toLowerCase().replace(/[^a-z0-9 ]/g, '\\$&');
}
