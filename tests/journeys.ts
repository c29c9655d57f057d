/** The end-to-end specs that every run of the tests takes through both shells; "npm run test:shells" takes all of them. */
export const JOURNEYS = [
  'few-keys', 'yard-and-car', 'plan-on-yard', 'whole-session', 'parts-walk', 'papers-screen', 'import-table', 'ledger-screen', 'handover', 'calendar-file', 'closing-minutes', 'change-on-the-way',
].map((name) => `tests/browser/${name}.test.ts`);
