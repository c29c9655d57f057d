import type { WheelView } from '../../../shared-core/views/wheel-view.ts';
import type { NameOrder } from '../../ui/name-order.ts';
import { byPlace } from './subject-words.ts';

/** Wheels as one walks round the car; those off it come last. */
export function inPlace(wheels: readonly WheelView[], byName: NameOrder): readonly WheelView[] {
  const subject = ({ wheel, place }: WheelView) => ({ wheel, place: place === 'off' ? null : place });
  const order = byPlace(byName);
  return [...wheels].sort((a, b) => order(subject(a), subject(b)));
}
