/**
 * Places boxes in columns from left to right: a box stands right of all that lead to it (longest path), boxes of a
 * column are ordered by the middle of their neighbours, and heights are given, so that boxes never overlap.
 * A small layered layout after Sugiyama, Tagawa and Toda (1981); loops back are left out of the layering.
 */

export interface LayerBox {
  readonly id: string;
  readonly height: number;
  /** Boxes it leads to, in the order of its exits. */
  readonly to: readonly string[];
}

export interface LayerPlace {
  readonly column: number;
  /** Top edge. */
  readonly y: number;
}

export interface Layering {
  readonly places: ReadonlyMap<string, LayerPlace>;
  readonly columns: number;
  readonly height: number;
}

/** Sweeps over the columns; more change nothing that a reader would see. */
const SWEEPS = 8;

/** The place of each box; the first of `boxes` is the leftmost. */
export function layerGraph(boxes: readonly LayerBox[], gap: number): Layering {
  const byId = new Map(boxes.map((box) => [box.id, box]));
  const columnOf = longestPaths(boxes, byId);
  const columns: LayerBox[][] = [];
  for (const box of boxes) {
    const column = columnOf.get(box.id)!;
    columns[column] ??= [];
    columns[column].push(box);
  }
  const before = new Map<string, string[]>();
  for (const { id, to } of boxes)
    for (const next of to) before.set(next, [...(before.get(next) ?? []), id]);
  const middle = new Map<string, number>();
  const stack = (column: LayerBox[]) => {
    let y = 0;
    for (const box of column) {
      middle.set(box.id, y + box.height / 2);
      y += box.height + gap;
    }
  };
  for (const column of columns) stack(column);
  for (let sweep = 0; sweep < SWEEPS; sweep += 1) {
    const forwards = sweep % 2 === 0;
    for (const column of forwards ? columns : [...columns].reverse()) {
      const wanted = new Map(
        column.map(({ id, to }) => [
          id,
          mean((forwards ? before.get(id) : to) ?? [], middle) ?? middle.get(id)!,
        ]),
      );
      column.sort((a, b) => wanted.get(a.id)! - wanted.get(b.id)!);
      stack(column);
    }
  }
  return settle(columns, before, gap);
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
  before: ReadonlyMap<string, string[]>,
  gap: number,
): Layering {
  const places = new Map<string, LayerPlace>();
  const middle = new Map<string, number>();
  let height = 0;
  columns.forEach((boxes, column) => {
    const wanted = boxes.map(
      (box) => (mean(before.get(box.id) ?? [], middle) ?? 0) - box.height / 2,
    );
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
  return { places, columns: columns.length, height };
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

function mean(ids: readonly string[], values: ReadonlyMap<string, number>): number | null {
  const known = ids.flatMap((id) => values.get(id) ?? []);
  return known.length === 0 ? null : known.reduce((sum, one) => sum + one, 0) / known.length;
}
