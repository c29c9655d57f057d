import type { LocalDate } from '../calendar/local-date.ts';
import { say, sayDate } from '../result/words/say.ts';
import type { DistanceAsTyped } from '../units/distance.ts';
import type { FollowUp } from '../work/follow-up.ts';
import { sayLateBy, sayWindow } from './say-window.ts';

/** What of a follow-up's view is said. */
interface Said {
  readonly state: 'late' | 'due' | 'ahead' | 'unknown';
  readonly earliest: LocalDate | null;
  readonly likely: LocalDate | null;
  readonly latest: LocalDate | null;
  readonly limb: 'time' | 'distance' | null;
  readonly target: DistanceAsTyped | null;
  readonly estimated: boolean;
  readonly lateBy: { readonly days: number; readonly months: number; readonly distance: DistanceAsTyped | null } | null;
}

type When = Pick<FollowUp, 'madeOn' | 'dueOn' | 'after' | 'countedFrom' | 'putOff'>;

/**
 * When a follow-up is to be looked at, as sentences: what comes first, then the other.
 *
 * @example sayFollowUp(oneByDate, said, today) //=> 'On 5 Dec 2026.'
 */
export function sayFollowUp(one: When, said: Said, today: LocalDate): string {
  return (said.state === 'late' ? lateParts(one, said) : parts(one, said, today)).map(([key, more]) => say({ key, values: { ...valuesOf(one, said), ...more } })).join(' ');
}

type Part = readonly [key: string, values?: Readonly<Record<string, string | number>>];

/** Late by day, by distance, or by both. */
function lateParts({ dueOn }: When, { lateBy }: Said): readonly Part[] {
  const byDay = lateBy !== null && lateBy.days > 0 && dueOn !== null;
  const past = lateBy?.distance ?? null;
  return [
    ...(byDay ? [['follow-up-day-late', { late: sayLateBy({ ...lateBy, distance: null }) }] as const] : []),
    ...(past === null ? [] : [[past.value === 0 ? 'follow-up-distance-reached' : 'follow-up-distance-late', { past: past.value }] as const]),
  ];
}

function parts({ dueOn, after }: When, said: Said, today: LocalDate): readonly Part[] {
  const unknown = after !== null && said.target === null;
  if (said.limb === 'distance') return [[distanceKey(said, today)], ...(dueOn === null ? [] : [['follow-up-or-on'] as const])];
  return [
    ...(dueOn === null ? [] : [[dueOn === today ? 'follow-up-day-today' : 'follow-up-day-ahead'] as const]),
    ...(unknown ? [['follow-up-distance-unknown'] as const] : after === null ? [] : [['follow-up-or-at'] as const]),
  ];
}

function distanceKey(said: Said, today: LocalDate): string {
  if (whenOf(said) === '') return 'follow-up-distance-not-foreseeable';
  if (said.likely !== null && said.likely <= today) return 'follow-up-distance-due';
  return said.earliest !== null && said.earliest <= today ? 'follow-up-distance-soon' : 'follow-up-distance-ahead';
}

/** An odometer that nobody read is told as one. */
function valuesOf({ madeOn, countedFrom, dueOn, after }: When, said: Said): Readonly<Record<string, string | number | null>> {
  const { target, estimated } = said;
  const at = target === null ? null : say({ key: estimated ? 'follow-up-about' : 'follow-up-exactly', values: { value: target.value, unit: target.unit } });
  return { on: dueOn, made: countedFrom ?? madeOn, after: after?.value ?? null, afterUnit: after?.unit ?? null, at, unit: target?.unit ?? null, when: whenOf(said) };
}

/** No finer than the forecast allows. */
function whenOf({ earliest, likely, latest }: Said): string {
  const when = sayWindow({ earliest, likely, latest, limb: 'distance' });
  return when.startsWith('week') ? `in the ${when}` : when;
}

/** How a follow-up was put off, the last time last; empty where it never was. @example sayPutOff(one) //=> 'Put off from 5 Dec 2026 to 12 Dec 2026.' */
export function sayPutOff({ putOff = [], madeOn, ...now }: When): string {
  const stands = { dueOn: now.dueOn, after: now.after, countedFrom: now.countedFrom ?? madeOn };
  return putOff.map((before, at) => {
    const values = { from: sayWhen(before), to: sayWhen(putOff[at + 1] ?? stands), note: before.note };
    return say({ key: before.note === '' ? 'follow-up-put-off' : 'follow-up-put-off-for', values });
  }).join(' ');
}

type Limits = Pick<NonNullable<FollowUp['putOff']>[number], 'dueOn' | 'after' | 'countedFrom'>;

function sayWhen({ dueOn, after, countedFrom }: Limits): string {
  const way = after === null ? null : say({ key: 'follow-up-put-off-way', values: { after: after.value, unit: after.unit, since: countedFrom } });
  if (dueOn === null) return way ?? '';
  return way === null ? sayDate(dueOn) : say({ key: 'follow-up-put-off-either', values: { on: dueOn, way } });
}
