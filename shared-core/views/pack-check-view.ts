import { z } from 'zod';
import type { CheckReport } from '../handover/check-report.ts';
import { withheldByPack } from '../handover/withheld-by-pack.ts';
import { say } from '../result/words/say.ts';

const faultSchema = z.object({ code: z.string(), path: z.string().nullable(), row: z.number().nullable(), text: z.string() });

/** What a check of a pack found; it is sound where there is no fault. */
export const packCheckSchema = z.object({
  sound: z.boolean(),
  name: z.string().nullable(),
  composedOn: z.string().nullable(),
  rows: z.int(),
  faults: z.array(faultSchema),
  warnings: z.array(z.string()),
  /** What was and what was not proven. */
  notes: z.array(z.string()),
  withheld: z.array(z.object({ row: z.int(), field: z.string(), /** The way to an earlier keeper's pack, where it is that one's. */ path: z.string().optional() })),
  /** The same by pack, each field once; the pack itself has no path. */
  withheldIn: z.array(z.object({ path: z.string().nullable(), fields: z.array(z.string()) })),
});
export type PackCheckView = z.infer<typeof packCheckSchema>;

/** A check's report with its sentences. */
export function packCheckView(report: CheckReport): PackCheckView {
  return {
    sound: report.faults.length === 0,
    name: report.name,
    composedOn: report.composedOn,
    rows: report.rows,
    faults: report.faults.map((fault) => ({ code: fault.code, path: fault.path, row: fault.row, text: say(fault.message) })),
    warnings: report.warnings.map(say),
    // The document and the tables are proven to be the keeper's, not to say what the rows say.
    notes: [...report.notes.map(say), ...(report.faults.length === 0 ? [say({ key: 'check-drawn', values: {} })] : [])],
    withheld: report.withheld.map((one) => ({ ...one })),
    withheldIn: withheldByPack(report.withheld).map(({ path, fields }) => ({ path, fields: [...fields] })),
  };
}
