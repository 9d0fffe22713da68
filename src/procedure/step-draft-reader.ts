/** One step of a draft: its texts and names as they stand in this vehicle's circuit, and where to say what is wrong with them. */
import { nameFix, nearestName } from '../source/nearest-name.ts';
import type { Path } from '../source/yaml-source.ts';
import { namedPlaces } from './bind-text.ts';
import type { Step as StepDraft } from './generated/procedure.mjs';
import { passedOn } from './link-call.ts';
import type { Frame, Linking, Written } from './linking.ts';
import { openPlaces } from './open-place.ts';

/** A step as its author wrote it, inside the procedure that is being linked. */
export class StepDraftReader {
  readonly linker: Linking;
  readonly frame: Frame;
  readonly draft: StepDraft;
  /** Its name in the flat tree. */
  readonly id: string;
  private readonly path: Path;
  /** Whether anything in it is an error, told before or not. */
  isWrong = false;

  constructor(linker: Linking, frame: Frame, name: string, draft: StepDraft) {
    this.linker = linker;
    this.frame = frame;
    this.draft = draft;
    this.path = ['steps', name];
    this.id = frame.prefix + name;
  }

  /** The flat name of the step that `name` stands for; an unknown one is told at `path` within this step. */
  target(name: string, path: Path): string {
    return this.linker.target(this.frame, name, [...this.path, ...path]);
  }

  /** Its title with the places in a word or two; its name when it has none. */
  title(): string {
    const { title } = this.draft;
    if (title === undefined) return words(this.id);
    const filled = inAWord(this.bound(title, ['title']));
    return filled.charAt(0).toUpperCase() + filled.slice(1);
  }

  /** A text of it, needs filled in. */
  text(key: 'say' | 'why' | 'repair' | 'customer'): string {
    const text = this.draft[key];
    return text === undefined ? '' : this.bound(text, [key]);
  }

  /** Places named by a need become the caller's terminal or words; all other places must be terminals. */
  bound(text: string, path: Path): string {
    this.tellOpenPlaces(text, path);
    const needs = new Map<string, Written>();
    const filled = text
      .split('\n')
      .map((line) => line.trim())
      .filter((line) => line !== '')
      .join(' ')
      .replace(/\{([a-z][a-z0-9-]*)\}/g, (whole, need: string) => {
        const given = this.frame.given[need];
        if (given === undefined) return whole;
        if (!given.includes('.') || given.includes(' ')) return given;
        needs.set(given, this.frame.givenAt[need]!);
        return `{${given}}`;
      });
    const { circuit } = this.linker;
    for (const place of circuit ? namedPlaces(filled) : []) {
      const known = circuit!.terminals.map((terminal) => terminal.id);
      if (known.includes(place) || Object.hasOwn(this.frame.parsed.draft.needs ?? {}, place))
        continue;
      const given = needs.get(place);
      if (given) {
        this.noTerminal(place, given);
        continue;
      }
      const near = nearestName(place, [
        ...known,
        ...Object.keys(this.frame.parsed.draft.needs ?? {}),
      ]);
      this.add(
        'unknown-place',
        path,
        `"{${place}}" is not a terminal of circuit "${circuit!.name}"`,
        near ? `did you mean "{${near}}"?` : `known: ${known.slice(0, 16).join(', ')}`,
      );
    }
    return filled;
  }

  /** Names of the cautions that its author and its callers ask for; an unknown one is told. */
  namedCautions(): readonly string[] {
    const own = this.linker.namedCautions(this.frame.parsed.source, this.path, this.draft);
    return [...this.frame.cautions, ...own];
  }

  /** `$need` becomes what the caller gave; `path` is within this step, as in all of these. */
  fill(value: string, path: Path): string {
    this.isWrong ||= this.lacks(value);
    return this.linker.fill(this.frame, value, [...this.path, ...path]);
  }

  /** A terminal of the circuit; one that is not there is told. */
  terminal(value: string, path: Path): string {
    const id = this.fill(value, path);
    const { circuit } = this.linker;
    if (!circuit || this.lacks(value)) return id;
    const known = circuit.terminals.map((terminal) => terminal.id);
    return known.includes(id) ? id : this.noTerminal(id, this.writtenAt(value, path));
  }

  private noTerminal(id: string, place: Written): string {
    const { name, terminals } = this.linker.circuit!;
    const known = terminals.map((terminal) => terminal.id);
    const wording = `circuit "${name}" has no terminal "${id}"`;
    return this.unknown('unknown-terminal', id, place, { words: wording, known });
  }

  /** Tells a name that stands for nothing, where it was written; gives the one that was most likely meant. */
  unknown(
    code: string,
    name: string,
    { source, path }: Written,
    { words: wording, known }: { readonly words: string; readonly known: readonly string[] },
  ): string {
    const near = nearestName(name, known);
    const fix = near ? `did you mean "${near}"?` : `known: ${known.slice(0, 16).join(', ')}`;
    this.isWrong ||= near === null;
    this.linker.add(code, source, path, wording, fix, 'value', 'error', near !== null);
    return near ?? name;
  }

  /** Faults of the circuit by a pattern; in a sub-procedure, which is for many circuits, it may fit none. */
  faults(pattern: string, path: Path): readonly string[] {
    const { circuit } = this.linker;
    const filled = this.fill(pattern, path);
    if (!circuit) return [filled];
    const known = circuit.faults.map((fault) => fault.id);
    const found = known.filter((id) => fits(filled, id));
    if (found.length > 0 || this.frame.callers.length > 0) return found;
    const near = nearestName(filled, known);
    const wording = `circuit "${circuit.name}" has no fault "${filled}"`;
    this.add('unknown-fault', path, wording, nameFix(filled, known), 'value', near !== null);
    return near === null ? [] : [near];
  }

  /** Where a value was written: at `path` within this step, or by the caller who gave it for a need. */
  writtenAt(value: string, path: Path): Written {
    const here = { source: this.frame.parsed.source, path: [...this.path, ...path] };
    return passedOn(this.frame, value) ?? here;
  }

  /** A need that the caller has not given, which is told at the caller. */
  lacks(value: string): boolean {
    return value.startsWith('$') && this.frame.given[value.slice(1)] === undefined;
  }

  /** Whether any need is missing. */
  lacksAny(): boolean {
    const needs = Object.keys(this.frame.parsed.draft.needs ?? {});
    return needs.some((need) => this.frame.given[need] === undefined);
  }

  /** Tells something at a place within this step. */
  add(
    code: string,
    path: Path,
    wording: string,
    fix?: string,
    what: 'key' | 'value' = 'value',
    isMeant = false,
  ): void {
    const { source } = this.frame.parsed;
    this.isWrong = true;
    this.linker.add(code, source, [...this.path, ...path], wording, fix, what, 'error', isMeant);
  }

  private tellOpenPlaces(text: string, path: Path): void {
    const { source, draft } = this.frame.parsed;
    const known = [
      ...(this.linker.circuit?.terminals ?? []).map(({ id }) => id),
      ...Object.keys(draft.needs ?? {}),
    ];
    for (const { words: wording, fix } of openPlaces(text, known))
      this.linker.add('open-place', source, [...this.path, ...path], wording, fix, 'value');
  }

  /** The same for what may be meant so. */
  warn(code: string, path: Path, wording: string, fix: string): void {
    const { source } = this.frame.parsed;
    this.linker.add(code, source, [...this.path, ...path], wording, fix, 'key', 'warning');
  }
}

/** A name as words: `pull-down` is "pull down". */
export function words(name: string): string {
  return name.slice(name.lastIndexOf('/') + 1).replace(/-/g, ' ');
}

/** A title names a place in a word or two: `{sensor.signal-1}` is "signal 1", `{module.signal}` "module signal". */
function inAWord(title: string): string {
  return namedPlaces(title).reduce((text, place) => {
    const [part, pin = ''] = place.split('.');
    const named = part === 'sensor' ? pin : `${part} ${pin}`;
    return text.replace(`{${place}}`, named.replace(/-/g, ' '));
  }, title);
}

/** Whether a name fits a pattern in which each `*` stands for any signs, none too. */
function fits(pattern: string, name: string): boolean {
  const [head = '', ...rest] = pattern.split('*');
  const tail = rest.pop();
  if (tail === undefined) return name === pattern;
  if (!name.startsWith(head) || !name.endsWith(tail)) return false;
  let at = head.length;
  for (const part of rest) {
    const found = name.indexOf(part, at);
    if (found < 0) return false;
    at = found + part.length;
  }
  return at + tail.length <= name.length;
}
