import type { WearSeriesView } from '../../../shared-core/views/wear-view.ts';
import type { NameOrder } from '../../ui/name-order.ts';
import { tell } from '../../ui/words/tell.ts';

export type MeasureKind = WearSeriesView['what'];
export type Subject = Pick<WearSeriesView, 'what' | 'name' | 'place' | 'wheel'>;

/** Everything that can be measured, in the order in which the leaf shows it. */
export const MEASURE_KINDS: readonly MeasureKind[] = ['tread', 'pad', 'disc', 'battery-voltage', 'battery-capacity', 'brake-fluid-moisture', 'coolant-protection', 'belt', 'other'];

/** Places as one walks round a car. */
const PLACES: readonly (string | null)[] = ['front-left', 'front-right', 'rear-left', 'rear-right', 'front', 'rear', 'spare', null];

/** Whether there may be several of it on one car. */
export function hasPlaces(what: MeasureKind): boolean {
  return what === 'tread' || what === 'pad' || what === 'disc';
}

/** Which one of its kind: its wheel, its place. Empty of what there is only once. @example whichOf({ wheel: { id: 'a', name: 'A' }, place: 'rear-left' }) //=> 'A, rear left' */
export function whichOf({ wheel, place }: Pick<Subject, 'wheel' | 'place'>): string {
  const where = place !== null ? tell(`measured-place.${place}`) : wheel === null ? '' : tell('measured-place.off');
  // A wheel may be called by its place: the spare.
  return [...new Set([wheel?.name ?? '', where])].filter((part) => part !== '').join(', ');
}

/** What is measured and which one of it. @example subjectOf(series) //=> 'tread, A, rear left' */
export function subjectOf(subject: Subject): string {
  return [subject.name ?? tell(`measured.${subject.what}`), whichOf(subject)].filter((part) => part !== '').join(', ');
}

type Placed = Pick<Subject, 'place' | 'wheel'>;

/** As one walks round the car; what is off the car comes last. */
export function byPlace(byName: NameOrder): (a: Placed, b: Placed) => number {
  return (a, b) => PLACES.indexOf(a.place) - PLACES.indexOf(b.place) || byName(a.wheel?.name ?? '', b.wheel?.name ?? '');
}
