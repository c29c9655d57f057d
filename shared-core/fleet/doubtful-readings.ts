import { dayNumber } from '../calendar/local-date.ts';
import { must } from '../result/assert.ts';
import { metresFromKilometres, toKilometres, type Metres } from '../units/distance.ts';
import type { CarUse } from './car-usage.ts';
import { clusterOrTypo, fitsAfter } from './cluster-or-typo.ts';
import { instrumentOn, wholeDistance } from './continuous-distance.ts';
import { judgeCarReading, usageBefore, type CarReadingVerdict } from './judge-car-reading.ts';
import type { Reading } from './reading.ts';
import type { DayKm, Usage } from './usage-rate.ts';

/**
 * What the next reading makes of a doubtful one. `slip`: the next one follows the old line. `replaced`: it follows the
 * doubtful one, so that the instrument looks replaced; `distance` is the car's estimated whole distance then. `follows`: it
 * continues an earlier doubtful one that looks like the first of a new instrument. `unsure`: neither line, or both.
 */
export type NextReadingSays =
  | { readonly says: 'slip' | 'unsure'; readonly by: Reading }
  | { readonly says: 'replaced'; readonly by: Reading; readonly distance: Metres }
  | { readonly says: 'follows'; readonly first: Reading };

/** A reading set aside, judged by what stands now. */
export interface DoubtfulReading {
  readonly reading: Reading;
  /** No doubt any more where other readings have since been settled: then it only waits to be confirmed. */
  readonly verdict: CarReadingVerdict;
  /** Null while there is no later reading, and where an instrument was replaced in between. */
  readonly next: NextReadingSays | null;
}

/**
 * A car's doubtful readings in order of date, each with what is now to be said of it. Nothing is decided here: a replaced
 * instrument is proposed to the keeper, with its estimated distance.
 */
export function doubtfulReadings(use: CarUse): readonly DoubtfulReading[] {
  const inOrder = [...use.doubtful].sort((a, b) => (a.date === b.date ? (a.id < b.id ? -1 : 1) : a.date < b.date ? -1 : 1));
  let series: Series | null = null;
  return inOrder.map((reading) => {
    const verdict = judgeCarReading(use, { ...reading, instrument: instrumentOn(use.instruments, reading.date)?.id ?? null });
    series = continues(use, series, reading);
    if (series !== null) return { reading, verdict, next: { says: 'follows', first: series.first } };
    const next = nextSays(use, reading);
    if (next?.says === 'replaced') series = { first: reading, last: reading, usage: must(usageBefore(use, reading.date), 'usage') };
    return { reading, verdict, next };
  });
}

/** Doubtful readings that look as if all were of one new instrument. */
interface Series {
  readonly first: Reading;
  readonly last: Reading;
  /** Of the readings before the first of them. */
  readonly usage: Usage;
}

/** The series with one more reading, or null where that one is not of it. */
function continues(use: CarUse, series: Series | null, reading: Reading): Series | null {
  if (series === null || nextOf(use, series.last)?.id !== reading.id) return null;
  return fitsAfter(series.usage, onOldLine(use, series.last), onOldLine(use, reading)) ? { ...series, last: reading } : null;
}

function nextSays(use: CarUse, reading: Reading): NextReadingSays | null {
  const [usage, next] = [usageBefore(use, reading.date), nextOf(use, reading)];
  if (usage === null || next === null || instrumentOn(use.instruments, next.date)?.date !== instrumentOn(use.instruments, reading.date)?.date) return null;
  const decided = clusterOrTypo(usage, onOldLine(use, reading), onOldLine(use, next));
  if (decided.verdict === 'replaced') return { says: 'replaced', by: next, distance: metresFromKilometres(decided.distanceKm) };
  return { says: decided.verdict === 'typo' ? 'slip' : 'unsure', by: next };
}

/** The next reading of a later day that counts or is itself doubtful; of several on one day the accepted one, then the highest. */
function nextOf(use: CarUse, reading: Reading): Reading | null {
  const doubtful = use.doubtful.filter(({ date }) => date > reading.date).sort((a, b) => (a.date === b.date ? b.shown - a.shown : a.date < b.date ? -1 : 1))[0];
  const accepted = use.points.find(({ date }) => date > reading.date)?.reading;
  if (doubtful === undefined || accepted === undefined) return doubtful ?? accepted ?? null;
  return doubtful.date < accepted.date ? doubtful : accepted;
}

/** A reading as if it were of the instrument then known to be in the car. */
function onOldLine(use: CarUse, reading: Reading): DayKm {
  const instrument = instrumentOn(use.instruments, reading.date)?.id ?? null;
  return { day: dayNumber(reading.date), km: toKilometres(wholeDistance({ ...reading, instrument }, use.instruments)) };
}
