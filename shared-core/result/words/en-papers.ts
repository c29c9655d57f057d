/** What the program says of papers, what they belong to, and what they may belong to. */
export const PAPER_WORDS: Readonly<Record<string, string>> = {
  'paper-tied-there': 'It has that paper already.',
  'paper-is-tied': '{name} belongs to something: untie it first, or leave it.',
  'papers-none-kept': '{list}',
  'unknown-tie': 'That paper is not tied there. Look at what stands.',

  'suggest-total': 'Its total is {amount}, as the record says.',
  'suggest-amount': 'It names {amount}, the sum of the record.',
  'suggest-printed-day': 'It names {date}, the day of it.',
  'suggest-printed-near': 'It names {date}, within {n} days of it.',
  'suggest-taken-day': 'It was taken on {date}, the day of it.',
  'suggest-taken-near': 'It was taken on {date}, within {n} days of it.',
  'suggest-place': 'It names {name}.',
  'suggest-registration': 'It names the registration {registration}.',
  'suggest-car': 'It names {car}.',
  'suggest-no-paper': 'No paper is with it yet.',
};
