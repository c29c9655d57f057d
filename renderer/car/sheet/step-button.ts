/** The id of a button of a step. */
export function stepButton(key: number, what: 'change' | 'up' | 'down' | 'back'): string {
  return `step-${key}-${what}`;
}
