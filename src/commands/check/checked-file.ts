/** A file that was checked, with what it holds. */
import type { Circuit } from '../../circuit/circuit.ts';
import type { Assignment } from '../../drill/assignment.ts';
import type { ActionsFile } from '../../drill/drill-actions.ts';
import type { LoadedCautions } from '../../procedure/cautions.ts';
import type { LoadedJob } from '../../procedure/load-job.ts';
import type { ParsedProcedure } from '../../procedure/parse-procedure.ts';
import type { AnswersFile } from '../../session/answers-file.ts';
import type { Issue } from '../../source/issue.ts';
import type { FileKind } from './file-kind.ts';
import type { GatheredFile } from './gather-files.ts';

/** What a file holds, by its kind. */
export type LoadedValue =
  | { readonly kind: 'procedure'; readonly value: ParsedProcedure }
  | { readonly kind: 'circuit'; readonly value: Circuit }
  | { readonly kind: 'cautions'; readonly value: LoadedCautions }
  | { readonly kind: 'job'; readonly value: LoadedJob }
  | { readonly kind: 'assignment'; readonly value: Assignment }
  | { readonly kind: 'answers'; readonly value: AnswersFile }
  | { readonly kind: 'actions'; readonly value: ActionsFile };

/** A file that was read, of a known kind or not. */
export interface CheckedFile extends GatheredFile {
  readonly kind: FileKind | null;
  readonly loaded: LoadedValue | null;
  readonly issues: readonly Issue[];
}
