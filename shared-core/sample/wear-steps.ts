import { addDays, type LocalDate } from '../calendar/local-date.ts';
import { readTyreDateCode } from '../fleet/tyre-date-code.ts';
import type { WheelPlace } from '../fleet/wheel.ts';
import type { SampleCar } from './sample-car.ts';
import { call, type SampleRequest, type SampleStep } from './sample-step.ts';
import type { SampleWear, SampleWheel } from './sample-wear.ts';

/** The wheels of a sample car, their moves, what was measured on it, and the limits its keeper set. */
export function wearSteps({ car, wear }: SampleCar): readonly SampleStep[] {
  return [
    ...wear.wheels.map((wheel) => wheelStep(car.id, wheel)),
    ...moveSteps(car.id, wear),
    ...wear.limits.map(({ on, ...limit }) => call(on, 'wear-limit.set', { car: car.id, ...(limit as SampleRequest) })),
    ...wear.measured.flatMap(({ values, ...about }) =>
      values.map(([on, value, fresh]) => call(on, 'measurement.add', { car: car.id, ...(about as SampleRequest), date: on, value, fresh: fresh === 'fresh' }))),
  ];
}

function wheelStep(car: string, { on, made, ...wheel }: SampleWheel): SampleStep {
  return call(on, 'wheel.add', { ...(made === undefined ? {} : { dateCode: codeOf(made) }), ...(wheel as SampleRequest), car, on });
}

/** A year's turns fall in another order on another day of the year, so a wheel that is in its place already is not moved. */
function moveSteps(car: string, { wheels, moves }: SampleWear): readonly SampleStep[] {
  const inOrder = [...moves].sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
  return inOrder.flatMap(({ on, places }) => {
    const moved = Object.entries(places).filter(([wheel, place]) => placeBefore(wheel, on) !== place);
    return moved.length === 0 ? [] : [call(on, 'wheel.move', { car, on, moves: moved.map(([wheel, place]) => ({ wheel, place })) })];
  });

  function placeBefore(wheel: string, on: LocalDate): WheelPlace | undefined {
    const moved = inOrder.findLast((one) => one.on < on && one.places[wheel] !== undefined);
    return moved?.places[wheel] ?? wheels.find((one) => one.id === wheel)?.place;
  }
}

const WEEKS = Array.from({ length: 53 }, (_, at) => String(at + 1).padStart(2, '0'));

/** The four digits of a tyre made on a day; in the days before a year's first week the last of the year before. */
function codeOf(made: LocalDate): string {
  const years = [made, addDays(made, -7)].map((day) => day.slice(2, 4));
  const codes = years.flatMap((year) => WEEKS.map((week) => week + year));
  const found = codes.find((code) => {
    const read = readTyreDateCode(code, made);
    return read.ok && read.value.state === 'week' && read.value.week.from <= made && made <= read.value.week.to;
  });
  if (found === undefined) throw new Error(`Bug: no week of a tyre holds ${made}`);
  return found;
}
