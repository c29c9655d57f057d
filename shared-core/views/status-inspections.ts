import { obligations } from '../care/obligation.ts';
import { renewals, type Renewal } from '../care/renewal.ts';
import { isWithin, type PackPeriod } from '../handover/pack-period.ts';
import type { StatusInspection } from '../handover/status-input.ts';
import type { Facts } from '../journal/facts.ts';
import type { WorkRecord } from '../records/work-record.ts';
import { hasWords, say, sayOf } from '../result/words/say.ts';
import type { CarCare, ItemCare } from './car-care.ts';
import { obligationView } from './due-view.ts';
import type { HistoryChoice } from './history-choice.ts';

/** Who did an inspection, the one who vouches for it first. */
const BY = ['approvedBy', 'placeName', 'doneBy'] as const;

/** The inspections of a car that a certificate holds: its roadworthiness tests, said to be missing where there is none, and items that a certificate renews. */
export function inspectionsOf(facts: Facts, care: CarCare, choice: HistoryChoice): StatusInspection[] {
  const tests = facts.ofCar(obligations, care.car.id).filter((one) => one.kind === 'roadworthiness-test');
  const none: StatusInspection = { name: say({ key: 'obligation-roadworthiness-test', values: {} }), last: null, until: null, whyNot: sayOf('status-none-test') };
  const renewed = facts.ofCar(renewals, care.car.id);
  return [
    ...(tests.length === 0 ? [none] : []),
    ...tests.map((test): StatusInspection => ({ name: obligationView(test, choice.today).name, until: test.lastValidDay, ...lastTest(renewed.filter((one) => one.obligation === test.id), care, choice) })),
    ...care.items.filter(({ item }) => item.anchor.kind === 'keep-date' && item.work === 'check').map((one) => certificate(one, care, choice)),
  ];
}

type Last = Pick<StatusInspection, 'last' | 'whyNot'>;

/** A renewal is a test passed; who did it stands in the record that shares its paper or its reference. */
function lastTest(renewed: readonly Renewal[], care: CarCare, choice: HistoryChoice): Last {
  const renewal = renewed.filter((one) => isWithin(choice.period, one.on)).sort((a, b) => (a.on < b.on ? -1 : 1)).at(-1);
  const hidden = notShown(choice.period);
  if (renewal === undefined || choice.period.to !== null) return { last: null, whyNot: hidden };
  const record = care.records.find((one) => one.date === renewal.on && ((one.reference !== null && one.reference === renewal.reference) || one.papers.some((paper) => renewal.papers.includes(paper))));
  return { last: { on: renewal.on, by: byWhom(record ?? null, care, choice), result: sayOf('status-result-passed'), reference: referenceOf(renewal.reference, choice) }, whyNot: null };
}

function certificate({ item, completions, target }: ItemCare, care: CarCare, choice: HistoryChoice): StatusInspection {
  const done = choice.period.to === null ? completions.findLast((one) => isWithin(choice.period, one.date)) : undefined;
  const record = done === undefined ? undefined : care.records.find((one) => one.date === done.date && one.lines.some((line) => line.item === item.id));
  const until = target?.date ?? null;
  if (record === undefined) return { name: item.name, last: null, until, whyNot: notShown(choice.period) };
  const outcome = record.lines.find((line) => line.item === item.id)?.outcome ?? '';
  return { name: item.name, last: { on: record.date, by: byWhom(record, care, choice), result: hasWords(`status-result-${outcome}`) ? sayOf(`status-result-${outcome}`) : null, reference: referenceOf(record.reference, choice) }, until, whyNot: null };
}

function notShown({ from, to }: PackPeriod): string | null {
  if (to !== null) return sayOf('status-after', { to });
  return from === null ? null : sayOf('status-before', { from });
}

function byWhom(record: WorkRecord | null, { earlier }: CarCare, { withheld }: HistoryChoice): string {
  const by = record === null ? null : (BY.filter((field) => !withheld.has(field)).map((field) => record[field]).find((name) => name !== null) ?? null);
  if (by !== null) return sayOf('status-by', { by });
  if (record === null) return sayOf('status-by-not-written');
  if (BY.some((field) => withheld.has(field))) return sayOf('status-by-withheld');
  const before = earlier.get(record.id)?.withheld ?? [];
  return BY.some((field) => before.includes(field)) ? sayOf('status-by-withheld-before') : sayOf('status-by-not-written');
}

function referenceOf(reference: string | null, { withheld }: HistoryChoice): string | null {
  if (withheld.has('reference')) return sayOf('status-reference-withheld');
  return reference === null ? null : sayOf('status-reference', { reference });
}
