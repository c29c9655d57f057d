/** Something to be laid into the rows of a lane: its shape from `left` to `right`, and words beside it. */
export interface ToPack {
  readonly id: string;
  readonly left: number;
  readonly right: number;
  readonly labelWidth: number;
  /** Words cut shorter than this say nothing. */
  readonly leastWidth: number;
  /** The side on which its words stand where both have room. */
  readonly prefer: 'left' | 'right';
}

/** Where it was laid. `over`: its words stand on the shape itself, for no side has room. */
export interface Packed {
  readonly id: string;
  readonly row: number;
  readonly side: 'left' | 'right' | 'over';
  /** The words' own stretch; shorter than they are where they are cut. */
  readonly labelLeft: number;
  readonly labelWidth: number;
}

export interface RowPacking {
  readonly packed: readonly Packed[];
  /** What found no room, by id. */
  readonly folded: readonly string[];
  readonly rows: number;
}

const GAP = 6;
/** Between what shares a row: nothing touches, and what is pressed stays apart. */
const BETWEEN = 12;
/** So much of a shape is seen on either side of words that stand on it. */
const ENDS = 14;
/** Where words have no room whole, they are tried at these shares of their width. */
const CUTS = [0.85, 0.7, 0.6, 0.5, 0.4, 0.3];

interface Taken {
  readonly from: number;
  readonly to: number;
}

/**
 * Lays marks with their words into rows, the first ones first, so that nothing touches; what finds no room is folded.
 * Words stand on the preferred side, else the other, else on the shape, else cut.
 *
 * @example packRows([{ id: 'a', left: 10, right: 20, labelWidth: 50, leastWidth: 30, prefer: 'right' }], 200, 1).packed[0]?.side //=> 'right'
 */
export function packRows(marks: readonly ToPack[], width: number, mostRows: number): RowPacking {
  const rows: Taken[][] = [];
  const packed: Packed[] = [];
  const folded: string[] = [];
  for (const mark of marks) {
    const found = place(mark, rows, width, mostRows);
    if (found === null) folded.push(mark.id);
    else packed.push(found);
  }
  return { packed, folded, rows: rows.length };
}

function place(mark: ToPack, rows: Taken[][], width: number, mostRows: number): Packed | null {
  for (const labelWidth of widthsToTry(mark)) {
    for (const ways of [waysBeside(mark, labelWidth, width), waysOver(mark, labelWidth)]) {
      const found = placeIn(mark, rows, mostRows, ways);
      if (found !== null) return found;
    }
  }
  return null;
}

function placeIn(mark: ToPack, rows: Taken[][], mostRows: number, ways: readonly LabelWay[]): Packed | null {
  for (let row = 0; row < mostRows; row += 1) {
    const taken = rows[row] ?? [];
    const label = ways.find((way) => isFree(taken, stretchOf(mark, way)));
    if (label === undefined) continue;
    rows[row] = [...taken, stretchOf(mark, label)];
    return { id: mark.id, row, ...label };
  }
  return null;
}

/** Whole words in any row come before cut ones. */
function widthsToTry({ labelWidth, leastWidth }: ToPack): readonly number[] {
  const cut = CUTS.map((share) => Math.round(labelWidth * share)).filter((width) => width > leastWidth);
  return labelWidth <= leastWidth ? [labelWidth] : [labelWidth, ...cut, leastWidth];
}

type LabelWay = Pick<Packed, 'side' | 'labelLeft' | 'labelWidth'>;

function waysBeside({ left, right, prefer }: ToPack, labelWidth: number, width: number): readonly LabelWay[] {
  const ways: LabelWay[] = [];
  if (right + GAP + labelWidth <= width) ways.push({ side: 'right', labelLeft: right + GAP, labelWidth });
  if (left - GAP - labelWidth >= 0) ways.push({ side: 'left', labelLeft: left - GAP - labelWidth, labelWidth });
  return prefer === 'right' ? ways : ways.reverse();
}

function waysOver({ left, right }: ToPack, labelWidth: number): readonly LabelWay[] {
  return right - left < labelWidth + 2 * ENDS ? [] : [{ side: 'over', labelLeft: (left + right - labelWidth) / 2, labelWidth }];
}

function stretchOf({ left, right }: ToPack, { labelLeft, labelWidth }: LabelWay): Taken {
  return { from: Math.min(left, labelLeft), to: Math.max(right, labelLeft + labelWidth) };
}

function isFree(taken: readonly Taken[], { from, to }: Taken): boolean {
  return taken.every((one) => to + BETWEEN <= one.from || one.to + BETWEEN <= from);
}
