import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { packRows, type Packed, type ToPack } from '../../../renderer/yard/pack-rows.ts';

const WIDTH = 600;
const mark = (id: string, left: number, right: number, labelWidth: number, prefer: ToPack['prefer'] = 'right'): ToPack => ({ id, left, right, labelWidth, leastWidth: Math.min(labelWidth, 72), prefer });

/** Source for all: worked by hand from the stated rule. */
describe('a mark and its words', () => {
  test.each([
    { case: 'stand on the right where there is room', marks: [mark('a', 100, 120, 80)], side: 'right', labelLeft: 126 },
    { case: 'stand on the left where it prefers that', marks: [mark('a', 100, 120, 80, 'left')], side: 'left', labelLeft: 14 },
    { case: 'stand on the left where the right has no room', marks: [mark('a', 560, 580, 80)], side: 'left', labelLeft: 474 },
    { case: 'stand on the shape where no side has room', marks: [mark('a', 20, 590, 80)], side: 'over', labelLeft: 265 },
  ])('$case', ({ marks, side, labelLeft }) => {
    expect(packRows(marks, WIDTH, 1).packed[0]).toMatchObject({ row: 0, side, labelLeft, labelWidth: 80 });
  });

  test('never hide the shape they stand on: its ends are seen, 14 pixels at least', () => {
    const packed = (labelWidth: number) => packRows([mark('a', 20, 590, labelWidth)], WIDTH, 1).packed[0];
    expect(packed(570 - 28)).toMatchObject({ side: 'over', labelLeft: 34, labelWidth: 542 });
    expect(packed(570 - 27)?.labelWidth).toBeLessThan(542);
  });

  test('take the next row rather than touch', () => {
    const { packed, rows } = packRows([mark('a', 100, 120, 300), mark('b', 200, 220, 100)], WIDTH, 2);
    expect(packed.map((one) => one.row)).toEqual([0, 1]);
    expect(rows).toBe(2);
  });

  test('are cut before they are folded, and folded where even that finds no room', () => {
    const crowd = [mark('a', 0, 20, 400), mark('b', 450, 470, 400), mark('c', 440, 480, 300)];
    const { packed, folded } = packRows(crowd, WIDTH, 1);
    expect(packed.map((one) => one.id)).toEqual(['a', 'b']);
    expect(packed[1]?.labelWidth).toBeLessThan(400);
    expect(folded).toEqual(['c']);
  });
});

describe('whatever is packed', () => {
  const marks = fc.array(fc.record({ left: fc.integer({ min: 0, max: 560 }), size: fc.integer({ min: 8, max: 400 }), label: fc.integer({ min: 10, max: 300 }), left2: fc.boolean() }), { maxLength: 24 });

  test('nothing touches, nothing leaves the paper, and nothing is lost', () => {
    fc.assert(
      fc.property(marks, fc.integer({ min: 1, max: 5 }), (drawn, rows) => {
        const given = drawn.map((one, at) => mark(String(at), one.left, Math.min(WIDTH, one.left + one.size), one.label, one.left2 ? 'left' : 'right'));
        const { packed, folded } = packRows(given, WIDTH, rows);
        expect([...packed.map((one) => one.id), ...folded].sort()).toEqual(given.map((one) => one.id).sort());
        const stretches = packed.map((one) => ({ row: one.row, ...stretchOf(given[Number(one.id)] as ToPack, one) }));
        for (const { row, from, to } of stretches) {
          expect(row).toBeLessThan(rows);
          expect(from >= 0 && to <= WIDTH).toBe(true);
        }
        for (const [at, one] of stretches.entries()) {
          for (const other of stretches.slice(at + 1)) if (one.row === other.row) expect(one.to < other.from || other.to < one.from).toBe(true);
        }
      }),
    );
  });
});

function stretchOf({ left, right }: ToPack, { labelLeft, labelWidth }: Packed) {
  return { from: Math.min(left, labelLeft), to: Math.max(right, labelLeft + labelWidth) };
}
