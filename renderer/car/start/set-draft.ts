import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { History, OfferedItem, SetKey, StartingSets } from './use-starting-sets.ts';

/** What is chosen of the starting sets while a form is filled in. Empty words: whatever fits what is known of the car. */
export interface SetDraft {
  readonly set: SetKey | 'none' | '';
  readonly history: History | '';
  /** Keys of items that the car does not have. */
  readonly omit: readonly string[];
}

export const FITTING: SetDraft = { set: '', history: '', omit: [] };

/** What a draft comes to, with what the core suggests where nothing was chosen. */
export interface ChosenSet {
  readonly set: SetKey | null;
  readonly history: History;
  readonly omit: string[];
}

/** The choice that a draft makes. An item left out counts only in a set that has it. */
export function chosenSet(draft: SetDraft, sets: StartingSets): ChosenSet {
  const set = draft.set === '' ? sets.suggested : draft.set === 'none' ? null : draft.set;
  const keys = itemsOf(set, sets).map((item) => item.key);
  return { set, history: draft.history === '' ? sets.history : draft.history, omit: draft.omit.filter((key) => keys.includes(key)) };
}

/**
 * What a draft asks for of a new car. What was not chosen is left to be decided by the car as it is sent, which may have been
 * changed since the sets were shown. `sets` is null while none are shown: then nothing is left out.
 */
export function startOf(draft: SetDraft, sets: StartingSets | null): Pick<RequestOf<'car.start'>, 'set' | 'history' | 'omit'> {
  return {
    set: draft.set === '' ? 'fitting' : draft.set === 'none' ? null : draft.set,
    omit: sets === null ? [] : chosenSet(draft, sets).omit,
    ...(draft.history === '' ? {} : { history: draft.history }),
  };
}

/** The items of a set; none without a set. */
export function itemsOf(set: SetKey | null, sets: StartingSets): readonly OfferedItem[] {
  return sets.sets.find((one) => one.key === set)?.items ?? [];
}

/** An item's interval in the unit of a car, as an item of the car would have it. */
export function intervalOf({ first, repeat }: OfferedItem, unit: 'km' | 'mi') {
  const limitIn = ({ months, distance }: OfferedItem['first']) => ({ months, distance: distance === null ? null : { value: distance[unit], unit } });
  return { first: limitIn(first), repeat: limitIn(repeat) };
}
