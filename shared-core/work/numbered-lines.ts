/**
 * Lines with an id each: those that have one which stood before keep it, new ones take the next numbers that none of the lines before had.
 *
 * @example numberedLines([{ id: undefined, text: 'the test' }], [], 'wanted') //=> [{ id: 'wanted-1', text: 'the test' }]
 */
export function numberedLines<Line extends { readonly id?: string | undefined }>(lines: readonly Line[], before: readonly { readonly id: string }[], prefix: string): (Line & { id: string })[] {
  const known = new Set(before.map((one) => one.id));
  let last = Math.max(0, ...before.map((one) => Number(/-(\d{1,9})$/.exec(one.id)?.[1] ?? 0)));
  return lines.map((line) => ({ ...line, id: line.id !== undefined && known.has(line.id) ? line.id : `${prefix}-${(last += 1)}` }));
}
