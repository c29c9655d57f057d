import { say, sayDate } from '../result/words/say.ts';
import type { Booking } from '../work/booking.ts';
import { amountSaid } from './amount-said.ts';
import type { RequestCar } from './booking-view-schema.ts';

/** What a request is written from beside the car's own lines. */
export interface RequestHead {
  readonly placeName: string;
  readonly day: string;
  readonly booking: Booking | null;
  readonly digitalRecord: boolean;
}

/** The subject of a mail that asks for the work on one car. */
export function requestSubject({ day }: RequestHead, car: Pick<RequestCar, 'carName' | 'description' | 'registration'>): string {
  return say({ key: 'request-subject', values: { day, car: car.registration ?? car.description ?? car.carName } });
}

/** The request for one car as plain text, as it goes into a mail or is read out at a counter. */
export function requestText(head: RequestHead, car: Omit<RequestCar, 'subject' | 'text'>): string {
  const { booking } = head;
  const list = (key: string, lines: readonly string[]) => (lines.length === 0 ? [] : ['', `${say({ key, values: {} })}:`, ...lines.map((one) => `- ${one}`)]);
  const note = booking?.note ?? '';
  const contact = booking?.contact ?? '';
  return [
    say({ key: 'request-title', values: { place: head.placeName } }),
    ...aboutLines(head, car),
    ...list('request-wanted', car.wanted.map((one) => one.text)),
    ...list('request-unwanted', car.unwanted.map((one) => one.text)),
    ...list('request-bring', car.bring.map((one) => broughtText(one))),
    ...list('request-figures', car.figures.filter((one) => one.entered).map(figureLine)),
    '',
    ...(head.digitalRecord ? [say({ key: 'request-record', values: {} })] : []),
    say({ key: booking?.booked?.quote == null ? 'request-quote' : 'request-ask-first', values: {} }),
    ...(note === '' ? [] : ['', `${say({ key: 'request-note', values: {} })}: ${note}`]),
    ...(contact === '' ? [] : ['', `${say({ key: 'request-contact', values: {} })}: ${contact}`]),
  ].join('\n');
}

/** The day, the car, its plate and its odometer, a line each. */
export function aboutLines({ day, booking }: RequestHead, { carName, description, registration, odometer }: Pick<RequestCar, 'carName' | 'description' | 'registration' | 'odometer'>): string[] {
  const booked = booking?.booked ?? null;
  return [
    booked === null ? say({ key: 'request-day-wanted', values: { day } }) : say(booked.time === null ? { key: 'request-day-booked', values: { day: booked.day } } : { key: 'request-hour-booked', values: { day: booked.day, time: booked.time } }),
    ...(booked === null || booked.reference === '' ? [] : [say({ key: 'request-reference', values: { reference: booked.reference } })]),
    say({ key: 'request-car', values: { car: description === null ? carName : `${carName}, ${description}` } }),
    ...(registration === null ? [] : [say({ key: 'request-registration', values: { registration } })]),
    ...(odometer === null ? [] : [say({ key: 'request-odometer', values: { value: odometer.value, unit: odometer.unit, date: sayDate(odometer.on) } })]),
  ];
}

/** @example broughtText({ text: 'Moss motor oil', quantity: 4.1, unit: 'litre' }) //=> 'Moss motor oil, 4.1 litres' */
export function broughtText({ text, quantity, unit }: Pick<RequestCar['bring'][number], 'text' | 'quantity' | 'unit'>): string {
  return quantity === null ? text : `${text}, ${amountSaid(quantity, unit)}`;
}

function figureLine({ name, text, source }: RequestCar['figures'][number]): string {
  return source === null ? say({ key: 'request-figure-unsourced', values: { name, text } }) : say({ key: 'request-figure', values: { name, text, source } });
}
