/** Letters of five by seven dots, a row a number read in binary. */
const LETTERS: readonly (readonly number[])[] = [
  [14, 17, 16, 14, 1, 17, 14],
  [14, 17, 17, 31, 17, 17, 17],
  [17, 27, 21, 21, 17, 17, 17],
  [30, 17, 17, 30, 16, 16, 16],
  [16, 16, 16, 16, 16, 16, 31],
  [31, 16, 16, 30, 16, 16, 31],
];
const DOT = 3;
const STEP = 6;
const EDGE = 2;

/** Where a pixel, counted from the mark's corner, lies: in a letter of SAMPLE, on the ground behind it, or outside. */
export function inSampleMark(x: number, y: number): 'letter' | 'ground' | 'outside' {
  const [column, row] = [Math.floor(x / DOT) - EDGE, Math.floor(y / DOT)];
  const width = LETTERS.length * STEP - 1;
  if (column < -EDGE || column >= width + EDGE || row < -1 || row > 7) return 'outside';
  const letter = LETTERS[Math.floor(column / STEP)];
  const dots = column < 0 || row < 0 ? undefined : letter?.[row];
  const place = 4 - (((column % STEP) + STEP) % STEP);
  return dots !== undefined && place >= 0 && ((dots >> place) & 1) === 1 ? 'letter' : 'ground';
}
