import { largestRemainder } from './largest-remainder.ts';

/** A line as it was bought: what its goods cost, in minor units. */
export interface BoughtLine {
  readonly goodsMinor: number;
}

/** What was paid beside the goods, in minor units: delivery and other charges, and what was taken off the whole (as a positive sum). */
export interface OrderExtras {
  readonly deliveryMinor: number;
  readonly discountMinor: number;
}

/** A line with its share of delivery and discount: goods + delivery - discount = landed. */
export interface LandedLine<Line extends BoughtLine> {
  readonly line: Line;
  readonly deliveryMinor: number;
  readonly discountMinor: number;
  readonly landedMinor: number;
}

/**
 * What each line of an order really cost: delivery and discount are shared by the value of its goods, to the last minor unit, so that the
 * landed costs sum to what was paid. Where all goods were free, lines share equally.
 *
 * @example landedCost([{ goodsMinor: 2999 }, { goodsMinor: 1250 }], { deliveryMinor: 500, discountMinor: 0 })
 * //=> landed 3352 and 1397, which is 4749 as paid
 */
export function landedCost<Line extends BoughtLine>(lines: readonly Line[], { deliveryMinor, discountMinor }: OrderExtras): readonly LandedLine<Line>[] {
  if (lines.length === 0) return [];
  const weights = lines.map(({ goodsMinor }) => goodsMinor);
  const delivery = largestRemainder(deliveryMinor, weights);
  const discount = largestRemainder(discountMinor, weights);
  return lines.map((line, at) => {
    const shares = { deliveryMinor: delivery[at] ?? 0, discountMinor: discount[at] ?? 0 };
    return { line, ...shares, landedMinor: line.goodsMinor + shares.deliveryMinor - shares.discountMinor };
  });
}
