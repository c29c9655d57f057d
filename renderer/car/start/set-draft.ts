import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { History, OfferedItem, SetKey, StartingSets } from './use-starting-sets.ts';

/** What is chosen of the starting sets while a form is filled in. Empty words: whatever fits what is known of the car. */
export interface SetDraft {
  readonly set: SetKey | 'none' | '';
  readonly history: History | '';
  /** Keys of items that the car does not have. */
  readonly omit: readonly string[];
  /** Keys of items that are taken though the car has one of a near name. */
  readonly besides: readonly string[];
}

export const FITTING: SetDraft = { set: '', history: '', omit: [], besides: [] };

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

/** What a car has not of a set: what is new to it, and what it may have under a near name. */
export interface MissingOfSet {
  readonly fresh: readonly OfferedItem[];
  readonly near: readonly NearItem[];
}

/** An item of a set, and the name of the car's own that may be the same. */
export interface NearItem {
  readonly item: OfferedItem;
  readonly there: string;
}

/** The items of a set that the car has not. */
export function missingOf(set: readonly OfferedItem[]): MissingOfSet {
  const missing = set.filter((item) => !item.there);
  return {
    fresh: missing.filter((item) => item.near === null),
    near: missing.flatMap((item) => (item.near === null ? [] : [{ item, there: item.near }])),
  };
}

/** Keys of what is left out: by the keeper, or for its near name until the keeper says that it is another thing. */
export function leftOut(chosen: ChosenSet, { near }: MissingOfSet, { besides }: SetDraft): string[] {
  const alike = near.map(({ item }) => item.key);
  return [...chosen.omit.filter((key) => !alike.includes(key)), ...alike.filter((key) => !besides.includes(key))];
}
