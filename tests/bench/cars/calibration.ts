/** Whether 70 % means seven in ten: stated chances in bins, beside how often they were right. */
import { markdownTable } from './markdown-table.ts';
import type { Scored } from './score.ts';
import { shareWords } from './wilson.ts';

/** Edges of the bins. */
const EDGES = [0, 0.2, 0.4, 0.6, 0.7, 0.8, 0.9, 0.95, 0.99, 1];
/** Readings after which chances are stated; 0 is the end. */
const POINTS = [2, 4, 6, 0];

export function calibrationTable(stated: Scored['stated']): string {
  return markdownTable(
    ['after', 'stated', 'count', 'mean stated', 'right'],
    POINTS.flatMap((after) =>
      EDGES.slice(0, -1).flatMap((low, index) => {
        const high = EDGES[index + 1] ?? 1;
        const isLast = index === EDGES.length - 2;
        const bin = stated.filter(
          (one) => one.after === after && one.chance >= low && (isLast || one.chance < high),
        );
        if (bin.length === 0) return [];
        const mean = bin.reduce((sum, { chance }) => sum + chance, 0) / bin.length;
        return [
          [
            after === 0 ? 'the end' : `${after} readings`,
            `${Math.round(100 * low)} to ${Math.round(100 * high)} %`,
            bin.length,
            `${(100 * mean).toFixed(1)} %`,
            shareWords(bin.filter(({ right }) => right).length, bin.length),
          ],
        ];
      }),
    ),
  );
}
