import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import type { Moment } from '../journal/operation.ts';
import type { TaskRef } from '../sessions/task-ref.ts';
import { findMade, finds, photoRemoved, photoTaken, stepKey, stepTicked, stepValueRead, stepValueRemoved, tickRemoved, timeTaken, type StepRef, type Tick } from './doing.ts';
import { isBefore } from './instant.ts';
import { isOfPart, partOfTasks, type PartOfWork } from './part-of-work.ts';
import { sameRead, valuesOf } from './read-at-step.ts';
import { photosOf } from './take-photo.ts';
import { spansOf, vouchedSpans } from './take-time.ts';
import { ticksOf } from './tick-step.ts';

/** Work that goes from one session to another: all of it, or that of the tasks that go while others stay. */
export interface CarriedWork {
  readonly from: string;
  readonly to: string;
  readonly goes: readonly TaskRef[];
  /** The tasks that stay; none: the session goes whole. */
  readonly stays: readonly TaskRef[];
}

/**
 * The entries by which ticks, values, times, photographs and finds follow their tasks into another session. Where one step was ticked or
 * read in both, the later counts; what ran is paused when it was last vouched for. Whether work there was begun stays as it is: cautions
 * that nobody has read are read first.
 */
export function carryWork(facts: Facts, carried: CarriedWork, moment: Moment): readonly NewEntry[] {
  const scope = scopeOf(facts, carried);
  return [...carryTicks(facts, carried, scope, moment), ...carryValues(facts, carried, scope), ...carryTimes(facts, carried, scope, moment), ...carryPhotos(facts, carried, scope), ...carryFinds(facts, carried, scope)];
}

/** What goes along: all of it, or what is of the tasks that go; what is of a car alone goes with the last task of it. */
function scopeOf(facts: Facts, { goes, stays }: CarriedWork): PartOfWork {
  return stays.length === 0 ? { task: () => true, car: () => true } : partOfTasks(facts, goes, stays);
}

function carryTicks(facts: Facts, { from, to }: CarriedWork, scope: PartOfWork, { newId }: Moment): readonly NewEntry[] {
  const there = ticksOf(facts, to);
  const later = (ref: StepRef, tick: Tick) => there.some((one) => isBefore(tick.at, one.at) && one.of.some((own) => stepKey(own) === stepKey(ref)));
  const won = new Set<string>();
  const moved = ticksOf(facts, from).flatMap((tick) => {
    const [going, staying] = [tick.of.filter((ref) => scope.task(ref.task)), tick.of.filter((ref) => !scope.task(ref.task))];
    if (going.length === 0) return [];
    const of = going.filter((ref) => !later(ref, tick));
    for (const ref of of) won.add(stepKey(ref));
    if (staying.length > 0) return [newEntry(stepTicked, { ...tick, of: staying }), ...tickEntries({ ...tick, id: newId(), session: to, of }, null)];
    return tickEntries({ ...tick, session: to, of }, tick.id);
  });
  const given = there.filter((tick) => tick.of.some((ref) => won.has(stepKey(ref)))).flatMap((tick) => tickEntries({ ...tick, of: tick.of.filter((ref) => !won.has(stepKey(ref))) }, tick.id));
  return [...given, ...moved];
}

/** A tick that is of nothing any more is taken away, where it stands at all. */
function tickEntries(tick: Tick, standing: string | null): readonly NewEntry[] {
  if (tick.of.length > 0) return [newEntry(stepTicked, tick)];
  return standing === null ? [] : [newEntry(tickRemoved, { id: standing, car: null })];
}

function carryValues(facts: Facts, { from, to }: CarriedWork, scope: PartOfWork): readonly NewEntry[] {
  const there = valuesOf(facts, to);
  return valuesOf(facts, from).filter((one) => isOfPart(scope, one)).flatMap((value) => {
    const twin = there.find((one) => stepKey(one.at) === stepKey(value.at) && sameRead(one.read, value.read));
    if (twin !== undefined && isBefore(value.written, twin.written)) return [newEntry(stepValueRemoved, { id: value.id, car: null })];
    return [...(twin === undefined ? [] : [newEntry(stepValueRemoved, { id: twin.id, car: null })]), newEntry(stepValueRead, { ...value, session: to })];
  });
}

function carryTimes(facts: Facts, { from, to }: CarriedWork, scope: PartOfWork, { now, newId }: Moment): readonly NewEntry[] {
  return spansOf(facts, from).filter((span) => scope.task(span.task)).flatMap((span) => (span.to === null ? vouchedSpans(facts, span, now, newId) : [span])).map((span) => newEntry(timeTaken, { ...span, session: to }));
}

function carryPhotos(facts: Facts, { from, to }: CarriedWork, scope: PartOfWork): readonly NewEntry[] {
  const there = photosOf(facts, to);
  return photosOf(facts, from).filter((one) => isOfPart(scope, one)).map((photo) => {
    const twin = there.some((one) => one.paper === photo.paper && one.car === photo.car);
    return twin ? newEntry(photoRemoved, { id: photo.id, car: null }) : newEntry(photoTaken, { ...photo, session: to });
  });
}

function carryFinds(facts: Facts, { from, to }: CarriedWork, scope: PartOfWork): readonly NewEntry[] {
  return facts.all(finds).filter((one) => one.session === from && isOfPart(scope, one)).map((one) => newEntry(findMade, { ...one, session: to }));
}
