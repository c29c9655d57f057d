import { z } from 'zod';
import { refusedBy } from '../result/refused-by.ts';

/**
 * Fluids and greases of which some kinds do not bear each other, with the bases told apart and how grave it is to mix two: `never`, or
 * `ask` where it depends on the two products. Common practice, no source; a keeper's own pair (never-mix.ts) may say more.
 */
export const FLUID_BASES = {
  'brake-fluid': { rule: 'never', bases: ['glycol', 'silicone', 'mineral-oil'] },
  coolant: { rule: 'ask', bases: ['inorganic-acid', 'organic-acid', 'hybrid-organic-acid'] },
  grease: { rule: 'ask', bases: ['lithium', 'lithium-complex', 'calcium', 'calcium-sulfonate', 'polyurea', 'clay', 'sodium', 'silicone'] },
} as const satisfies Readonly<Record<string, { readonly rule: 'never' | 'ask'; readonly bases: readonly string[] }>>;

export const fluidUseSchema = z.enum(['brake-fluid', 'coolant', 'grease']);
export type FluidUse = z.infer<typeof fluidUseSchema>;

/** What a fluid is for, and what it is made on; null where nobody has said. Its colour says neither. */
export const fluidSchema = z
  .strictObject({ use: fluidUseSchema, base: z.string().max(40).nullable() })
  .refine(({ use, base }) => base === null || (FLUID_BASES[use].bases as readonly string[]).includes(base), refusedBy('base-of-no-such-fluid'));
export type Fluid = z.infer<typeof fluidSchema>;

/** Whether two fluids may meet in one system: null where they may, or are for different uses and never meet. */
export function fluidRule(a: Fluid | null, b: Fluid | null): { readonly rule: 'never' | 'ask'; readonly why: 'fluids-of-two-bases' | 'fluid-base-unknown' } | null {
  if (a === null || b === null || a.use !== b.use) return null;
  if (a.base === null || b.base === null) return { rule: 'ask', why: 'fluid-base-unknown' };
  return a.base === b.base ? null : { rule: FLUID_BASES[a.use].rule, why: 'fluids-of-two-bases' };
}
