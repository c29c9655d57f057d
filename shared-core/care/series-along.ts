import { dayNumber, type LocalDate } from '../calendar/local-date.ts';
import { distanceOn, type KnownDistance } from '../fleet/known-distance.ts';
import type { IdleSpan } from '../fleet/wheel-places.ts';
import type { Metres } from '../units/distance.ts';
import type { WearWay } from './measure-kind.ts';
import type { Measurement } from './measurement.ts';

/** How far a thing had worn along when it was measured, and whether that distance is only worked out. */
export interface Along {
  readonly along: number;
  readonly metres: Metres | null;
  readonly estimated: boolean;
}

/**
 * How far along its wear a thing was measured: the day where it wears with time, else the metres it has gone itself, by the
 * distance given with it or by the car's readings of that day and around it. Null where nothing tells the distance.
 *
 * @example alongOf(measurement, { by: 'time', rises: false }, [], known)?.along //=> 20_417
 */
export function alongOf(one: Measurement, way: WearWay, idle: readonly IdleSpan[], known: KnownDistance): Along | null {
  const found = one.metres === null ? distanceOn(known, one.date) : { metres: one.metres, estimated: false };
  if (way.by === 'time') return { along: dayNumber(one.date), metres: found?.metres ?? null, estimated: found?.estimated ?? true };
  const rested = idleMetres(idle, one.date, known);
  return found === null || rested === null ? null : { along: found.metres - rested, ...found };
}

/** What the car went until the end of a day while the thing did not roll, in metres; null where nothing tells. */
export function idleMetres(idle: readonly IdleSpan[], until: LocalDate, known: KnownDistance): number | null {
  const spans = idle.filter((span) => span.from < until).map((span) => ({ from: span.from, to: span.to === null || span.to > until ? until : span.to }));
  const gone = spans.map(({ from, to }) => [distanceOn(known, from), distanceOn(known, to)] as const);
  if (gone.some(([from, to]) => from === null || to === null)) return null;
  return gone.reduce((sum, [from, to]) => sum + Math.max(0, (to?.metres ?? 0) - (from?.metres ?? 0)), 0);
}
