import type { Element } from 'hast';
import { describe, expect, test } from 'vitest';
import { tighteningOrderDrawing } from '../../src/drawings/tightening-order.ts';
import { type Pattern, tighteningOrder } from '../../src/trade/pattern.ts';
import { svgText } from './draw.ts';

function drawn(count: number, pattern: Pattern): Element {
  return tighteningOrderDrawing(tighteningOrder(count, pattern) ?? [], pattern);
}

function elements(drawing: Element, name: string): Element[] {
  return drawing.children.flatMap((child) =>
    child.type === 'element' && [child.properties.className].flat().includes(name) ? [child] : [],
  );
}

const all = (['circle', 'cross', 'row'] as const).flatMap((pattern) =>
  Array.from({ length: 14 }, (_, index): [Pattern, number] => [pattern, index + 3]),
);

describe.each(all)('%s of %i', (pattern, count) => {
  const drawing = drawn(count, pattern);

  test('numbers every fastener once, and neighbours do not touch', () => {
    const turns = elements(drawing, 'order-turn').map(({ children: [text] }) =>
      text?.type === 'text' ? Number(text.value) : 0,
    );
    expect(turns).toEqual(Array.from({ length: count }, (_, index) => index + 1));
    const centres = elements(drawing, 'order-fastener').map(
      ({ properties: { cx, cy } }) => [Number(cx), Number(cy)] as const,
    );
    centres.forEach(([x, y], index) => {
      for (const [otherX, otherY] of centres.slice(index + 1)) {
        expect(Math.hypot(x - otherX, y - otherY)).toBeGreaterThan(52);
      }
    });
  });

  test('lies inside its box', () => {
    const { width, height } = drawing.properties;
    for (const { properties } of elements(drawing, 'order-fastener')) {
      expect(Number(properties.cx)).toBeGreaterThanOrEqual(26);
      expect(Number(properties.cx)).toBeLessThanOrEqual(Number(width) - 26);
      expect(Number(properties.cy)).toBeGreaterThanOrEqual(26);
      expect(Number(properties.cy)).toBeLessThanOrEqual(Number(height) - 26);
    }
  });
});

test('says the order in words, by position', () => {
  expect(drawn(4, 'circle').properties.ariaLabel).toBe(
    'Tightening order, clockwise from the top: 1, 3, 2, 4',
  );
  expect(tighteningOrderDrawing([2, 1, 3], 'row').properties.ariaLabel).toBe(
    'Tightening order, from left to right: 2, 1, 3',
  );
  expect(tighteningOrderDrawing([1, 3, 2, 4], 'cross').properties.ariaLabel).toBe(
    'Tightening order, clockwise from the upper left: 1, 3, 2, 4',
  );
});

test('the turn stands at the position that the order names', () => {
  const [first, second] = elements(tighteningOrderDrawing([1, 3, 2, 4], 'circle'), 'order-fastener');
  expect([first?.properties.cx, first?.properties.cy]).toEqual([124, 34]);
  expect([second?.properties.cx, second?.properties.cy]).toEqual([124, 214]);
});

test('arrows are left out where one would run over a fastener', () => {
  expect(svgText(drawn(5, 'circle'))).toContain('order-path');
  expect(svgText(drawn(6, 'cross'))).not.toContain('order-path');
  expect(svgText(drawn(8, 'circle'))).not.toContain('order-path');
});
