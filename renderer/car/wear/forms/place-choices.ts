import { choices } from '../../../ui/form/choices.ts';
import type { Choice } from '../../../ui/household-choices.ts';
import { tell } from '../../../ui/words/tell.ts';

/** Places on a car, or none. */
export function placeChoices(): Choice[] {
  return [{ value: '', label: tell('measured-place.none') }, ...choices('measured-place.', ['front-left', 'front-right', 'rear-left', 'rear-right', 'front', 'rear', 'spare'])];
}

/** Where a wheel may be. */
export function wheelPlaces(): Choice[] {
  return choices('measured-place.', ['front-left', 'front-right', 'rear-left', 'rear-right', 'spare', 'off']);
}
