/** What a supplier asks for delivery. */
export interface DeliveryTerms {
  readonly deliveryMinor: number;
  /** From this sum of goods on it delivers free; null: never. */
  readonly freeFromMinor: number | null;
}

/** What delivery costs for goods of a sum, both in minor units. @example deliveryCharge({ deliveryMinor: 495, freeFromMinor: 3000 }, 3000) //=> 0 */
export function deliveryCharge({ deliveryMinor, freeFromMinor }: DeliveryTerms, goodsMinor: number): number {
  return freeFromMinor !== null && goodsMinor >= freeFromMinor ? 0 : deliveryMinor;
}
