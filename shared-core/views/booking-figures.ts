import { serviceItems } from '../care/service-item.ts';
import { cardFigures } from '../fleet/card-figure.ts';
import type { Car } from '../fleet/car.ts';
import { sameName } from '../fleet/find-car.ts';
import { figuresFor, knownFigure } from '../fleet/known-figures.ts';
import type { Facts } from '../journal/facts.ts';
import type { Session } from '../sessions/session.ts';
import { figuresOf } from '../work/figure-refs.ts';
import type { FigureRef } from '../work/sheet-step.ts';
import { taskSheets } from '../work/task-sheet.ts';
import type { RequestCar } from './booking-view-schema.ts';
import { jobFigure } from './job-figure-view.ts';

/** What a garage knows better than a keeper: torques and how its own lift takes the car. */
const NOT_ASKED = new Set(['torques', 'raising']);

/** Figures of the data card that the work on a car asks for: those known for its items, and those its sheets name; torques left out. */
export function requestFigures(facts: Facts, car: Car, session: Session): RequestCar['figures'] {
  const items = session.tasks.flatMap((task) => (task.kind === 'item' ? (facts.get(serviceItems, task.id) ?? []) : [])).filter((item) => item.car === car.id);
  const known = figuresFor(car).filter((figure) => figure.items.some((name) => items.some((item) => sameName(item.name, name))));
  const named = items.flatMap((item) => facts.get(taskSheets, item.id)?.steps ?? []).flatMap((step) => figuresOf(step).filter((one) => one.kind !== 'torque').map((one) => one.ref));
  const refs = new Map<string, FigureRef>([...known.map((figure): FigureRef => ({ figure: figure.key, name: null })), ...named].map((ref) => [ref.figure, ref]));
  const card = { carName: car.name, figures: facts.ofCar(cardFigures, car.id) };
  return [...refs.values()].filter((ref) => !NOT_ASKED.has(knownFigure(ref.figure)?.group ?? '')).map((ref) => jobFigure(card, ref, null)).filter((one) => one.kind !== 'torque');
}
