import { z } from 'zod';

const minor = z.int().min(0).max(Number.MAX_SAFE_INTEGER);
const quantity = z.number().positive().max(Number.MAX_SAFE_INTEGER);

/** Packs of one offer to buy. */
export const orderLineSchema = z.strictObject({ offer: z.string(), packs: z.int().min(1) });
export type OrderLine = z.infer<typeof orderLineSchema>;

/** What a need gets: a quantity of a part, from an offer by its id or from the shelf (`shelf`). One row for each need, part and source. */
export const allocationSchema = z.strictObject({ need: z.string(), part: z.string(), quantity, from: z.string() });
export type Allocation = z.infer<typeof allocationSchema>;

/** What stands on the shelf when all is done, old stock included; a kit stands there as its contents. */
export const leftSchema = z.strictObject({ part: z.string(), quantity });
export type Left = z.infer<typeof leftSchema>;

/** Why a need is not met: no source could reach it in time at all, or what can be had in time is not enough for all. */
export const unmetSchema = z.strictObject({ need: z.string(), code: z.enum(['none-in-time', 'not-enough']) });
export type Unmet = z.infer<typeof unmetSchema>;

/**
 * The answer to an order instance, money in minor units: `total = goods + delivery + later`. `optimal`: as many needs as can be met are met,
 * by rank, and no such order costs less (`total - bound` is below 1). `stopped`: the best found so far; no order that meets as much costs less
 * than the bound. `later` holds the ids of needs left for a later order.
 */
export const orderAnswerSchema = z.strictObject({
  status: z.enum(['optimal', 'stopped']),
  totalMinor: minor,
  boundMinor: minor,
  goodsMinor: minor,
  deliveryMinor: minor,
  laterMinor: minor,
  lines: z.array(orderLineSchema),
  allocation: z.array(allocationSchema),
  left: z.array(leftSchema),
  later: z.array(z.string()),
  unmet: z.array(unmetSchema),
});
export type OrderAnswer = z.infer<typeof orderAnswerSchema>;
