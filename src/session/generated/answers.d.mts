// Made from docs/schema/answers.schema.json by scripts/schemas.mjs. Change the schema, not this file.

/**
 * Name of the procedure; may be left out when the command line names it.
 */
export type Procedure = string
/**
 * The step this belongs to; the run stops when another is asked.
 */
export type Step = string
/**
 * As a person types it.
 */
export type Reading = (string | number)
/**
 * Name of an outcome, or of a look.
 */
export type Choose = string
export type Done = true
/**
 * Why.
 */
export type CannotDo = string
/**
 * The cautions of this step are read and acknowledged.
 */
export type Acknowledge = true
/**
 * A remark that goes into the record.
 */
export type Note = string
/**
 * Takes back the last answer.
 */
export type Back = true
export type Pause = true
/**
 * Accepts the conclusion.
 */
export type Conclude = true
/**
 * In the order in which they are given.
 * 
 * @minItems 1
 * @maxItems 1000
 */
export type Answers = AnswerDraft[]

/**
 * What a person would do in a session, in order, for a run without one: ohmward run PROCEDURE --answers FILE.
 */
export interface AnswersDraft {
procedure?: Procedure
answers: Answers
}
export interface AnswerDraft {
step?: Step
reading?: Reading
choose?: Choose
done?: Done
cannot?: CannotDo
acknowledge?: Acknowledge
note?: Note
back?: Back
pause?: Pause
conclude?: Conclude
}

import type { SchemaError } from '../../source/schema-issues.ts';
/** True when `data` has the shape of AnswersDraft; `errors` of the last call otherwise. */
declare const validate: ((data: unknown) => data is AnswersDraft) & { errors?: SchemaError[] | null };
export default validate;
