import { z } from 'zod';
import { addMonths } from '../calendar/add-months.ts';
import type { Facts } from '../journal/facts.ts';
import { findCar } from '../fleet/find-car.ts';
import { change } from '../journal/operation.ts';
import { parseRequest } from '../result/parse-request.ts';
import { refusedBy } from '../result/refused-by.ts';
import { refuse } from '../result/result.ts';
import { obligations, obligationSchema } from './obligation.ts';
import { addObligation } from './set-obligation.ts';

const shape = obligationSchema.shape;
const MONTHS_A_YEAR = 12;

/**
 * Adds a young car's first roadworthiness test: some whole years after first registration, three or four in most places, as
 * the keeper's own law has it. Everything about it can be changed afterwards.
 *
 * Source: by the third anniversary in Great Britain, four years in Northern Ireland and, by the Union's directive of 2014, as
 * the least elsewhere in Europe (reference sections 1c and 1d, seen).
 */
export const addFirstTest = change({
  request: z.strictObject({
    id: shape.id.optional(),
    car: z.string().min(1).max(80),
    years: z.int(refusedBy('not-years')).min(1, refusedBy('not-years')).max(10, refusedBy('not-years')),
    /** How long each later certificate lasts. */
    months: z.int().min(1).max(120).default(12),
    keepsDate: z.boolean().default(true),
    noticeDays: shape.noticeDays.default(30),
    price: shape.price.default(null),
  }),
  reply: z.object({ obligation: obligationSchema }),
  decide: (facts, { years, ...request }, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    if (car.value.firstRegistered === null) return refuse('test-needs-registration', { car: car.value.name }, ['car']);
    if (hasTest(facts, car.value.id)) return refuse('test-there', { car: car.value.name }, ['car']);
    const lastValidDay = addMonths(car.value.firstRegistered, years * MONTHS_A_YEAR);
    if (lastValidDay < moment.today) return refuse('first-test-past', { date: lastValidDay }, ['years']);
    const asked = parseRequest(addObligation.request, { ...request, kind: 'roadworthiness-test', lastValidDay });
    return asked.ok ? addObligation.decide(facts, asked.value, moment) : asked;
  },
});

function hasTest(facts: Facts, car: string): boolean {
  return facts.ofCar(obligations, car).some((one) => one.kind === 'roadworthiness-test');
}
