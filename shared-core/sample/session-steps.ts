import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import type { Json } from '../journal/canonical-json.ts';
import { resolveDates } from './resolve-dates.ts';
import { call, type SampleRequest, type SampleStep } from './sample-step.ts';
import sessions from './sessions.json' with { type: 'json' };

const requests = z.array(z.record(z.string(), z.json()));

const sampleSessionsSchema = z.strictObject({
  statedOn: dateSchema,
  places: requests,
  settings: z.record(z.string(), z.json()),
  placeDays: requests,
  carDays: requests,
  access: requests,
  pairs: requests,
  /** Sessions that were kept on a day. */
  kept: z.array(z.strictObject({ id: z.string().optional(), on: dateSchema, day: dateSchema, place: z.string(), note: z.string(), tasks: z.array(z.json()) })),
  /** What was asked of garages for them, what they said, and what came back. */
  bookings: z.array(z.strictObject({
    on: dateSchema,
    operation: z.enum(['booking.ask', 'booking.quote', 'booking.book', 'booking.came-back', 'session.end']),
    request: z.record(z.string(), z.json()),
  })),
});

/** Where the sample's cars are worked on, which days are not to be had, what shares an access, the sessions that are kept, and what was asked of garages for them. */
export function sessionSteps(today: LocalDate): readonly SampleStep[] {
  const { statedOn, places, settings, placeDays, carDays, access, pairs, kept, bookings } = sampleSessionsSchema.parse(resolveDates(sessions as Json, today));
  const stated = (operation: 'place.set' | 'place-days.set' | 'car-days.set' | 'access.set' | 'worth-while.set', list: readonly object[]) => list.map((request) => call(statedOn, operation, request as SampleRequest));
  return [
    ...stated('access.set', access),
    ...stated('place.set', places),
    ...stated('place-days.set', placeDays),
    ...stated('car-days.set', carDays),
    ...stated('worth-while.set', pairs),
    call(statedOn, 'plan-settings.set', settings as SampleRequest),
    ...kept.map(({ on, ...session }) => call(on, 'session.keep', { sessions: [session as unknown as Json] })),
    ...bookings.map(({ on, operation, request }) => call(on, operation, request)),
  ];
}
