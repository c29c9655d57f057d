import type { Choice } from '../../ui/household-choices.ts';
import { tell } from '../../ui/words/tell.ts';
import type { LineDraft, Outcome, Work } from './record-draft.ts';

/** What may be said of a line of work in one choice: new parts, a look at it and what was found, or that it was left. */
const REPLACED = 'replace done';
const LOOKED = ['check good', 'check watch', 'check acted'] as const;
const LEFT = 'not-done';

/** The choices for a line, what it asks for first. @example workedChoices('check')[0]?.value //=> 'check good' */
export function workedChoices(asked: Work): Choice[] {
  const values = asked === 'replace' ? [REPLACED, ...LOOKED, LEFT] as const : [...LOOKED, REPLACED, LEFT] as const;
  return values.map((value) => ({ value, label: tell(`worked.${value}`) }));
}

/** The choice that a line stands for. @example workedOf({ work: 'check', outcome: 'watch' }) //=> 'check watch' */
export function workedOf({ work, outcome }: Pick<LineDraft, 'work' | 'outcome'>): string {
  return outcome === 'not-done' ? LEFT : `${work} ${outcome}`;
}

/** The work and its outcome that a choice stands for; what was left keeps what it asks for. */
export function fromWorked(value: string, asked: Work): Pick<LineDraft, 'work' | 'outcome'> {
  if (value === LEFT) return { work: asked, outcome: 'not-done' };
  const [work, outcome] = value.split(' ') as [Work, Outcome];
  return { work, outcome };
}
