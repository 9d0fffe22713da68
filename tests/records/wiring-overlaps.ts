/** What is wrong with where the words of a picture of the wiring stand. */
import { SHAPES_WIDTH, type Shape } from '../../src/records/wiring-shapes.ts';

/**
 * Words over words and beyond the picture. Words by their boxes: a sign of Helvetica is half its size wide on the mean, digits
 * 0.556, and one of two columns as wide as its size.
 */
export function overlaps(
  shapes: readonly Shape[],
  columnsOf: (text: string) => number = (text) => text.length,
): string[] {
  const boxes = shapes.flatMap((shape) => {
    if (shape.kind !== 'text') return [];
    const width = columnsOf(shape.text) * shape.size * 0.5;
    const x = shape.x - { start: 0, middle: 0.5, end: 1 }[shape.anchor] * width;
    return [
      { text: shape.text, x, y: shape.y - shape.size * 0.75, width, height: shape.size * 0.9 },
    ];
  });
  const outside = boxes.filter(({ x, width }) => x < 0 || x + width > SHAPES_WIDTH);
  const pairs = boxes.flatMap((one, at) =>
    boxes
      .slice(at + 1)
      .filter(
        (other) =>
          one.x < other.x + other.width &&
          other.x < one.x + one.width &&
          one.y < other.y + other.height &&
          other.y < one.y + one.height,
      )
      .map((other) => `${one.text} / ${other.text}`),
  );
  return [...outside.map(({ text }) => `outside: ${text}`), ...pairs];
}
