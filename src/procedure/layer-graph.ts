/**
 * Places boxes in columns from left to right: a box stands right of all that lead to it (longest path), boxes of a
 * column are ordered by the middle of their neighbours, and heights are given, so that boxes never overlap.
 * A small layered layout after Sugiyama, Tagawa and Toda (1981); loops back are left out of the layering.
 */

/** A box to be placed, by its height and where it leads. */
export interface LayerBox {
  readonly id: string;
  readonly height: number;
  /** Boxes it leads to, in the order of its exits. */
  readonly to: readonly string[];
}

/** Where a box, or a bend of a way, came to stand. */
export interface LayerPlace {
  readonly column: number;
  /** Top edge. */
  readonly y: number;
}

/** The finished layout: places, bends and the room that all of it takes. */
export interface Layering {
  readonly places: ReadonlyMap<string, LayerPlace>;
  /** Where the way from one box to another, `from>to`, passes the columns between them. */
  readonly bends: ReadonlyMap<string, readonly LayerPlace[]>;
  readonly columns: number;
  readonly height: number;
}

/** Sweeps over the columns; more change nothing that a reader would see. */
const SWEEPS = 8;

/** Room that a way takes between the boxes of a column it passes. */
const BEND_HEIGHT = 2;

/** The place of each box; the first of `boxes` is the leftmost. */
export function layerGraph(boxes: readonly LayerBox[], gap: number): Layering {
  const { columns, routes } = inColumns(boxes);
  const links = linksOf(columns);
  const middle = new Map<string, number>();
  const stack = (column: readonly LayerBox[]) => {
    let y = 0;
    for (const { id, height } of column) {
      middle.set(id, y + height / 2);
      y += height + gap;
    }
  };
  for (const column of columns) stack(column);
  for (let sweep = 0; sweep < SWEEPS; sweep += 1) {
    const forwards = sweep % 2 === 0;
    for (const column of forwards ? columns : [...columns].reverse()) {
      const near = forwards ? links.before : links.after;
      const wanted = new Map(
        column.map(({ id }) => [id, mean(near.get(id), middle) ?? middle.get(id)!]),
      );
      column.sort((a, b) => wanted.get(a.id)! - wanted.get(b.id)!);
      stack(column);
    }
  }
  const { places, height } = settle(columns, links.before, gap);
  const bends = new Map([...routes].map(([key, ids]) => [key, ids.map((id) => places.get(id)!)]));
  return { places, bends, columns: columns.length, height };
}

/** Boxes by column, with a thin one in each column that a way only passes. */
function inColumns(boxes: readonly LayerBox[]): {
  readonly columns: LayerBox[][];
  readonly routes: ReadonlyMap<string, readonly string[]>;
} {
  const columnOf = longestPaths(boxes, new Map(boxes.map((box) => [box.id, box])));
  const columns: LayerBox[][] = [];
  const put = (column: number, box: LayerBox) => {
    columns[column] ??= [];
    columns[column].push(box);
  };
  const routes = new Map<string, string[]>();
  for (const box of boxes) {
    const column = columnOf.get(box.id)!;
    const to = box.to.map((next) => {
      const key = `${box.id}>${next}`;
      const between = columnOf.get(next)! - column - 1;
      if (between < 1) return next;
      const bend = (step: number) => `${key}>${step}`;
      if (!routes.has(key)) {
        const steps = Array.from({ length: between }, (_, step) => step);
        routes.set(key, steps.map(bend));
        for (const step of steps) {
          const after = step === between - 1 ? next : bend(step + 1);
          put(column + 1 + step, { id: bend(step), height: BEND_HEIGHT, to: [after] });
        }
      }
      return bend(0);
    });
    put(column, { ...box, to });
  }
  return { columns, routes };
}

/** Neighbour of a box, and how far from that neighbour's middle the way leaves it. */
interface Link {
  readonly id: string;
  readonly offset: number;
}
interface Links {
  readonly before: ReadonlyMap<string, readonly Link[]>;
  readonly after: ReadonlyMap<string, readonly Link[]>;
}

function linksOf(columns: readonly (readonly LayerBox[])[]): Links {
  const before = new Map<string, Link[]>();
  const after = new Map<string, Link[]>();
  for (const { id, height, to } of columns.flat())
    to.forEach((next, index) => {
      // Exits stand below each other in the lower half of a box.
      const offset = to.length > 1 ? (height / 2) * (index / (to.length - 1)) : 0;
      before.set(next, [...(before.get(next) ?? []), { id, offset }]);
      after.set(id, [...(after.get(id) ?? []), { id: next, offset: 0 }]);
    });
  return { before, after };
}

function longestPaths(
  boxes: readonly LayerBox[],
  byId: ReadonlyMap<string, LayerBox>,
): Map<string, number> {
  const order: LayerBox[] = [];
  const state = new Map<string, 'open' | 'done'>();
  const back = new Set<string>();
  const visit = (box: LayerBox) => {
    state.set(box.id, 'open');
    for (const next of box.to) {
      if (state.get(next) === 'open') back.add(`${box.id}>${next}`);
      else if (!state.has(next)) visit(byId.get(next)!);
    }
    state.set(box.id, 'done');
    order.unshift(box);
  };
  for (const box of boxes) if (!state.has(box.id)) visit(box);
  const column = new Map(boxes.map(({ id }) => [id, 0]));
  for (const box of order)
    for (const next of box.to)
      if (!back.has(`${box.id}>${next}`))
        column.set(next, Math.max(column.get(next)!, column.get(box.id)! + 1));
  return column;
}

/** Final heights: each box as near to the middle of what leads to it as its column allows, from top to bottom. */
function settle(
  columns: readonly LayerBox[][],
  before: Links['before'],
  gap: number,
): Pick<Layering, 'places' | 'height'> {
  const places = new Map<string, LayerPlace>();
  const middle = new Map<string, number>();
  let height = 0;
  columns.forEach((boxes, column) => {
    const wanted = boxes.map((box) => (mean(before.get(box.id), middle) ?? 0) - box.height / 2);
    const tops = spread(
      wanted,
      boxes.map((box) => box.height),
      gap,
    );
    boxes.forEach((box, index) => {
      const y = tops[index]!;
      places.set(box.id, { column, y });
      middle.set(box.id, y + box.height / 2);
    });
  });
  const least = Math.min(0, ...[...places.values()].map(({ y }) => y));
  for (const boxes of columns)
    for (const { id, height: own } of boxes) {
      const place = places.get(id)!;
      const y = Math.round(place.y - least);
      places.set(id, { ...place, y });
      height = Math.max(height, y + own);
    }
  return { places, height };
}

/** Tops in the given order without overlap, with the least squared distance from those wanted (pool adjacent violators). */
function spread(wanted: readonly number[], heights: readonly number[], gap: number): number[] {
  const offsets: number[] = [];
  let offset = 0;
  for (const height of heights) {
    offsets.push(offset);
    offset += height + gap;
  }
  const pools: { sum: number; count: number }[] = [];
  wanted.forEach((top, index) => {
    pools.push({ sum: top - offsets[index]!, count: 1 });
    for (;;) {
      const last = pools[pools.length - 1]!;
      const earlier = pools[pools.length - 2];
      if (!earlier || earlier.sum / earlier.count <= last.sum / last.count) return;
      pools.pop();
      earlier.sum += last.sum;
      earlier.count += last.count;
    }
  });
  return pools
    .flatMap(({ sum, count }) => Array<number>(count).fill(sum / count))
    .map((base, index) => base + offsets[index]!);
}

function mean(
  links: readonly Link[] | undefined,
  middle: ReadonlyMap<string, number>,
): number | null {
  const known = (links ?? []).flatMap(({ id, offset }) => {
    const at = middle.get(id);
    return at === undefined ? [] : [at + offset];
  });
  return known.length === 0 ? null : known.reduce((sum, one) => sum + one, 0) / known.length;
}
