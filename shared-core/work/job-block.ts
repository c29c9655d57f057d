import type { SheetStep, Turn } from './sheet-step.ts';

/** A step as it stands on a job sheet, and the steps of tasks that it is: several where tasks open or close the same thing in the same words. */
export interface JobStep {
  readonly of: readonly { readonly task: string; readonly step: string }[];
  readonly step: Omit<SheetStep, 'id'>;
}

/** Steps that belong together: an access opened or closed, or one task going on. */
export interface JobBlock {
  readonly kind: 'open' | 'close' | Turn;
  /** As it is spelled by the first task that names it. */
  readonly access: string | null;
  /** Tasks that it is for; of an access all that use it. */
  readonly tasks: readonly string[];
  /** Empty where nobody has written how. */
  readonly steps: readonly JobStep[];
}
