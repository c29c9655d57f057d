/** What stands between a page and the host can refuse too. */
export const SHELL_WORDS: Readonly<Record<string, string>> = {
  'no-answer': 'Trunnion does not answer. It may have been stopped: start it again, and open the link it prints.',
  'not-our-page': 'Only Trunnion’s own page may ask for that.',
  'request-not-json': 'That could not be read as a request. Load the page again.',
  'request-too-slow': 'The request broke off on its way. Try again.',
};
