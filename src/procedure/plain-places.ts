/**
 * Places of leads that a text says in plain words, such as "red lead on the signal pin at the sensor": found by the names
 * that the circuit gives to its parts and terminals, so that only what this circuit has is taken for a place.
 */
import type { Circuit } from '../circuit/circuit.ts';
import { leads } from '../circuit/refuse-test.ts';
import type { Probe, Setup, TerminalId } from '../circuit/test.ts';
import { withoutPlaces } from './bind-text.ts';
import { touched } from './setup-say.ts';

/** A clause that puts a lead where the step has none. */
export interface StrangePlace {
  readonly clause: string;
  /** `the red lead`, or `a lead` where any of them is meant. */
  readonly lead: string;
  /** `"signal"`, or the part. */
  readonly place: string;
  readonly has: readonly TerminalId[];
}

/** What says that hands put something somewhere. */
const HANDS =
  /\b(?:leads?|(?:red|black) one|tip|clips?|clamps?|probes?|back-?probe|touch|measure|resistor|jumper|read (?:at|on|from|across))\b/i;
const NOT = /\b(?:not|never|don't|without|instead of|away from)\b/i;
const LEAD_NAMES = /\b(?:scope ground|ground (?:clip|lead))\b/gi;
const PIN = '(?:pin|terminal|contact|cavity|tab|wire|post|pole|lug|eyelet)s?';

/** The clauses of `text` that put a lead where none of `probes` and no bridge of the setup has one. */
export function strangePlainPlaces(
  text: string,
  setup: Setup,
  probes: readonly Probe[],
  circuit: Circuit,
): StrangePlace[] {
  const names = new PlaceNames(circuit);
  return clausesOf(withoutPlaces(text)).flatMap((clause) => {
    if (!HANDS.test(clause) || NOT.test(clause)) return [];
    const [lead, has] = leadOf(clause, setup, probes);
    if (has.length === 0) return [];
    const words = clause.replace(LEAD_NAMES, 'lead');
    const parts = names.partsIn(words);
    const onParts = has.filter((id) => parts.length === 0 || parts.includes(partOf(id)));
    const roles = names.rolesIn(words);
    const strange = roles.filter((role) => !onParts.some((id) => isRole(role, id)));
    if (strange.length > 0)
      return strange.map((role) => ({ clause, lead, place: role.replaceAll('-', ' '), has }));
    return parts
      .filter((part) => !has.some((id) => partOf(id) === part))
      .map((part) => ({ clause, lead, place: part, has }));
  });
}

/** Split where a thought ends; the colon behind the name of a lead joins. */
export function clausesOf(text: string): string[] {
  return text
    .split(/(?<!\b(?:lead|tip|ground|clip)):\s|[.;,!?](?:\s|$)|\band (?=(?:the )?(?:red|black)\b)/i)
    .map((clause) => clause.trim())
    .filter((clause) => clause !== '');
}

/** Parts with a connector that the words name, each by its plain name or its key: `the module`, `the rake controller`. */
export function partsIn(words: string, circuit: Circuit | null): string[] {
  return (circuit?.parts ?? [])
    .filter((part) =>
      [part.name, part.words].some((name) =>
        new RegExp(`(?:\\bthe |^\\s*)${escaped(name)}\\b`, 'i').test(words),
      ),
    )
    .map(({ name }) => name);
}

/** Which lead a clause is about, and where the step has it. */
function leadOf(
  clause: string,
  setup: Setup,
  probes: readonly Probe[],
): readonly [string, readonly TerminalId[]] {
  const ends = (at: number) => probes.flatMap((probe) => leads(probe)[at] ?? []);
  const isRed = /\b(?:red (?:lead|one)|scope tip)\b/i.test(clause);
  const isBlack = /\b(?:black (?:lead|one)|scope ground|ground clip)\b/i.test(clause);
  if (isRed && !isBlack) return ['the red lead', ends(0)];
  if (isBlack && !isRed) return ['the black lead', ends(1)];
  return ['a lead', probes.flatMap((probe) => touched(setup, probe))];
}

/** The names by which a circuit's terminals are said. */
class PlaceNames {
  private readonly circuit: Circuit;
  /** `signal`, `signal-1`, `87`: the longest first, so that none is found inside another one. */
  private readonly roles: readonly string[];
  private readonly parts: readonly string[];

  constructor(circuit: Circuit) {
    this.circuit = circuit;
    const names = circuit.parts.map(({ name }) => name);
    const all = circuit.terminals.map(({ id }) => roleOf(id));
    const bare = all.map((role) => role.replace(/-\d+$/, ''));
    this.roles = [...new Set([...all, ...bare])]
      .filter((role) => !names.includes(role))
      .sort((a, b) => b.length - a.length);
    this.parts = ['battery', ...circuit.parts.flatMap(({ name, words }) => [name, words])];
  }

  partsIn(words: string): string[] {
    const named = partsIn(words, this.circuit);
    return /\bbattery\b/i.test(words) ? ['battery', ...named] : named;
  }

  rolesIn(words: string): string[] {
    const parts = `(?:${this.parts.map(escaped).join('|')})`;
    let left = words;
    return this.roles.filter((role) => {
      const name = `${escaped(role).replaceAll('-', '[- ]')}(?![-\\w])`;
      const said = [
        `\\b${name} ${PIN}\\b`,
        `\\b${PIN} (?:of )?(?:the )?${name}`,
        `\\b${parts}(?:['’]s)? ${name}`,
        `\\b${name} (?:of|at) (?:the )?${parts}\\b`,
        // "To ground" is any ground, and "in" and "out" are words of every sentence.
        ...(/^(?:ground|in|out|plus|minus)$/.test(role)
          ? []
          : [`\\b(?:on|at|to|from|and) (?:the )?${name}`]),
      ].some((pattern) => new RegExp(pattern, 'i').test(left));
      if (said) left = left.replaceAll(new RegExp(`\\b${name}`, 'gi'), '#');
      return said;
    });
  }
}

/** Whether a terminal is what is said: "signal" is both "signal 1" and "signal 2". */
function isRole(said: string, id: TerminalId): boolean {
  const role = roleOf(id);
  return role === said || role.startsWith(`${said}-`);
}

function roleOf(id: TerminalId): string {
  return id.split('.')[1] ?? '';
}

function partOf(id: TerminalId): string {
  return id.split('.')[0]!;
}

function escaped(name: string): string {
  return name.toLowerCase().replace(/[^a-z0-9 -]/g, '\\$&');
}
