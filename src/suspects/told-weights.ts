/**
 * How far what was told before any reading moves each group of suspects: the only place where such numbers stand. Each is
 * common practice without a published count, gentle on purpose, since people tell what they believe; a reading soon
 * outweighs any of them. docs/maths.md shows the same table, and a test compares the two.
 */

/**
 * Suspects that one answer speaks of. `part` and `plug` are those of an earlier repair; `taken-along` those that take the
 * feed of the neighbour with them by the circuit, in the share of cars in which they do.
 */
export type ToldGroup =
  | 'contacts'
  | 'wires'
  | 'swapped-wires'
  | 'sensor'
  | 'module'
  | 'supply'
  | 'neighbour'
  | 'target'
  | 'target-place'
  | 'target-gap'
  | 'part'
  | 'plug'
  | 'taken-along'
  | 'unnamed-neighbour'
  | 'other-plugs';

/** What an answer comes to: a field of the job sheet, and what was said there or was understood of it. */
export type ToldKey =
  | `fitted:${'second-hand' | 'other-make'}`
  | `changed:${'nothing' | 'for-a-while' | 'cured'}`
  | `happens:${'cold' | 'hot' | 'wet' | 'bumps' | 'cranking'}`
  | `fails-with-it:${'nothing' | 'others'}`
  | `recent-work:${RecentWork}`
  | `seen:${Seen}`
  | `neighbour:${'works' | 'fails' | 'unnamed'}`
  | `same-plug:${'works' | 'fails'}`;

/** Work that was done on the vehicle shortly before the complaint. */
export type RecentWork =
  | 'bearing'
  | 'timing'
  | 'engine-out'
  | 'accident'
  | 'fitted-on'
  | 'jump-start'
  | 'water';

/** Damage that was seen before any reading. */
export type Seen =
  | 'harness-harmed'
  | 'plug-harmed'
  | 'wheel-harmed'
  | 'fuse-blown'
  | 'sensor-harmed';

/** How far one thing that was told moves one group of suspects, and why. */
export interface ToldWeight {
  readonly told: ToldKey;
  readonly of: ToldGroup;
  /** Times its weight before. */
  readonly times: number;
  readonly why: string;
}

export const TOLD_WEIGHTS: readonly ToldWeight[] = [
  {
    told: 'fitted:second-hand',
    of: 'part',
    times: 3,
    why: 'a used part is not known good',
  },
  {
    told: 'fitted:other-make',
    of: 'part',
    times: 2.5,
    why: 'a copy may have different levels, or be the wrong one',
  },
  {
    told: 'changed:nothing',
    of: 'part',
    times: 0.5,
    why: 'a good new part would have fixed it; what is left is a wrong or bad one',
  },
  {
    told: 'changed:for-a-while',
    of: 'plug',
    times: 4,
    why: 'opening a connector wipes its contacts, and they fail again',
  },
  {
    told: 'changed:cured',
    of: 'part',
    times: 4,
    why: 'it was the right part then, and whatever killed it may have done so again',
  },
  { told: 'happens:cold', of: 'contacts', times: 1.5, why: 'metal shrinks away from its partner' },
  { told: 'happens:hot', of: 'sensor', times: 2, why: 'windings and chips open when hot' },
  { told: 'happens:hot', of: 'module', times: 1.5, why: 'solder joints open when hot' },
  { told: 'happens:wet', of: 'contacts', times: 3, why: 'water collects in connectors' },
  { told: 'happens:wet', of: 'wires', times: 1.5, why: 'and finds bare spots' },
  { told: 'happens:bumps', of: 'contacts', times: 3, why: 'a loose terminal moves' },
  { told: 'happens:bumps', of: 'wires', times: 2, why: 'a broken strand moves' },
  {
    told: 'happens:cranking',
    of: 'supply',
    times: 2,
    why: 'the battery sags, and a bad feed shows',
  },
  {
    told: 'happens:cranking',
    of: 'target-gap',
    times: 2,
    why: 'a wide gap gives the weakest signal at low speed',
  },
  {
    told: 'fails-with-it:nothing',
    of: 'supply',
    times: 0.5,
    why: 'a shared wire takes others down with it',
  },
  {
    told: 'fails-with-it:nothing',
    of: 'neighbour',
    times: 0.5,
    why: 'a faulty neighbour fails itself',
  },
  {
    told: 'fails-with-it:others',
    of: 'supply',
    times: 3,
    why: 'a shared wire takes others down with it',
  },
  {
    told: 'fails-with-it:others',
    of: 'neighbour',
    times: 3,
    why: 'one of them may drag the rest down',
  },
  {
    told: 'fails-with-it:others',
    of: 'module',
    times: 1.5,
    why: 'several inputs at once can mean the module',
  },
  {
    told: 'recent-work:bearing',
    of: 'target',
    times: 4,
    why: 'rings are pressed on wrong, left out or harmed',
  },
  {
    told: 'recent-work:timing',
    of: 'target-place',
    times: 5,
    why: 'a belt or chain one tooth off displaces a wheel',
  },
  {
    told: 'recent-work:engine-out',
    of: 'contacts',
    times: 2.5,
    why: 'every connector was apart',
  },
  {
    told: 'recent-work:engine-out',
    of: 'swapped-wires',
    times: 3,
    why: 'connectors and terminals get mixed up',
  },
  {
    told: 'recent-work:engine-out',
    of: 'wires',
    times: 2,
    why: 'harnesses are pulled and pinched',
  },
  {
    told: 'recent-work:engine-out',
    of: 'target',
    times: 1.5,
    why: 'flywheels and wheels were handled',
  },
  { told: 'recent-work:accident', of: 'wires', times: 3, why: 'sheet metal cuts harnesses' },
  {
    told: 'recent-work:accident',
    of: 'contacts',
    times: 2,
    why: 'connectors are torn and water gets in',
  },
  {
    told: 'recent-work:fitted-on',
    of: 'wires',
    times: 2,
    why: 'wires were tapped, or pierced by a screw',
  },
  { told: 'recent-work:fitted-on', of: 'supply', times: 2, why: 'feeds were tapped' },
  {
    told: 'recent-work:jump-start',
    of: 'module',
    times: 2,
    why: 'over-voltage and wrong polarity kill outputs',
  },
  { told: 'recent-work:jump-start', of: 'supply', times: 2, why: 'and blow fuses' },
  { told: 'recent-work:water', of: 'contacts', times: 3, why: 'water collects in connectors' },
  {
    told: 'seen:harness-harmed',
    of: 'wires',
    times: 4,
    why: 'it is there to see, though it may be old',
  },
  { told: 'seen:plug-harmed', of: 'contacts', times: 4, why: 'the same' },
  { told: 'seen:wheel-harmed', of: 'target', times: 4, why: 'the same' },
  { told: 'seen:fuse-blown', of: 'supply', times: 6, why: 'a blown fuse is a fault, or shows one' },
  {
    told: 'seen:sensor-harmed',
    of: 'sensor',
    times: 3,
    why: 'it is there to see, though it may be old',
  },
  {
    told: 'neighbour:works',
    of: 'taken-along',
    times: 0.2,
    why: 'it would fail too; but few look closely at what they assume works',
  },
  {
    told: 'neighbour:fails',
    of: 'taken-along',
    times: 5,
    why: 'two fail where they meet, or one drags the other down',
  },
  {
    told: 'neighbour:unnamed',
    of: 'unnamed-neighbour',
    times: 0.1,
    why: 'what shares was named for this car, and it is not among it',
  },
  {
    told: 'same-plug:works',
    of: 'other-plugs',
    times: 0.7,
    why: 'a connector that is wet or half seated affects more than one pin',
  },
  { told: 'same-plug:fails', of: 'other-plugs', times: 2, why: 'the same' },
];

/** Stories hang together: whatever is told, no suspect moves by more than this, up or down. Ours. */
export const TOLD_MOST = 10;

/**
 * How much of what a code says counts by how the module keeps it: one seen once may be chance, one of some time ago may
 * be another fault's. Common practice, no count known.
 */
export const CODE_STATE_SHARES = { stored: 1, pending: 0.7, history: 0.5 } as const;
