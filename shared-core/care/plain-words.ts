/** The words and numbers of a text without marks and case, in the order written. @example plainWords('Dríve-Belts') //=> ['drive', 'belts'] */
export function plainWords(text: string): readonly string[] {
  return text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
}
