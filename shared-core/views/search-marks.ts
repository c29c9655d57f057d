import { foldWithPlaces, type Folded } from './search-fold.ts';
import type { Sought } from './search-match.ts';

/** A piece of a text that was looked for: from, and up to but without. */
export type Mark = readonly [from: number, to: number];

/** About how much of a long text is shown around what was found in it. */
const SHOWN = 110;
const BEFORE = 35;

/** Where in a text what is sought stands, in order and none over another; in a number blanks and strokes do not count. */
export function marksIn(text: string, sought: readonly Sought[], isNumber: boolean): readonly Mark[] {
  const folded = isNumber ? withoutBlanks(foldWithPlaces(text)) : foldWithPlaces(text);
  const found = sought.flatMap((each) => each.words.flatMap((word, at) => placesOf(folded.folded, word, each.across[at]))).map(([from, to]): Mark => [folded.from[from] ?? 0, endOf(text, folded.from[to - 1] ?? 0)]);
  const inOrder = [...found].sort((a, b) => a[0] - b[0] || b[1] - a[1]);
  const marks: Mark[] = [];
  for (const mark of inOrder) {
    const last = marks.at(-1);
    if (last === undefined || mark[0] >= last[1]) marks.push(mark);
    else if (mark[1] > last[1]) marks[marks.length - 1] = [last[0], mark[1]];
  }
  return marks;
}

/** Every place of a word as it stands; where it stands nowhere so, those where it runs over several words. */
function placesOf(folded: string, word: string, across: RegExp | undefined): readonly Mark[] {
  const places: Mark[] = [];
  for (let at = folded.indexOf(word); at >= 0; at = folded.indexOf(word, at + word.length)) places.push([at, at + word.length]);
  if (places.length > 0 || across === undefined) return places;
  return [...folded.matchAll(new RegExp(across.source, 'gu'))].map((match): Mark => [match.index + 1, match.index + match[0].length]);
}

function withoutBlanks({ folded, from }: Folded): Folded {
  const kept = [...folded].map((one, at) => ({ one, at })).filter(({ one }) => one !== ' ');
  return { folded: ` ${kept.map(({ one }) => one).join('')} `, from: [0, ...kept.map(({ at }) => from[at] ?? 0), from.at(-1) ?? 0] };
}

/** The end of the character that begins there, with the marks that stand on it. */
function endOf(text: string, at: number): number {
  return at + (/^[^]\p{M}*/u.exec(text.slice(at))?.[0].length ?? 1);
}

/** A line of a text around the first mark, its marks moved along; `before` and `after`: something is left out there. */
export interface CutText {
  readonly text: string;
  readonly marks: readonly Mark[];
  readonly before: boolean;
  readonly after: boolean;
}

/** Cuts a long text to a line around what was found, at the blanks beside it. */
export function cutAround(text: string, marks: readonly Mark[]): CutText {
  const first = marks[0]?.[0] ?? 0;
  const from = text.length <= SHOWN || first <= BEFORE ? 0 : nextBlank(text, first - BEFORE, first);
  const to = text.length - from <= SHOWN ? text.length : Math.max(marks[0]?.[1] ?? 0, from + SHOWN);
  return {
    text: text.slice(from, to).replace(/\s/g, ' '),
    marks: marks.filter((mark) => mark[0] >= from && mark[1] <= to).map((mark): Mark => [mark[0] - from, mark[1] - from]),
    before: from > 0,
    after: to < text.length,
  };
}

function nextBlank(text: string, from: number, before: number): number {
  const at = text.slice(from, before).search(/\s/);
  return at < 0 ? from : from + at + 1;
}
