import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Refusal, Result } from '../../../shared-core/result/result.ts';
import type { LotView, PartsView, PlacedOrderView } from '../../../shared-core/views/parts-view-schema.ts';
import { FieldsRead } from '../../ui/form/read-fields.ts';

type Typed = Readonly<Record<string, string>>;

/** What is sent back or claimed, as it is typed: packs of goods, of deposits and of what never comes by line, and what leaves the shelf by lot. */
export interface ReturnDraft {
  readonly goods: Typed;
  readonly deposits: Typed;
  readonly claims: Typed;
  readonly lots: Typed;
  readonly on: string;
  readonly refund: string;
  readonly files: readonly File[];
  readonly sure: boolean;
  readonly note: string;
}

type Returned = RequestOf<'order.return'>;

const WHAT = { goods: 'goods', deposits: 'deposit', claims: 'claim' } as const;
const FIELD = { goods: 'goods', deposit: 'deposits', claim: 'claims' } as const;

/** Nothing yet. */
export function returnStart(today: string): ReturnDraft {
  return { goods: {}, deposits: {}, claims: {}, lots: {}, on: today, refund: '', files: [], sure: false, note: '' };
}

/** What an order brought and still stands on the shelf. */
export function lotsOfOrder({ shelf }: PartsView, { order }: PlacedOrderView): readonly LotView[] {
  return shelf.filter((one) => one.lot.order === order.id && one.left > 0);
}

/** Reads what was typed. */
export function readReturned(draft: ReturnDraft, view: PartsView, order: PlacedOrderView): Result<Returned> {
  const read = new FieldsRead();
  const packs = (map: keyof typeof WHAT) => order.lines.flatMap(({ line }) => {
    const count = read.wholeOrNull(`${map}.${line.id}`, draft[map][line.id] ?? '') ?? 0;
    return count === 0 ? [] : [{ line: line.id, packs: count, what: WHAT[map] }];
  });
  const lines = [...packs('goods'), ...packs('deposits'), ...packs('claims')];
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
  return row === undefined ? refusal : { ...refusal, path: [FIELD[row.what ?? 'goods'], row.line] };
}
