import { expect, it } from 'vitest';
import { drawingSvg } from '../../src/records/drawing.ts';
import { escapeHtml } from '../../src/records/html.ts';

it('keeps every line and its columns, and what stands in it is text', () => {
  const svg = drawingSvg('wiring', ['┌─┐ pin 1 RD/BU', '<script>alert(1)</script>'], escapeHtml);
  expect(svg.match(/<text /g)).toHaveLength(2);
  expect(svg).toContain('pin 1 RD/BU');
  expect(svg).not.toContain('<script');
  expect(svg).toContain('&lt;script&gt;');
});

it('a title cannot leave its attribute', () => {
  expect(drawingSvg('" onload="x', ['a'], escapeHtml)).not.toMatch(/" onload="x/);
});
