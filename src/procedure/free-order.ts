/** Work without a tree: only a circuit. The program proposes each test, the person chooses and concludes. */

/** Names of such work: this and the circuit's name. */
const FREE_PREFIX = 'guided-';
/** What tells it from the procedures with a fixed order. */
const TITLE_BEGINS = 'Free order of tests: ';
/** As for a title that an author writes. */
const TITLE_SIGNS_MAX = 120;

/** How free order on a circuit is listed. */
export interface FreeOrder {
  readonly name: string;
  readonly title: string;
  readonly about: string;
  readonly circuit: string;
}

/** Free order on a circuit; that may still turn out to be of no use, which loading it tells. */
export function freeOrder(circuit: { readonly name: string; readonly title: string }): FreeOrder {
  return {
    name: `${FREE_PREFIX}${circuit.name}`,
    title: freeOrderTitle(circuit),
    about:
      'No fixed order: the program suggests the tests that would tell you most, with what you have at hand, and you choose.',
    circuit: circuit.name,
  };
}

/** Its title; a circuit of whose title nothing is known goes by its name. */
export function freeOrderTitle({ title }: { readonly title: string }): string {
  return [...`${TITLE_BEGINS}${title}`].slice(0, TITLE_SIGNS_MAX).join('');
}
