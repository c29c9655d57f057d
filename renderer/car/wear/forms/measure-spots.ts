import type { CarView } from '../../../../shared-core/views/car-view.ts';
import { nameOrder } from '../../../ui/name-order.ts';
import { tell } from '../../../ui/words/tell.ts';
import { whichOf, type MeasureKind } from '../subject-words.ts';
import { inPlace } from '../wheels-in-place.ts';

type Measurement = CarView['measured'][number]['points'][number]['measurement'];

/** A place at which a value may be typed. */
export interface MeasureSpot {
  readonly key: string;
  readonly wheel: string | null;
  readonly place: Measurement['place'];
  /** Which part of it: 'inner edge'; empty where it is measured once. */
  readonly edge: string;
  /** Which wheel or place it is. */
  readonly label: string;
  /** The one that has the focus when the form opens. */
  readonly first: boolean;
  /** A wheel that is off the car. */
  readonly stored: boolean;
  /** What was measured there last. */
  readonly last: Measurement | null;
}

type Subject = Pick<MeasureSpot, 'wheel' | 'place'> & { readonly name: string | null };

const CORNERS = ['front-left', 'front-right', 'rear-left', 'rear-right'] as const;

/** The parts of one thing that are measured apart, where it has such. */
export function edgesOf(what: MeasureKind): readonly string[] {
  if (what === 'tread') return [tell('edge.inner'), tell('edge.middle'), tell('edge.outer')];
  return what === 'pad' ? [tell('edge.inner-pad'), tell('edge.outer-pad')] : [];
}

/**
 * Where a kind is measured on this car: tread at its wheels, and at corners of which no wheel is known; pads and discs at the
 * corners; all else in one place.
 */
export function spotsOf(view: CarView, what: MeasureKind, name: string | null, across: boolean): readonly MeasureSpot[] {
  const subjects: readonly Subject[] = what === 'tread' ? treadSubjects(view) : what === 'pad' || what === 'disc' ? CORNERS.map(atCorner) : [{ wheel: null, place: null, name: null }];
  const edges = across ? edgesOf(what) : [''];
  return subjects.flatMap((subject) => edges.map((edge): MeasureSpot => {
    const which = whichOf({ wheel: subject.wheel === null ? null : { id: subject.wheel, name: subject.name ?? '' }, place: subject.place });
    return {
      ...subject, edge,
      key: `${subject.wheel ?? subject.place ?? ''}/${edge}`,
      label: which === '' ? tell('measure-form.value') : which,
      first: subject === subjects[0] && edge === edges[0],
      stored: subject.wheel !== null && subject.place === null,
      last: lastOf(view, what, name, subject),
    };
  }));
}

function treadSubjects({ wheels, locale }: CarView): readonly Subject[] {
  const known = inPlace(wheels, nameOrder(locale)).map(({ wheel, place }): Subject => ({ wheel: wheel.id, place: place === 'off' ? null : place, name: wheel.name }));
  const bare = CORNERS.filter((corner) => !known.some((one) => one.place === corner)).map(atCorner);
  const [on, off] = [known.filter((one) => one.place !== null), known.filter((one) => one.place === null)];
  return [...on, ...bare, ...off];
}

function atCorner(place: (typeof CORNERS)[number]): Subject {
  return { wheel: null, place, name: null };
}

function lastOf({ measured }: CarView, what: MeasureKind, name: string | null, { wheel, place }: Subject): Measurement | null {
  const series = measured.find((one) => one.what === what && one.name === name && (wheel === null ? one.wheel === null && one.place === place : one.wheel?.id === wheel));
  return series?.points.findLast((point) => point.part === 'counts')?.measurement ?? null;
}
