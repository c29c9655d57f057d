/** A mark's place in the yard: its lane and its stretch. */
interface Place {
  readonly id: string;
  readonly left: number;
  readonly right: number;
}

/** The mark nearest to a point of a lane; null where the lane has none. @example nearMark([{ id: 'a', left: 0, right: 10 }], 40)?.id //=> 'a' */
export function nearMark<One extends Place>(marks: readonly One[], x: number): One | null {
  const distance = ({ left, right }: Place) => (x < left ? left - x : x > right ? x - right : 0);
  return marks.reduce<One | null>((best, mark) => (best === null || distance(mark) < distance(best) ? mark : best), null);
}
