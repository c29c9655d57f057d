import { createContext, useContext, useEffect, useMemo, type ReactNode } from 'react';
import { must } from '../../shared-core/result/assert.ts';
import { speakAs } from '../../shared-core/result/words/speaking.ts';
import type { ReplyOf } from '../../shared-core/contract/contract.ts';
import { householdWords, type HouseholdWords } from './household-words.ts';

export type Household = NonNullable<ReplyOf<'household.state'>['household']>;

interface HouseholdHere {
  readonly household: Household;
  readonly words: HouseholdWords;
}

const Here = createContext<HouseholdHere | null>(null);

/** Gives every screen the household that is open, and its ways of writing. */
export function HouseholdProvider({ household, children }: { readonly household: Household; readonly children: ReactNode }) {
  // Before anything within is drawn: what is told there is told as this household speaks.
  speakAs(household.locale);
  useEffect(() => void (document.documentElement.lang = household.locale), [household.locale]);
  const here = useMemo(() => ({ household, words: householdWords(household.locale, household.currency) }), [household]);
  return <Here value={here}>{children}</Here>;
}

/** The household that is open. */
export function useHousehold(): Household {
  return must(useContext(Here), 'household around this part').household;
}

/** How dates, amounts and distances are written here. */
export function useWords(): HouseholdWords {
  return must(useContext(Here), 'household around this part').words;
}
