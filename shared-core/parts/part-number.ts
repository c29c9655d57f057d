import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { factRemoval } from '../journal/fact-removal.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';

/** A part number that its maker has replaced by another. */
export const supersededSchema = z.strictObject({
  id: idSchema,
  old: plainText(60),
  new: plainText(60),
  since: dateSchema.nullable(),
  source: plainText(160).nullable(),
});
export type Superseded = z.infer<typeof supersededSchema>;

export const superseded = family('superseded-number', 'parts', supersededSchema);
export const numberSuperseded = factEntry('number-superseded', superseded, { car: () => null });
export const supersededRemoved = factRemoval('superseded-removed', superseded);

/** A number as it is compared: blanks, dots, hyphens and strokes do not tell numbers apart, nor does case. @example numberKey('ov 10-02') //=> 'OV1002' */
export function numberKey(number: string): string {
  return number.replace(/[\s.\-/]/g, '').toUpperCase();
}

/** The numbers that a number was replaced by, one after another, the present one last; empty where it still holds. */
export function successorsOf(list: readonly Superseded[], number: string): readonly string[] {
  const by = new Map(list.map((one) => [numberKey(one.old), one.new]));
  const found: string[] = [];
  const seen = new Set([numberKey(number)]);
  for (let next = by.get(numberKey(number)); next !== undefined && !seen.has(numberKey(next)); next = by.get(numberKey(next))) {
    seen.add(numberKey(next));
    found.push(next);
  }
  return found;
}

/** Every number that leads to this one, nearest first. */
export function formerNumbers(list: readonly Superseded[], number: string): readonly string[] {
  return list.map((one) => one.old).filter((old) => successorsOf(list, old).some((later) => numberKey(later) === numberKey(number)));
}
