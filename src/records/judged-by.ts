/**
 * By which rules a conclusion was judged, where they are not those of this program, and what today's come to. What today's
 * rules have not derived, no paper says as if they had.
 */
import type { Differing } from '../session/derive-again.ts';
import { RULES } from '../session/events.ts';
import { rulesInForce, type Session } from '../session/session.ts';
import type { RecordConclusion, SessionRecord } from './record-form.ts';

type JudgedBy = NonNullable<RecordConclusion['judgedBy']>;

/** The rules under which the session was concluded; nothing where they are ours. */
export function judgedBy({ events, opened, concluded }: Session): { judgedBy?: JudgedBy } {
  const end = concluded ? events.indexOf(concluded) : events.length;
  const rules = rulesInForce({ opened, events: events.slice(0, end) });
  return rules === RULES ? {} : { judgedBy: { rules, today: RULES, again: 'not', differs: [] } };
}

/** The record with what came out when its file was derived again. */
export function judgedAgain(record: SessionRecord, derived: readonly Differing[]): SessionRecord {
  const by = record.conclusion?.judgedBy;
  if (!record.conclusion || !by || record.vehicle === 'drill') return record;
  const differs = derived
    .filter(({ ofOtherRules }) => ofOtherRules)
    .map(({ seq, words }) => `event ${seq} ${words}`);
  const again = differs.length === 0 ? 'same' : 'other';
  return withJudgedBy(record, record.conclusion, { ...by, again, differs });
}

/** The record as its file has it: by rules of ours too, nobody has derived the conclusion again. */
export function notJudgedAgain(record: SessionRecord): SessionRecord {
  const { conclusion } = record;
  if (!conclusion || conclusion.judgedBy || record.vehicle === 'drill') return record;
  const by: JudgedBy = { rules: RULES, today: RULES, again: 'not', differs: [] };
  return withJudgedBy(record, conclusion, by);
}

/** What a record computes only when it is asked, such as the call to the customer, is computed of this conclusion then. */
function withJudgedBy(
  record: SessionRecord,
  conclusion: RecordConclusion,
  by: JudgedBy,
): SessionRecord {
  const value: RecordConclusion = { ...conclusion, judgedBy: by };
  const copy: SessionRecord = Object.create(
    Object.prototype,
    Object.getOwnPropertyDescriptors(record),
  );
  return Object.defineProperty(copy, 'conclusion', { value, enumerable: true });
}

/** Whether today's rules bear out that a conclusion is proven, as far as anybody has asked them. */
export function isProvenToday({ proven, judgedBy: by }: Proven): boolean {
  return proven === true && (by === undefined || by.again === 'same');
}

type Proven = Pick<RecordConclusion, 'proven' | 'judgedBy'>;

/**
 * `judged by rules 11; today's rules 12 come to the same`, without a full stop; empty where the rules are ours, and the
 * conclusion was derived again.
 */
export function judgedByWords(by: JudgedBy | undefined): string {
  if (!by) return '';
  if (by.rules === by.today) return 'as its file has it, not recomputed';
  const head = `judged by rules ${by.rules} of the program`;
  const { today } = by;
  switch (by.again) {
    case 'not':
      return `${head}; today's rules ${today} have not judged it again`;
    case 'same':
      return `${head}; today's rules ${today} come to the same`;
    case 'other':
      return `${head}; by today's rules ${today} not all comes out the same`;
  }
}
