import type { Result } from '../../../shared-core/result/result.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import { change, type Changed } from '../../ui/change.ts';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';

/** An obligation as it was entered. */
export type ObligationEntered = CarView['obligations'][number];

export const OBLIGATION_KINDS = ['roadworthiness-test', 'road-tax', 'insurance', 'warranty-end', 'printed-expiry', 'other'] as const;
type Kind = (typeof OBLIGATION_KINDS)[number];

/** What stands in the fields of an obligation. */
export interface ObligationDraft {
  readonly kind: string;
  readonly name: string;
  readonly lastValidDay: string;
  /** 'given' for a last valid day, else the years from first registration to a first test. */
  readonly first: string;
  readonly months: string;
  readonly keepsDate: boolean;
  readonly noticeDays: string;
  readonly price: string;
}

/** The fields of an obligation to change, or of a new one. */
export function obligationDraft(now: ObligationEntered | null, currency: string): ObligationDraft {
  if (now === null) return { kind: 'roadworthiness-test', name: '', lastValidDay: '', first: 'given', months: '12', keepsDate: false, noticeDays: '14', price: '' };
  const { kind, name, lastValidDay, months, keepsDate, noticeDays, price } = now;
  return { kind, name: name ?? '', lastValidDay, first: 'given', months: months === null ? '' : String(months), keepsDate, noticeDays: String(noticeDays), price: price === null ? '' : amountText(price, currency) };
}

type Sent = Result<Changed<'obligation.add'>>;

/** Adds what stands in the fields to the car, or changes the obligation that is given. */
export async function sendObligation(draft: ObligationDraft, now: ObligationEntered | null, car: string, currency: string): Promise<Sent> {
  const read = new FieldsRead();
  const terms = {
    months: read.wholeOrNull('months', draft.months),
    keepsDate: draft.keepsDate,
    noticeDays: read.wholeOrNull('noticeDays', draft.noticeDays) ?? 14,
    price: read.moneyOrNull('price', draft.price, currency),
  };
  if (isFirstTest(draft)) {
    const whole = read.whole({ ...terms, car, years: Number(draft.first), months: terms.months ?? 12 });
    return whole.ok ? change('first-test.add', whole.value) : whole;
  }
  const lastValidDay = read.date('lastValidDay', draft.lastValidDay);
  const whole = read.whole({ ...terms, kind: draft.kind as Kind, name: textOrNull(draft.name) });
  if (!whole.ok) return whole;
  const dated = { ...whole.value, lastValidDay: lastValidDay as NonNullable<typeof lastValidDay> };
  return now === null ? change('obligation.add', { ...dated, car }) : change('obligation.change', { ...dated, id: now.id });
}

/** Whether the day is to be counted from first registration. */
export function isFirstTest(draft: ObligationDraft): boolean {
  return draft.kind === 'roadworthiness-test' && draft.first !== 'given';
}
