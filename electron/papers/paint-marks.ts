import type { Mark } from '../../shared-core/records/paper-redaction.ts';

/** Decoded points of a picture, line after line, so many bytes a point. */
export interface RawPicture {
  readonly data: Uint8Array;
  readonly width: number;
  readonly height: number;
  readonly channels: number;
}

/**
 * Paints marks black into the points of a picture. Each is widened to whole squares of `grid` points: a JPEG is coded in squares of
 * eight, and one that is black all over is decoded as black all over.
 */
export function paintMarks({ data, width, height, channels }: RawPicture, marks: readonly Mark[], grid: number): void {
  for (const mark of marks) {
    const [from, to] = span(mark.left, mark.width, width, grid);
    const [first, last] = span(mark.top, mark.height, height, grid);
    for (let y = first; y < last; y += 1) data.fill(0, (y * width + from) * channels, (y * width + to) * channels);
  }
}

/** Rounding must never leave a line of points out; what is rounded off far behind the point is no line. */
const SLACK = 1e-6;

function span(start: number, length: number, points: number, grid: number): [number, number] {
  const from = Math.floor((start * points + SLACK) / grid) * grid;
  const to = Math.ceil(((start + length) * points - SLACK) / grid) * grid;
  return [Math.max(0, from), Math.min(points, to)];
}
