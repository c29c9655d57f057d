import { measurements } from '../care/measurement.ts';
import type { Facts } from '../journal/facts.ts';
import { wastes } from '../parts/waste.ts';
import { say } from '../result/words/say.ts';
import { followUps } from '../work/follow-up.ts';

/** What was written in the same step as a record, in words: what was measured, is to be looked at again, or is kept as leavings. None where it stands no more. */
export function besideWords(facts: Facts, beside: readonly { readonly family: string; readonly id: string }[]): string[] {
  return beside.flatMap(({ family, id }) => {
    const measured = family === measurements.name ? facts.get(measurements, id) : null;
    if (measured !== null) return [say({ key: 'beside-measured', values: { what: measured.name ?? say({ key: `sheet-measure-${measured.what}`, values: {} }), value: measured.typed.value, unit: measured.typed.unit } })];
    if (family === followUps.name) return [facts.get(followUps, id)?.text ?? []].flat();
    return family === wastes.name ? [facts.get(wastes, id)?.what ?? []].flat() : [];
  });
}
