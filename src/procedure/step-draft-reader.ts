/** One step of a draft: its texts and names as they stand in this vehicle's circuit, and where to say what is wrong with them. */
import { nearestName } from '../source/nearest-name.ts';
import type { Path } from '../source/parse-yaml.ts';
import { placesOf } from './bind-text.ts';
import type { Step as StepDraft } from './generated/procedure.mjs';
import type { Frame, Linker } from './link-procedure.ts';

/** A step as its author wrote it, inside the procedure that is being linked. */
export class StepDraftReader {
  readonly linker: Linker;
  readonly frame: Frame;
  readonly draft: StepDraft;
  /** Its name in the flat tree. */
  readonly id: string;
  private readonly path: Path;

  constructor(linker: Linker, frame: Frame, name: string, draft: StepDraft) {
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
    const filled = withoutPlaces(this.bound(title, ['title']));
    return filled.charAt(0).toUpperCase() + filled.slice(1);
  }

  /** A text of it, needs filled in. */
  text(key: 'say' | 'why' | 'repair' | 'customer'): string {
    const text = this.draft[key];
    return text === undefined ? '' : this.bound(text, [key]);
  }

  /** Places named by a need become the caller's terminal or words; all other places must be terminals. */
  bound(text: string, path: Path): string {
    const filled = text
      .trim()
      .replace(/\s*\n\s*/g, ' ')
      .replace(/\{([a-z][a-z0-9-]*)\}/g, (whole, need: string) => {
        const given = this.frame.given[need];
        if (given === undefined) return whole;
        return given.includes('.') && !given.includes(' ') ? `{${given}}` : given;
      });
    const { circuit } = this.linker;
    for (const place of circuit ? placesOf(filled) : []) {
      const known = circuit!.terminals.map((terminal) => terminal.id);
      if (known.includes(place) || Object.hasOwn(this.frame.parsed.draft.needs ?? {}, place))
        continue;
      const near = nearestName(place, [
        ...known,
        ...Object.keys(this.frame.parsed.draft.needs ?? {}),
      ]);
      this.add(
        'unknown-place',
        path,
        `"{${place}}" is no terminal of circuit "${circuit!.name}"`,
        near ? `did you mean "{${near}}"?` : `known: ${known.slice(0, 16).join(', ')}`,
      );
    }
    return filled;
  }

  /** `$need` becomes what the caller gave; `path` is within this step, as in all of these. */
  fill(value: string, path: Path): string {
    return this.linker.fill(this.frame, value, [...this.path, ...path]);
  }

  /** A terminal of the circuit; one that is not there is told. */
  terminal(value: string, path: Path): string {
    const id = this.fill(value, path);
    const { circuit } = this.linker;
    if (!circuit || this.lacks(value)) return id;
    const known = circuit.terminals.map((terminal) => terminal.id);
    if (!known.includes(id)) {
      const near = nearestName(id, known);
      this.add(
        'unknown-terminal',
        path,
        `circuit "${circuit.name}" has no terminal "${id}"`,
        near ? `did you mean "${near}"?` : `known: ${known.slice(0, 16).join(', ')}`,
      );
    }
    return id;
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
  ): void {
    this.linker.add(code, this.frame.parsed.source, [...this.path, ...path], wording, fix, what);
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
function withoutPlaces(title: string): string {
  return placesOf(title).reduce((text, place) => {
    const [part, pin = ''] = place.split('.');
    const named = part === 'sensor' ? pin : `${part} ${pin}`;
    return text.replace(`{${place}}`, named.replace(/-/g, ' '));
  }, title);
}
