import type { WheelView } from '../../../shared-core/views/wheel-view.ts';
import { byPlace } from './subject-words.ts';

/** Wheels as one walks round the car; those off it come last. */
export function inPlace(wheels: readonly WheelView[]): readonly WheelView[] {
  const subject = ({ wheel, place }: WheelView) => ({ wheel, place: place === 'off' ? null : place });
  return [...wheels].sort((a, b) => byPlace(subject(a), subject(b)));
}
