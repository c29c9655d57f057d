import { addDays, later, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import type { Spot } from './move-store.ts';

/** What a key does to something that is being moved. */
export type MoveKey = { readonly does: 'place'; readonly to: Spot } | { readonly does: 'keep' | 'put-back' };

const DAYS: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowRight: 1, PageUp: -7, PageDown: 7 };

/**
 * Reads a key: left and right by a day, Page Up and Page Down by a week, up and down to the next place, Enter keeps it, Escape puts it back;
 * null for every other key. Nothing moves before today.
 *
 * @example moveKey('PageDown', { day: '2026-11-28', place: 'home' }, ['home'], '2026-11-25') //=> { does: 'place', to: { day: '2026-12-05', place: 'home' } }
 */
export function moveKey(key: string, { day, place }: Spot, places: readonly string[], today: LocalDate): MoveKey | null {
  const days = DAYS[key];
  if (days !== undefined) return { does: 'place', to: { day: later(today, addDays(day, days)), place } };
  switch (key) {
    case 'ArrowUp':
      return { does: 'place', to: { day, place: places[places.indexOf(place) - 1] ?? place } };
    case 'ArrowDown':
      return { does: 'place', to: { day, place: places[places.indexOf(place) + 1] ?? place } };
    case 'Enter':
      return { does: 'keep' };
    case 'Escape':
      return { does: 'put-back' };
    default:
      return null;
  }
}
