import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Refusal, Result } from '../../../shared-core/result/result.ts';
import type { LotView, PartsView, PlacedOrderView } from '../../../shared-core/views/parts-view-schema.ts';
import { FieldsRead } from '../../ui/form/read-fields.ts';

type Typed = Readonly<Record<string, string>>;

/** What is sent back, as it is typed: packs of goods and of deposits by line, and what of it leaves the shelf by lot. */
export interface ReturnDraft {
  readonly goods: Typed;
  readonly deposits: Typed;
  readonly lots: Typed;
  readonly on: string;
  readonly refund: string;
  readonly files: readonly File[];
  readonly sure: boolean;
  readonly note: string;
}

type Returned = RequestOf<'order.return'>;

/** Nothing yet. */
export function returnStart(today: string): ReturnDraft {
  return { goods: {}, deposits: {}, lots: {}, on: today, refund: '', files: [], sure: false, note: '' };
}

/** Packs of a line that can still be sent back. */
export function goodsBack({ good, aside, goodsReturned }: PlacedOrderView['lines'][number]): number {
  return good + aside - goodsReturned;
}

/** What an order brought and still stands on the shelf. */
export function lotsOfOrder({ shelf }: PartsView, { order }: PlacedOrderView): readonly LotView[] {
  return shelf.filter((one) => one.lot.order === order.id && one.left > 0);
}

/** Reads what was typed. */
export function readReturned(draft: ReturnDraft, view: PartsView, order: PlacedOrderView): Result<Returned> {
  const read = new FieldsRead();
  const packs = (map: 'goods' | 'deposits', what: 'goods' | 'deposit') => order.lines.flatMap(({ line }) => {
    const count = read.wholeOrNull(`${map}.${line.id}`, draft[map][line.id] ?? '') ?? 0;
    return count === 0 ? [] : [{ line: line.id, packs: count, what }];
  });
  const lines = [...packs('goods', 'goods'), ...packs('deposits', 'deposit')];
  const lots = lotsOfOrder(view, order).flatMap(({ lot }) => {
    const quantity = read.numberOrNull(`lots.${lot.id}`, draft.lots[lot.id] ?? '') ?? 0;
    return quantity === 0 ? [] : [{ lot: lot.id, quantity }];
  });
  if (lines.length === 0) read.refuse('lines', 'nothing-back');
  const on = read.date('on', draft.on);
  const refund = read.moneyOrNull('refundExpectedMinor', draft.refund, view.currency);
  return read.whole({ order: order.order.id, lines, lots, note: draft.note, sure: draft.sure, ...(on === undefined ? {} : { on }), ...(refund === null ? {} : { refundExpectedMinor: refund }) });
}

/** A refusal of a row, at the field that the row comes from. */
export function atReturnedField(refusal: Refusal, { lines }: Returned): Refusal {
  const [list, at] = refusal.path ?? [];
  const row = list === 'lines' && at !== undefined ? lines[Number(at)] : undefined;
  return row === undefined ? refusal : { ...refusal, path: [row.what === 'deposit' ? 'deposits' : 'goods', row.line] };
}
