/** A way to share set-ups: what is done together, by number, and when; and what that saves against doing each by itself. */
export interface Grouping {
  readonly groups: readonly (readonly number[])[];
  readonly at: readonly number[];
  readonly saving: number;
}

/** What shifting an activity to a time costs; 0 at its own time, never less. */
export type Penalty = (activity: number, time: number) => number;

/**
 * The best grouping: a group of n saves n - 1 set-ups, and pays what shifting all to one time costs at least. Tries every partition.
 *
 * Source: model of Wildeman, Dekker and Smit 1997 (reference, evidence-and-maths section 9, from memory).
 */
export function bestGrouping(count: number, times: readonly number[], setUp: number, penalty: Penalty): Grouping {
  let best: Grouping = { groups: [], at: [], saving: -Infinity };
  for (const groups of partitions(count)) {
    const shared = groups.map((group) => groupSaving(group, times, setUp, penalty));
    const saving = shared.reduce((sum, one) => sum + one.saving, 0);
    if (saving > best.saving) best = { groups, at: shared.map((one) => one.at), saving };
  }
  return best;
}

/** The best grouping among those whose groups are neighbours in time, the activities standing in the order of their times. */
export function bestConsecutive(count: number, times: readonly number[], setUp: number, penalty: Penalty): number {
  const best = [0];
  for (let end = 1; end <= count; end += 1) {
    const ways = Array.from({ length: end }, (_, start) => (best[start] ?? 0) + groupSaving(Array.from({ length: end - start }, (_, i) => start + i), times, setUp, penalty).saving);
    best.push(Math.max(...ways));
  }
  return best[count] ?? 0;
}

function groupSaving(group: readonly number[], times: readonly number[], setUp: number, penalty: Penalty): { readonly at: number; readonly saving: number } {
  let [at, least] = [NaN, Infinity];
  for (const time of times) {
    const shifted = group.reduce((sum, activity) => sum + penalty(activity, time), 0);
    if (shifted < least) [at, least] = [time, shifted];
  }
  return { at, saving: (group.length - 1) * setUp - least };
}

/** Every way to put things into groups. */
export function* partitions(count: number): Generator<readonly (readonly number[])[]> {
  if (count === 0) {
    yield [];
    return;
  }
  for (const rest of partitions(count - 1)) {
    yield [...rest, [count - 1]];
    for (let at = 0; at < rest.length; at += 1) yield rest.map((group, i) => (i === at ? [...group, count - 1] : group));
  }
}
