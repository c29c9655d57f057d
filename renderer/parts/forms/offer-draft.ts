import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/result/result.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';

type Offer = PartsView['offers'][number]['offer'];

export interface BreakDraft {
  readonly packs: string;
  readonly price: string;
}

export interface OfferDraft {
  readonly supplier: string;
  readonly part: string;
  readonly number: string;
  readonly quantity: string;
  readonly price: string;
  readonly seenOn: string;
  /** In percent. */
  readonly tax: string;
  readonly deposit: string;
  readonly most: string;
  readonly breaks: readonly BreakDraft[];
}

interface OfferStart {
  readonly supplier: string;
  readonly part: string;
  readonly today: string;
  readonly currency: string;
}

/** The form as it opens. */
export function offerDraft(now: Offer | null, { supplier, part, today, currency }: OfferStart): OfferDraft {
  const money = (minor: number) => amountText(minor, currency);
  if (now === null) return { supplier, part, number: '', quantity: '1', price: '', seenOn: today, tax: '', deposit: '', most: '', breaks: [] };
  return {
    supplier: now.supplier, part: now.part, number: now.number ?? '', quantity: String(now.quantity), price: money(now.priceMinor), seenOn: now.seenOn, tax: now.taxAdded === null ? '' : String(now.taxAdded / 100),
    deposit: now.depositMinor === 0 ? '' : money(now.depositMinor), most: now.most?.toString() ?? '', breaks: now.breaks.map((one) => ({ packs: String(one.packs), price: money(one.priceMinor) })),
  };
}

/** States the offer as it was typed. */
export async function sendOffer(draft: OfferDraft, now: Offer | null, currency: string): Promise<Result<Changed<'offer.set'>>> {
  const read = new FieldsRead();
  const tax = read.numberOrNull('taxAdded', draft.tax);
  const seenOn = read.date('seenOn', draft.seenOn);
  const whole = read.whole({
    ...(now === null ? {} : { id: now.id, withdrawnOn: now.withdrawnOn }),
    supplier: draft.supplier, part: draft.part, number: textOrNull(draft.number),
    quantity: read.number('quantity', draft.quantity, '5'),
    priceMinor: read.money('priceMinor', draft.price, currency),
    taxAdded: tax === null ? null : Math.round(tax * 100),
    depositMinor: read.moneyOrNull('depositMinor', draft.deposit, currency) ?? 0,
    most: read.wholeOrNull('most', draft.most),
    breaks: draft.breaks.map((one, at) => ({ packs: read.wholeOrNull(`breaks.${at}.packs`, one.packs) ?? 0, priceMinor: read.money(`breaks.${at}.priceMinor`, one.price, currency) })),
    seenOn: seenOn as RequestOf<'offer.set'>['seenOn'],
  });
  return whole.ok ? change('offer.set', whole.value) : whole;
}
