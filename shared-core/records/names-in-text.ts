/** A text made ready for looking up names: lower case, one kind of letter, one blank between words. */
export function plainWords(text: string): string {
  return ` ${text.normalize('NFKC').toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' ').trim()} `;
}

/** Whether a name of at least three letters stands in a text as whole words; the text as `plainWords` gives it. */
export function namesIt(words: string, name: string | null): boolean {
  const own = name === null ? '' : plainWords(name);
  return own.length >= 5 && words.includes(own);
}

/** The same for a registration, in which blanks do not count. */
export function namesRegistration(words: string, registration: string | null): boolean {
  const own = plainWords(registration ?? '').replaceAll(' ', '');
  return own.length >= 4 && words.replaceAll(' ', '').includes(own);
}
