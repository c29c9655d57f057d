import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import type { Moment } from '../journal/operation.ts';
import { photoRemoved, type StepPhoto } from '../work/doing.ts';
import { setPapersAside } from './describe-paper.ts';
import { tiePaper } from './tie-paper.ts';

/** The entries by which photographs of work that comes into no record go among the papers of their cars. */
export function photosToCars(facts: Facts, photos: readonly StepPhoto[], moment: Moment): readonly NewEntry[] {
  return photos.flatMap((photo) => {
    const tied = tiePaper.decide(facts, { paper: photo.paper, to: [{ kind: 'car', id: photo.car }] }, moment);
    // One that is tied there already is where it belongs; where there is no such paper, the photograph stays as it is.
    if (!tied.ok && tied.refusal.code !== 'paper-tied-there') return [];
    return [...(tied.ok ? tied.value.entries : []), newEntry(photoRemoved, { id: photo.id, car: null })];
  });
}

/** The entries by which photographs of work that comes into no record are set aside: they need none. */
export function photosSetAside(facts: Facts, photos: readonly StepPhoto[], moment: Moment): readonly NewEntry[] {
  return photos.flatMap((photo) => {
    const aside = setPapersAside.decide(facts, { papers: [photo.paper], aside: true }, moment);
    return [...(aside.ok ? aside.value.entries : []), newEntry(photoRemoved, { id: photo.id, car: null })];
  });
}
