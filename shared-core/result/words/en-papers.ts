/** What the program says of papers, what they belong to, and what they may belong to. */
export const PAPER_WORDS: Readonly<Record<string, string>> = {
  'check-drawn': 'The PDF and the tables are as their keeper drew them; only the rows in data/journal are proven. Where something matters, compare the two.',
  'paper-tied-there': 'It has that paper already.',
  'paper-is-tied': '{name} belongs to something: untie it first, or leave it.',
  'papers-none-kept': 'Nothing was kept: {list}.',
  'nothing-blacked-out': 'Nothing of that paper is blacked out.',
  'mark-outside-page': 'A mark reaches over the edge of the page. Its left and width, and its top and height, may come to 1 at most.',
  'mark-too-small': 'A mark is too small to be seen. Draw it larger, or leave it out.',
  'paper-not-drawn': 'No page of that file can be shown, so nothing on it can be blacked out. Leave it out of what is handed over.',
  'too-many-pages': 'That PDF has {pages} pages. At most {most} are drawn anew to black parts out; leave it out of what is handed over, or keep the pages needed as a file of their own.',
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
