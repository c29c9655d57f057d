import type { Result } from '../../../shared-core/result/result.ts';
import { change, type Changed } from '../../ui/change.ts';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';

/** A line as it is typed; `of` is 'offer ID' or 'part ID'. */
export interface ByHandLine {
  readonly of: string;
  readonly packs: string;
  readonly quantity: string;
  readonly price: string;
}

export interface ByHandDraft {
  readonly supplier: string;
  readonly number: string;
  readonly placedOn: string;
  readonly expectedOn: string;
  readonly delivery: string;
  readonly lines: readonly ByHandLine[];
  readonly sure: boolean;
}

/** A line as it opens. */
export function lineStart(): ByHandLine {
  return { of: '', packs: '1', quantity: '1', price: '' };
}

/** Places the order as it was typed. */
export async function sendByHand(draft: ByHandDraft, currency: string): Promise<Result<Changed<'order.place'>>> {
  const read = new FieldsRead();
  const lines = draft.lines.map((line, at) => {
    const [kind, id = ''] = line.of.split(' ');
    if (kind !== 'offer' && kind !== 'part') read.refuse(`lines.${at}.part`, 'choose-part');
    return {
      ...(kind === 'offer' ? { offer: id } : { part: id }),
      packs: read.wholeOrNull(`lines.${at}.packs`, line.packs) ?? 0,
      quantity: read.number(`lines.${at}.quantity`, line.quantity, '5'),
      priceMinor: read.money(`lines.${at}.priceMinor`, line.price, currency),
    };
  });
  const delivery = read.moneyOrNull('deliveryMinor', draft.delivery, currency);
  const expectedOn = read.dateOrNull('expectedOn', draft.expectedOn);
  const whole = read.whole({
    supplier: draft.supplier, number: textOrNull(draft.number), placedOn: read.date('placedOn', draft.placedOn), lines, sure: draft.sure,
    ...(expectedOn === null ? {} : { expectedOn }),
    ...(delivery === null ? {} : { deliveryMinor: delivery }),
  });
  return whole.ok ? change('order.place', whole.value) : whole;
}
