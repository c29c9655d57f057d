import { sayOf } from '../result/words/say.ts';

/** How much of a history is left out for being of other days than those shown; all 0 where the whole history is shown. */
export interface LeftOut {
  readonly records: number;
  readonly readings: number;
  readonly measurements: number;
  readonly observations: number;
  readonly followUps: number;
  readonly renewals: number;
  readonly recalls: number;
  readonly papers: number;
}

const KEYS: Readonly<Record<keyof LeftOut, string>> = {
  records: 'left-out-records',
  readings: 'left-out-readings',
  measurements: 'left-out-measurements',
  observations: 'left-out-observations',
  followUps: 'left-out-follow-ups',
  renewals: 'left-out-renewals',
  recalls: 'left-out-recalls',
  papers: 'left-out-papers',
};

/** What was counted, in words; empty where there is nothing. @example sayLeftOut({ ...nothing, records: 2, papers: 1 }) //=> '2 work records, 1 paper' */
export function sayLeftOut(counted: Partial<LeftOut>): string {
  return (Object.keys(KEYS) as (keyof LeftOut)[]).flatMap((kind) => {
    const count = counted[kind] ?? 0;
    return count === 0 ? [] : [sayOf(KEYS[kind], { n: count })];
  }).join(', ');
}

/** Of what is left out, what figures of today are reckoned with all the same, in words; empty where there is nothing. */
export function sayReckonedWith({ records, readings, measurements }: LeftOut): string {
  return sayLeftOut({ records, readings, measurements });
}
