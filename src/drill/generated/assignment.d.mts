// Made from docs/schema/assignment.schema.json by scripts/schemas.mjs. Change the schema, not this file.

/**
 * Short name, written into each student's file.
 */
export type Name = string
/**
 * What the students read above the list.
 */
export type Heading = string
/**
 * Name of a procedure, or of a circuit for a drill without one.
 */
export type Procedure = string
/**
 * How much help there is, or what makes it harder.
 */
export type Level = ("named" | "unnamed" | "blind" | "intermittent" | "double" | "misled")
/**
 * A number gives every student the same vehicle; own gives each their own, from the name.
 */
export type Seed = ("own" | number)
/**
 * Minutes on the clock; over it there are no points for time.
 */
export type TimeLimit = number
/**
 * In the order in which they are done.
 * 
 * @minItems 1
 * @maxItems 50
 */
export type Drills = AssignedDrill[]

/**
 * Drills that an instructor sets: ohmward drill --assignment FILE --student NAME.
 */
export interface AssignmentDraft {
assignment: Name
title?: Heading
drills: Drills
}
export interface AssignedDrill {
procedure: Procedure
level: Level
seed?: Seed
"limit-minutes"?: TimeLimit
}

import type { SchemaError } from '../../source/schema-issues.ts';
/** True when `data` has the shape of AssignmentDraft; `errors` of the last call otherwise. */
declare const validate: ((data: unknown) => data is AssignmentDraft) & { errors?: SchemaError[] | null };
export default validate;
