import type { CarView } from '../../../../shared-core/views/car-view.ts';
import type { WheelView } from '../../../../shared-core/views/wheel-view.ts';

type Place = WheelView['place'];
/** Where each wheel is then, by its id. */
export type Places = Readonly<Record<string, Place>>;

/** What is typed into the form that moves wheels. */
export interface MoveDraft {
  readonly places: Places;
  readonly on: string;
  readonly reading: string;
}

/** The form as it opens: all wheels where they are, today. */
export function moveDraft({ wheels, today }: Pick<CarView, 'wheels' | 'today'>): MoveDraft {
  return { places: placesNow(wheels), on: today, reading: '' };
}

/** Where all wheels are now. */
export function placesNow(wheels: readonly WheelView[]): Places {
  return Object.fromEntries(wheels.map((one) => [one.wheel.id, one.place]));
}

const FRONT_TO_REAR: Partial<Record<Place, Place>> = { 'front-left': 'rear-left', 'rear-left': 'front-left', 'front-right': 'rear-right', 'rear-right': 'front-right' };
const LEFT_TO_RIGHT: Partial<Record<Place, Place>> = { 'front-left': 'front-right', 'front-right': 'front-left', 'rear-left': 'rear-right', 'rear-right': 'rear-left' };

/** Front and rear change places, each side by itself. */
export function frontToRear(places: Places): Places {
  return exchanged(places, FRONT_TO_REAR);
}

/** Left and right change places. */
export function leftToRight(places: Places): Places {
  return exchanged(places, LEFT_TO_RIGHT);
}

function exchanged(places: Places, by: Partial<Record<Place, Place>>): Places {
  return Object.fromEntries(Object.entries(places).map(([wheel, place]) => [wheel, by[place] ?? place]));
}

/**
 * The wheels at the corners come off, and of those off the car the ones that came off last go where they were; null where
 * nothing off the car was ever at a corner, or is new.
 */
export function otherSet(wheels: readonly WheelView[]): Places | null {
  const corners = Object.keys(FRONT_TO_REAR) as Place[];
  const off = wheels.filter((one) => one.place === 'off').sort((a, b) => ((a.since ?? '') < (b.since ?? '') ? 1 : -1));
  const places: Record<string, Place> = { ...placesNow(wheels) };
  for (const { wheel } of wheels.filter((one) => corners.includes(one.place))) places[wheel.id] = 'off';
  const taken = new Set<Place>();
  for (const { wheel, moves } of off) {
    const was = moves.findLast((move) => corners.includes(move.place))?.place;
    if (was === undefined || taken.has(was)) continue;
    taken.add(was);
    places[wheel.id] = was;
  }
  return taken.size === 0 ? null : places;
}

/** The wheels that are to be elsewhere than they are. */
export function movedWheels(wheels: readonly WheelView[], places: Places): { readonly wheel: string; readonly place: Place }[] {
  return wheels.flatMap(({ wheel, place }) => {
    const then = places[wheel.id] ?? place;
    return then === place ? [] : [{ wheel: wheel.id, place: then }];
  });
}
