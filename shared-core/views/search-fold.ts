const ASCII_WORD = /[a-z0-9]/i;
const OTHER_WORD = /[\p{L}\p{N}]/u;

/** A text made ready for searching: without case, accents and punctuation, one blank around each word. @example foldText('5W-30, Dríve') //=> ' 5w 30 drive ' */
export function foldText(text: string): string {
  return foldWithPlaces(text).folded;
}

/** The same in one word: a registration or a number, in which blanks and strokes do not count. @example foldCode('AB12 CDE') //=> ' ab12cde ' */
export function foldCode(text: string): string {
  const word = foldText(text).replaceAll(' ', '');
  return word === '' ? ' ' : ` ${word} `;
}

/** A folded text, and for each of its characters the place in the text that it came from. */
export interface Folded {
  readonly folded: string;
  readonly from: readonly number[];
}

/** Folds a text and remembers whence each character came, so that what was found can be marked in the text itself. */
export function foldWithPlaces(text: string): Folded {
  let folded = ' ';
  const from: number[] = [0];
  let at = 0;
  for (const character of text) {
    for (const one of foldCharacter(character)) {
      if (one === ' ' && folded.endsWith(' ')) continue;
      folded += one;
      for (let unit = 0; unit < one.length; unit += 1) from.push(at);
    }
    at += character.length;
  }
  if (!folded.endsWith(' ')) {
    folded += ' ';
    from.push(text.length);
  }
  return { folded, from };
}

/** What a character comes to: letters and digits without case and marks, a mark alone nothing, anything else a blank. */
function foldCharacter(character: string): string {
  if (character < '\u0080') return ASCII_WORD.test(character) ? character.toLowerCase() : ' ';
  const plain = character.normalize('NFKD').toLowerCase().normalize('NFKD').replace(/\p{M}/gu, '').replaceAll('ς', 'σ').replaceAll('ß', 'ss');
  return [...plain].map((one) => (OTHER_WORD.test(one) ? one : ' ')).join('');
}
