/**
 * What a sentence of a conclusion states as seen, and which steps show it. A conclusion's own verdict ("the feed wire is at
 * fault") is proved by where the cars end; what is said to have been seen on the way is shown by a step alone.
 */
import {
  type Circuit,
  moduleOf,
  SENSOR_KINDS,
  sensorOf,
  type WireRole,
} from '../circuit/circuit.ts';
import type { Probe, TerminalId } from '../circuit/test.ts';
import type { Step } from '../procedure/procedure.ts';

type AskingStep = Exclude<Step, { kind: 'conclude' }>;

/** Something stated as seen. */
export interface Claim {
  /** The words that state it. */
  readonly said: string;
  /** What shows it, as it stands in a finding. */
  readonly needs: string;
  /** Null where nothing can: it is said to be good, and the same conclusion stands for it. */
  readonly isShownBy: ((step: AskingStep) => boolean) | null;
}

/**
 * The claims of a conclusion's text, one after the other. Nothing shows to be good what the conclusion itself stands for:
 * `faults` are those.
 */
export function claimsOf(text: string, circuit: Circuit, faults: readonly string[]): Claim[] {
  const sentences = text.split(/(?<=[.;])\s+/);
  return sentences.flatMap((sentence) =>
    SEEN.flatMap(({ words, needs, shows }) => {
      const found = words.exec(sentence);
      if (!found || DENIED.test(sentence.slice(0, found.index))) return [];
      const clause = sentence.slice(0, found.index).split(/[,;:]/).at(-1)! + found[0];
      return [{ said: found[0].trim(), needs, isShownBy: shows(circuit, clause, faults) }];
    }),
  );
}

/** Before words that are then not stated: what could not be done, or is only likely. */
const DENIED =
  /\b(?:without|cannot be|can't be|were not|nobody|not yet|either it was|could not)\s*(?:\w+\s){0,4}$/i;

interface SightWords {
  readonly words: RegExp;
  readonly needs: string;
  /** Whether a step shows it; `clause` is what stands before the words as far as a comma, and they. */
  readonly shows: (
    circuit: Circuit,
    clause: string,
    faults: readonly string[],
  ) => ((step: AskingStep) => boolean) | null;
}

const SEEN: readonly SightWords[] = [
  {
    words: /\b(?:a|another) good (?:\w+ )*?(?:sensor|one)\b(?! (?:is|was) at hand)/i,
    needs: 'a step with a good sensor plugged in',
    shows: () => (step) =>
      step.setup.sensor === 'spare' || /\bgood (?:sensor|one)\b/i.test(step.say),
  },
  {
    words:
      /\b(?:does|do|did) not (?:count|follow)\b|\bnot counted\b|\b(?:counts|follows)\b|\bshows no speed\b/i,
    needs: "a look at the module's live data",
    shows: () => (step) => probeOf(step)?.kind === 'counts',
  },
  {
    words: /\bnothing (?:is|was) seen\b|\bthe look shows\b|\bshows? why\b/i,
    needs: 'a look at the wheel',
    shows: () => (step) => isLookAt(step, 'target'),
  },
  {
    words:
      /\bpulses (?:are|come)\b|\b(?:waves|levels) (?:are|stand)\b|\bsignal (?:is|stands) (?:full|weak|uneven|wrong)\b|\bsame weak signal\b|\bfull waves?\b|\b(?:full|even) (?:signal|levels)\b/i,
    needs: 'a scope picture or live data',
    // A number that the circuit does not compute is read of the signal as well: its volts on AC, its hertz.
    shows: () => (step) =>
      ['pattern', 'timing', 'counts'].includes(probeOf(step)?.kind ?? '') ||
      (step.kind === 'measure' && step.probe === null),
  },
  {
    words: /\bown pins\b(?! (?:are|have|is|or))/i,
    needs: "a reading at the part's own pins",
    shows: () => (step) => leadsOf(step).some((lead) => lead.endsWith('.pin')),
  },
  {
    words: /\b(?:drops? out|jumps?)\b[^.]*\bmoved\b|\bbreaks contact when\b/i,
    needs: 'a step that moves the harness',
    shows: () => (step) => step.family === 'wiggle',
  },
  {
    // A module that counts tells nothing of height, volts or current.
    words:
      /\bgood (?:\w+ )*?(?:sensor|one) (?:too\b|gives\b|draws\b|shows\b)|\bwith a good (?:\w+ )*?(?:sensor|one) too\b/i,
    needs: 'a step with a good sensor that reads or shows what is said of it',
    shows: () => (step) => {
      const kind = probeOf(step)?.kind;
      return step.setup.sensor === 'spare' && kind !== undefined && kind !== 'counts';
    },
  },
  {
    words: /\bohms (?:jump|drop|rise|change)\b/i,
    needs: 'a reading in ohms',
    shows: () => (step) => readsOf(step).some((probe) => probe.kind === 'ohms'),
  },
  {
    words: /\bcannot be pulled (?:down|up)\b/i,
    needs: 'a step that pulls at the signal',
    shows: ({ wires }) => {
      const signals = wires
        .filter(({ role }) => role === 'signal')
        .flatMap(({ from, to }) => [from, to]);
      return (step) =>
        step.setup.bridges.some(({ from, to }) =>
          [from, to].some((end) => signals.includes(end.replace(/\.pin$/, ''))),
        );
    },
  },
  {
    words: /\bbias of (?:one|the \w+) side\b/i,
    needs: 'a reading of the bias',
    shows: (circuit) => {
      const reads = readsWire(circuit, ['signal']);
      return (step) => probeOf(step)?.kind === 'volts' && reads(step);
    },
  },
  {
    words: /\b(?:sensor|pedal) is starved\b/i,
    needs: "a reading of the sensor's own supply",
    shows: (circuit) => {
      const { name } = sensorOf(circuit);
      return (step) =>
        probeOf(step)?.kind === 'volts' &&
        leadsOf(step).some((lead) => lead.startsWith(`${name}.`));
    },
  },
  {
    words: /\b(?:lent|temporary pull-up)\b/i,
    needs: 'a step with a bridge or a test light',
    shows: () => (step) =>
      step.setup.bridges.length > 0 ||
      probeOf(step)?.kind === 'light' ||
      probeOf(step)?.kind === 'lamp',
  },
  {
    words: /\bwith (?:both sensors|both ends|everything) (?:off|unplugged)\b/i,
    needs: 'a step with both of them unplugged',
    shows: () => (step) => step.setup.unplugged.length >= 2,
  },
  {
    words: /\bwith the (?:\w+ )?module (?:off|unplugged)\b/i,
    needs: 'a step with the module unplugged',
    shows: (circuit) => {
      const { name } = moduleOf(circuit);
      return (step) => step.setup.unplugged.includes(name);
    },
  },
  {
    words:
      /\bwith the (?!\w* ?module\b)(?:[\w-]+ )+(?:off|unplugged)\b|\bwithout the (?:sensor|pedal) (?:the )?\w+(?: \d)? (?:comes|is)\b|\bthere without the sensor\b/i,
    needs: 'a step with that part unplugged',
    shows: ({ parts }, clause) => {
      const others = parts.filter(({ kind }) => kind !== 'module');
      const named = others.filter(({ words, name }) =>
        [words, name.replace(/-/g, ' ')].some((one) =>
          clause.toLowerCase().includes(one.toLowerCase()),
        ),
      );
      const names = (named.length > 0 ? named : others).map(({ name }) => name);
      return (step) => names.some((name) => step.setup.unplugged.includes(name));
    },
  },
  {
    words:
      /\bleaves? the (?:\w+ )?module\b|\b(?:at|to) the (?:\w+ )?module'?s? (?:own )?(?:plug|connector|terminal|itself)\b|\bfrom the module's (?:plug|connector)\b|\bwrong at (?:both terminals of )?the module\b|\b(?:stands?|there is (?:a signal|no feed)) at the (?:\w+ )?(?:module|\{module\.)/i,
    needs: "a reading at the module's terminals",
    shows: (circuit) => {
      const { name } = moduleOf(circuit);
      return (step) => leadsOf(step).some((lead) => lead.startsWith(`${name}.`));
    },
  },
  {
    words:
      /\b(?:does|do) not (?:arrive|reach|come)\b[^.]*\b(?:sensor|plug|connector|pedal|wheel|it)\b|\barrives? at (?:the|its) (?:\w+ )?(?:sensor|plug|connector|pedal)\b|\blifted at the (?:\w+ )?(?:sensor|pedal)\b|\bno pull-up at the (?:\w+ )*(?:sensor|connector|plug|pedal)\b|\bminus stands at the sensor\b|\bat the sensor is negative\b/i,
    needs: "a reading at the sensor's connector",
    shows: (circuit) => {
      const { name } = sensorOf(circuit);
      return (step) => leadsOf(step).some((lead) => lead.startsWith(`${name}.`));
    },
  },
  {
    words:
      /\bneighbour\b[^.]*\bhas its\b|\bboth sensors (?:are|that share)\b|\bsensor grounds of the module\b|\bboth terminals of the module\b/i,
    needs: 'a reading at the neighbour or at its terminal',
    shows: ({ parts }) => {
      const others = parts.filter(({ kind }) => kind === 'neighbour').map(({ name }) => name);
      return (step) =>
        leadsOf(step).some((lead) =>
          others.some((name) => lead.startsWith(name) || lead.includes(`.${name.split('-')[0]}`)),
        );
    },
  },
  {
    words:
      /\b(?:before|behind|after|leaves|reach(?:es)?) the (?:fuse|relay)\b|\b(?:fuse|relay) (?:is|had) (?:blown|whole)\b|\brelay passes\b|\bblew the fuse\b/i,
    needs: 'a reading or a look at fuse or relay',
    shows: ({ parts }, clause) => {
      const names = parts
        .filter(({ kind }) => (kind === 'fuse' || kind === 'relay') && clause.includes(kind))
        .map(({ name }) => name);
      return (step) =>
        names.some(
          (name) =>
            leadsOf(step).some((lead) => lead.startsWith(`${name}.`)) ||
            step.setup.bridges.some(({ from }) => from.startsWith(`${name}.`)) ||
            isLookAt(step, name),
        );
    },
  },
  {
    words:
      /\b(?:corroded|burnt|wet|rubbed through|rubs? (?:through|against))\b(?!.*told apart)|\b(?:plug|connector|socket|contact)\b[^.]*\bworn\b/i,
    needs: 'a look at it',
    shows: () => (step) => probeOf(step)?.kind === 'inspect',
  },
  {
    words: /(?<!\blikely (?:since|in) )\ban earlier repair\b/i,
    needs: 'anything that shows when it happened',
    shows: () => () => false,
  },
  {
    words: /\bgrounds?\b[^.]*\blifted\b/i,
    needs: 'a reading at a ground of the sensor',
    shows: (circuit) => readsWire(circuit, ['ground']),
  },
  {
    words:
      /\b(?:reference|feed)(?: \d)? (?:is|are|stays|was) (?:\w+ )?(?:wrong|low|too|down|there|back|missing|lost)\b|\bmore than a reference (?:stands\b|on\b)/i,
    needs: 'a reading at a feed',
    shows: (circuit) => readsWire(circuit, ['reference', 'supply']),
  },
  {
    words:
      /\bsignal(?: \w+)? (?:is|are|was) (?:not right|lost|missing|too)\b|\bsignal (?:\w+ )?reaches\b|\bsignal that is there\b|\bno signal comes\b|\bthere is no signal\b/i,
    needs: 'a reading or a look at the signal',
    shows: (circuit) => {
      const reads = readsWire(circuit, ['signal']);
      return (step) => reads(step) || (step.kind === 'measure' && step.probe === null);
    },
  },
  {
    // Of a part of the car, by whom it was seen or not: a good sensor is one that is lent.
    words:
      /\b(?<!that )(?:is|are|was|were|looks?|reads?)(?: all| both| itself)? (?:good|right|sound|proven|free|fine|tested|alive|healthy|measured|in order|intact)\b|\b(?<!not )carry\b|\b[Nn]either .* at fault\b/,
    needs: 'a step that reads or looks at that part',
    shows: (circuit, clause, faults) => {
      const things = thingsNamed(circuit, clause);
      const blamed = circuit.faults
        .filter(({ id }) => faults.includes(id))
        .flatMap(({ subject }) => subject);
      if (things.some((thing) => blamed.includes(thing))) return null;
      const places = things.flatMap((thing) => placesOf(circuit, thing));
      return (step) => {
        const probe = probeOf(step);
        // Of "the electrics" any reading is one.
        if (things.length === 0) return probe !== null;
        if (probe?.kind === 'inspect') return things.includes(probe.of);
        return leadsOf(step).some((lead) => places.some((place) => lead.startsWith(place)));
      };
    },
  },
];

/** Whether a step reads at an end of a wire that carries this. */
function readsWire({ wires }: Circuit, roles: readonly WireRole[]): (step: AskingStep) => boolean {
  const ends = new Set(
    wires.filter(({ role }) => roles.includes(role)).flatMap(({ from, to }) => [from, to]),
  );
  return (step) => leadsOf(step).some((lead) => ends.has(lead.replace(/\.pin$/, '')));
}

/** What a clause names, as faults name what they are in: `sensor`, `wire.feed`, `connector.sensor`, `target`. */
function thingsNamed({ parts, wires }: Circuit, clause: string): string[] {
  const text = clause.toLowerCase().replace(/-/g, ' ');
  const says = (words: string) => new RegExp(`\\b${words}\\b`).test(text);
  const plain = (name: string) => name.replace(/-/g, ' ');
  const named = parts.filter(
    ({ name, words, kind }) =>
      says(words.toLowerCase()) ||
      says(plain(name)) ||
      ((SENSOR_KINDS as readonly string[]).includes(kind) && says('(?:sensor|pedal|coil|track)')),
  );
  const plugs = says('(?:plug|connector|contacts?)')
    ? named.map(({ name }) => `connector.${name}`)
    : [];
  const own = wires
    .filter(
      ({ name, role }) => says(`${plain(name)} wires?`) || (role === 'signal' && says('signals?')),
    )
    .map(({ name }) => name);
  // Of "the wires" and "the wiring" none is left out.
  const all =
    own.length === 0 && says('(?:wires?|wiring|harness)') ? wires.map(({ name }) => name) : own;
  return [
    ...(plugs.length > 0 ? plugs : all.length > 0 ? [] : named.map(({ name }) => name)),
    ...all.map((name) => `wire.${name}`),
    ...(says('(?:target|wheel|ring|gap)(?! sensor| speed)') && plugs.length === 0
      ? ['target']
      : []),
  ];
}

/** Where leads read a thing: terminals as they begin. */
function placesOf({ wires }: Circuit, thing: string): string[] {
  const [kind, name] = thing.split('.');
  if (kind === 'wire')
    return wires.filter((wire) => wire.name === name).flatMap(({ from, to }) => [from, to]);
  return kind === 'connector' ? [`${name}.`] : [`${thing}.`];
}

function probeOf(step: AskingStep): Probe | null {
  return step.kind === 'measure' || step.kind === 'look' ? step.probe : null;
}

/** All that a step reads or watches. */
function readsOf(step: AskingStep): readonly Probe[] {
  const probe = probeOf(step);
  const watched = 'watched' in step ? (step.watched ?? []) : [];
  return probe ? [probe, ...watched] : watched;
}

function leadsOf(step: AskingStep): TerminalId[] {
  const probe = probeOf(step);
  if (!probe) return [];
  if ('plus' in probe) return [probe.plus, probe.minus];
  return probe.kind === 'counts' ? [probe.input] : [];
}

function isLookAt(step: AskingStep, thing: string): boolean {
  const probe = probeOf(step);
  return probe?.kind === 'inspect' && (probe.of === thing || probe.of === `connector.${thing}`);
}
