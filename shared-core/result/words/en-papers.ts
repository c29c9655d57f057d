/** What the program says of papers, what they belong to, and what they may belong to. */
export const PAPER_WORDS: Readonly<Record<string, string>> = {
  'paper-tied-there': 'It has that paper already.',
  'paper-is-tied': '{name} belongs to something: untie it first, or leave it.',
  'unknown-tie': 'That paper is not tied there. Look at what stands.',
};
