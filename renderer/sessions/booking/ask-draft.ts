import type { Result } from '../../../shared-core/result/result.ts';
import type { BookingView, RequestCar } from '../../../shared-core/views/booking-view-schema.ts';
import { change, type Changed } from '../../ui/change.ts';
import { FieldsRead } from '../../ui/form/read-fields.ts';

type Wanted = RequestCar['wanted'][number];
type Brought = RequestCar['bring'][number];

/** A line as it is typed, with what it keeps of the line it was. */
export interface TypedWanted {
  readonly id: string | null;
  readonly car: string;
  readonly task: Wanted['task'];
  readonly text: string;
}
export interface TypedUnwanted {
  readonly id: string | null;
  readonly car: string;
  readonly text: string;
}
export interface TypedBrought extends Pick<Brought, 'car' | 'part' | 'lot' | 'unit' | 'text'> {
  readonly quantity: string;
}

export interface AskDraft {
  readonly askedOn: string;
  readonly wanted: readonly TypedWanted[];
  readonly unwanted: readonly TypedUnwanted[];
  readonly bring: readonly TypedBrought[];
  readonly digitalRecord: boolean;
  readonly note: string;
  readonly contact: string;
}

/** The request as it opens: what stands, else what is proposed; asked anew after it came back, what was not done. */
export function askStart({ cars, booking }: BookingView, rest = false): AskDraft {
  const isDone = (id: string | null) => rest && booking?.cameBack?.lines.some((one) => one.wanted === id && one.as === 'done') === true;
  return {
    askedOn: booking?.dropped == null && !rest ? (booking?.askedOn ?? '') : '',
    wanted: cars.flatMap((car) => car.wanted.filter((one) => !isDone(one.id))),
    unwanted: cars.flatMap((car) => car.unwanted),
    bring: cars.flatMap((car) => car.bring.map((one) => ({ ...one, quantity: one.quantity === null ? '' : String(one.quantity) }))),
    digitalRecord: booking?.digitalRecord ?? true,
    note: booking?.note ?? '',
    contact: booking?.contact ?? '',
  };
}

/** Sends the request; lines that were left empty are not meant. */
export async function sendAsked(draft: AskDraft, session: string, rest: boolean): Promise<Result<Changed<'booking.ask'>>> {
  const read = new FieldsRead();
  const kept = <Line extends { readonly id: string | null; readonly text: string }>(lines: readonly Line[]) => lines.filter((one) => one.text.trim() !== '').map(({ id, ...line }) => ({ ...line, ...(id === null ? {} : { id }) }));
  const bring = draft.bring.filter((one) => one.text.trim() !== '').map((one, at) => ({ ...one, quantity: read.numberOrNull(`bring.${at}.quantity`, one.quantity) }));
  const whole = read.whole({ session, askedOn: read.dateOrNull('askedOn', draft.askedOn), wanted: kept(draft.wanted), unwanted: kept(draft.unwanted), bring, digitalRecord: draft.digitalRecord, note: draft.note, contact: draft.contact, ...(rest ? { anew: true } : {}) });
  return whole.ok ? change('booking.ask', whole.value) : whole;
}
