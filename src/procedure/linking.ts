/** A procedure in the making: what each step of it can ask of the whole, and where it is told what is wrong. */
import type { Circuit } from '../circuit/circuit.ts';
import type { Model } from '../circuit/model.ts';
import type { Issue } from '../source/issue.ts';
import type { Path, YamlSource } from '../source/yaml-source.ts';
import type { CautionRule } from './cautions.ts';
import type { Step as StepDraft } from './generated/procedure.mjs';
import type { Drive } from './job.ts';
import type { ParsedProcedure } from './parse-procedure.ts';

/** Where something was written. */
export interface Written {
  readonly source: YamlSource;
  readonly path: Path;
}

/** One procedure being folded in: the values of its needs, the prefix of its steps, where its results lead. */
export interface Frame {
  readonly parsed: ParsedProcedure;
  readonly prefix: string;
  readonly given: Readonly<Record<string, string>>;
  /** Where the caller wrote each of them. */
  readonly givenAt: Readonly<Record<string, Written>>;
  readonly results: Readonly<Record<string, string>>;
  readonly callers: readonly string[];
  /** Cautions that the callers ask for before each step inside. */
  readonly cautions: readonly string[];
}

/** The tree as its steps see it. */
export interface Linking {
  readonly issues: readonly Issue[];
  readonly circuit: Circuit | null;
  readonly library: { readonly cautions: readonly CautionRule[] };
  readonly drive: Drive;
  /** Whether the procedure names a circuit, known or not. */
  readonly namesCircuit: boolean;
  /** Of its circuit; null without one. */
  readonly model: () => Model | null;
  /** The cautions that a step asks for by name; one that is not there is told. */
  readonly namedCautions: (source: YamlSource, path: Path, draft: StepDraft) => readonly string[];
  /** The flat id of a step named in a frame; an unknown name is an issue and leads to the start. */
  readonly target: (frame: Frame, name: string, path: Path) => string;
  /** `$name` becomes what the caller gave. */
  readonly fill: (frame: Frame, value: string, path: Path) => string;
  /** Tells what is wrong; `isMeant` where the tree stays as it was meant all the same. */
  readonly add: (
    code: string,
    source: YamlSource,
    path: Path,
    words: string,
    fix?: string,
    what?: 'key' | 'value',
    severity?: Issue['severity'],
    isMeant?: boolean,
  ) => void;
}
