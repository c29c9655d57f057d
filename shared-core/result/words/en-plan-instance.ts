/** Sentences for what a plan instance may be refused for, and for the faults that the verifier finds in a plan. */
export const PLAN_INSTANCE_WORDS: Readonly<Record<string, string>> = {
  'not-minutes': '{field} is not a whole number of minutes. Give 0 to 1 000 000.',
};
