/** What of a record a reader may see. Every form that leaves the program is made of this, and of nothing else. */
import { recordForClass } from './record-for-class.ts';
import { recordForCustomer } from './record-for-customer.ts';
import type { SessionRecord } from './record-form.ts';

export const AUDIENCES = ['shop', 'customer', 'class'] as const;

/** Who is to read a record. */
export type Audience = (typeof AUDIENCES)[number];

/** The record for a reader; the shop sees all of it. */
export function recordFor(record: SessionRecord, audience: Audience): SessionRecord {
  return FOR[audience](record);
}

const FOR: Readonly<Record<Audience, (record: SessionRecord) => SessionRecord>> = {
  shop: (record) => record,
  customer: recordForCustomer,
  class: recordForClass,
};
