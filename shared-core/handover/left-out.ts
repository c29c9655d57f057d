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

const WORDS: Readonly<Record<keyof LeftOut, readonly [string, string]>> = {
  records: ['work record', 'work records'],
  readings: ['reading', 'readings'],
  measurements: ['measurement', 'measurements'],
  observations: ['thing seen', 'things seen'],
  followUps: ['note to look again', 'notes to look again'],
  renewals: ['renewal of an obligation', 'renewals of obligations'],
  recalls: ['recall that is done', 'recalls that are done'],
  papers: ['paper', 'papers'],
};

/** What was counted, in words; empty where there is nothing. @example sayLeftOut({ ...nothing, records: 2, papers: 1 }) //=> '2 work records, 1 paper' */
export function sayLeftOut(counted: Partial<LeftOut>): string {
  return (Object.keys(WORDS) as (keyof LeftOut)[]).flatMap((kind) => {
    const count = counted[kind] ?? 0;
    return count === 0 ? [] : [`${count} ${WORDS[kind][count === 1 ? 0 : 1]}`];
  }).join(', ');
}

/** Of what is left out, what figures of today are reckoned with all the same, in words; empty where there is nothing. */
export function sayReckonedWith({ records, readings, measurements }: LeftOut): string {
  return sayLeftOut({ records, readings, measurements });
}
