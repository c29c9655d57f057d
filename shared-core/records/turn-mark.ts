import type { Mark, PaperRedaction } from './paper-redaction.ts';

/** Edges stand at whole ten-thousandths of the page, so that turning a mark four times gives the very same one. */
function atTick(value: number): number {
  return Math.min(1, Math.max(0, Math.round(value * 10_000) / 10_000));
}

/**
 * A mark as it stands once its page is turned clockwise by so many degrees.
 *
 * @example turnMark({ page: 1, left: 0, top: 0, width: 0.5, height: 0.1 }, 90) //=> { page: 1, left: 0.9, top: 0, width: 0.1, height: 0.5 }
 */
export function turnMark({ page, left, top, width, height }: Mark, degrees: number): Mark {
  const [a, b, c, d] = [atTick(left), atTick(top), atTick(left + width), atTick(top + height)];
  const quarters = (((degrees / 90) % 4) + 4) % 4;
  if (quarters === 0) return { page, left: a, top: b, width: atTick(c - a), height: atTick(d - b) };
  return turnMark({ page, left: 1 - d, top: a, width: d - b, height: c - a }, (quarters - 1) * 90);
}

/** The marks of a paper as they stand while it is turned so. */
export function marksTurned({ turned, marks }: PaperRedaction, now: number): Mark[] {
  return marks.map((mark) => turnMark(mark, now - turned));
}
