import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Refusal, Result } from '../../../shared-core/result/result.ts';
import type { PlacedOrderView } from '../../../shared-core/views/parts-view-schema.ts';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';

/** What came of one line, as it is typed: packs that are good, wrong or damaged, and such as will not come. The rest is still to come. */
export interface ReceivedDraft {
  readonly line: string;
  readonly good: string;
  readonly aside: string;
  readonly asideAs: string;
  readonly again: boolean;
  readonly notComing: string;
  readonly expires: string;
  readonly where: string;
  readonly keepsOpenedDays: string;
}

export interface ReceiveDraft {
  readonly on: string;
  readonly lines: readonly ReceivedDraft[];
  readonly files: readonly File[];
  readonly note: string;
}

type Row = NonNullable<RequestOf<'order.receive'>['lines']>[number];
/** Where the rows of the request come from, so that a refusal of a row is shown at its own field. */
interface FromField {
  readonly row: Row;
  readonly field: string;
}

/** Everything that is still to come, as good. */
export function receiveStart(order: PlacedOrderView, today: string): ReceiveDraft {
  const lines = order.lines.filter((one) => one.open > 0).map(({ line, open }): ReceivedDraft => ({ line: line.id, good: String(open), aside: '', asideAs: 'wrong', again: false, notComing: '', expires: '', where: '', keepsOpenedDays: '' }));
  return { on: today, lines, files: [], note: '' };
}

/** The rows of what was typed, each with the field that it comes from; a line of which nothing is said has none. */
export function readReceived(draft: ReceiveDraft): Result<{ readonly on: NonNullable<RequestOf<'order.receive'>['on']>; readonly rows: readonly FromField[] }> {
  const read = new FieldsRead();
  const rows = draft.lines.flatMap((line, at) => rowsOf(line, at, read));
  const on = read.date('on', draft.on);
  if (rows.length === 0) read.refuse('lines', 'nothing-came');
  return read.whole({ on: on as NonNullable<typeof on>, rows });
}

function rowsOf(line: ReceivedDraft, at: number, read: FieldsRead): readonly FromField[] {
  const packs = (field: 'good' | 'aside' | 'notComing') => read.wholeOrNull(`lines.${at}.${field}`, line[field]) ?? 0;
  const [good, aside, notComing] = [packs('good'), packs('aside'), packs('notComing')];
  const kept = { expires: read.dateOrNull(`lines.${at}.expires`, line.expires), where: textOrNull(line.where), keepsOpenedDays: read.wholeOrNull(`lines.${at}.keepsOpenedDays`, line.keepsOpenedDays) };
  return [
    ...(good === 0 ? [] : [{ field: `lines.${at}.good`, row: { line: line.line, packs: good, found: 'good' as const, ...kept } }]),
    ...(aside === 0 ? [] : [{ field: `lines.${at}.aside`, row: { line: line.line, packs: aside, found: line.asideAs as 'wrong', again: line.again } }]),
    ...(notComing === 0 ? [] : [{ field: `lines.${at}.notComing`, row: { line: line.line, packs: notComing, found: 'not-coming' as const } }]),
  ];
}

/** A refusal of a row, at the field that the row comes from. */
export function atReceivedField(refusal: Refusal, rows: readonly FromField[]): Refusal {
  const [list, at, name] = refusal.path ?? [];
  const from = list === 'lines' ? rows[Number(at)] : undefined;
  if (from === undefined) return refusal;
  const field = name === 'expires' || name === 'where' || name === 'keepsOpenedDays' ? `${from.field.slice(0, from.field.lastIndexOf('.'))}.${name}` : from.field;
  return { ...refusal, path: field.split('.') };
}
