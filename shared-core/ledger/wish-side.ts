import { serviceItems } from '../care/service-item.ts';
import type { Facts } from '../journal/facts.ts';
import { parts } from '../parts/part.ts';
import type { WorkRecord } from '../records/work-record.ts';
import type { CostSide } from './posting.ts';
import { wishes } from './wish.ts';

/** Whose the costs of a record are: by the item that something was for alone, or by the part that was used. */
export interface RecordSides {
  readonly ofItem: (item: string | null) => CostSide;
  readonly ofPart: (part: string) => CostSide;
}

/**
 * Whether what a record cost is the car's or a wish's. A record of nothing but a wish is the wish's; in one of several things only what is
 * said to be for the wish's item, and parts that none but it takes, are the wish's.
 */
export function recordSides(facts: Facts): (record: WorkRecord) => RecordSides {
  const wishOf = new Map(facts.all(wishes).flatMap((wish) => (wish.item === null ? [] : [[wish.item, wish.id] as const])));
  return (record) => {
    const car: CostSide = { kind: 'car', car: record.car };
    const side = (wish: string | undefined): CostSide => (wish === undefined ? car : { kind: 'wish', wish });
    const done = record.lines.filter((line) => line.outcome !== 'not-done');
    const wished = done.flatMap((line) => (line.item === null ? [] : (wishOf.get(line.item) ?? [])));
    if (wished.length > 0 && wished.length === done.length) return { ofItem: (item) => side((item === null ? undefined : wishOf.get(item)) ?? wished[0]), ofPart: () => side(wished[0]) };
    return {
      ofItem: (item) => side(item === null ? undefined : wishOf.get(item)),
      ofPart: (part) => {
        if (wished.length === 0) return car;
        const taking = done.filter((line) => line.item !== null && takes(facts, line.item, part));
        const only = taking.length === 1 ? taking[0]?.item : undefined;
        return side(only == null ? undefined : wishOf.get(only));
      },
    };
  };
}

function takes(facts: Facts, item: string, part: string): boolean {
  const meets = facts.get(parts, part)?.meets ?? [];
  return (facts.get(serviceItems, item)?.needs ?? []).some((need) => meets.includes(need.specification));
}
