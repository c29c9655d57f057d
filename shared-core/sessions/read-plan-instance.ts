import { parseRequest } from '../result/parse-request.ts';
import { refuse, type Refusal, type Result } from '../result/result.ts';
import { planInstanceSchema, type PlanInstance, type PlanTask } from './plan-instance.ts';

type Path = readonly (string | number)[];

/**
 * A plan instance from parsed JSON, with its defaults filled in. Refuses the first fault, with its path: a wrong shape (`not-understood`,
 * `unknown-field`, `not-a-date`, `not-an-amount`, `not-minutes`), an id or a day given twice (`id-twice`, `day-twice`, `access-twice`,
 * `row-twice`), costs at a place that is not given (`cost-at-no-place`) or not one for each day (`costs-unlike-days`), an access that the car
 * does not have (`access-not-given`). Days that only a closing names are no fault.
 *
 * @example readPlanInstance({ days: [], places: [], tasks: [] }) //=> ok
 */
export function readPlanInstance(value: unknown): Result<PlanInstance> {
  const read = parseRequest(planInstanceSchema, value);
  if (!read.ok) return read;
  const fault = twice(read.value) ?? accessTwice(read.value) ?? taskFault(read.value);
  return fault === null ? read : { ok: false, refusal: fault };
}

function fault(code: string, values: Refusal['values'], path: Path): Refusal {
  return refuse(code, values, path).refusal;
}

function repeated(keys: readonly string[]): number | null {
  const at = keys.findIndex((key, i) => keys.indexOf(key) !== i);
  return at === -1 ? null : at;
}

function twice(instance: PlanInstance): Refusal | null {
  const day = repeated(instance.days);
  if (day !== null) return fault('day-twice', { date: instance.days[day] ?? '' }, ['days', day]);
  for (const list of ['places', 'tasks', 'cars'] as const) {
    const at = repeated(instance[list].map(({ id }) => id));
    if (at !== null) return fault('id-twice', { list, id: instance[list][at]?.id ?? '' }, [list, at, 'id']);
  }
  return null;
}

function accessTwice({ access }: PlanInstance): Refusal | null {
  const at = repeated(access.map(accessKey));
  return at === null ? null : fault('access-twice', { car: access[at]?.car ?? '', id: access[at]?.id ?? '' }, ['access', at, 'id']);
}

function accessKey({ car, id }: { readonly car: string; readonly id: string }): string {
  return JSON.stringify([car, id]);
}

function taskFault({ days, places, tasks, access }: PlanInstance): Refusal | null {
  const placesGiven = new Set(places.map(({ id }) => id));
  const accessGiven = new Set(access.map(accessKey));
  for (const [at, task] of tasks.entries()) {
    const found = costFault(task, placesGiven, days.length) ?? accessFault(task, accessGiven);
    if (found !== null) return { ...found, path: ['tasks', at, ...(found.path ?? [])] };
  }
  return null;
}

function costFault({ id, costMinor }: PlanTask, placesGiven: ReadonlySet<string>, days: number): Refusal | null {
  for (const [place, costs] of Object.entries(costMinor)) {
    if (!placesGiven.has(place)) return fault('cost-at-no-place', { task: id, place }, ['costMinor', place]);
    if (costs.length !== days) return fault('costs-unlike-days', { task: id, place, given: costs.length, days }, ['costMinor', place]);
  }
  return null;
}

function accessFault({ id, car, access }: PlanTask, accessGiven: ReadonlySet<string>): Refusal | null {
  const unknown = access.findIndex((name) => !accessGiven.has(accessKey({ car, id: name })));
  if (unknown !== -1) return fault('access-not-given', { task: id, car, access: access[unknown] ?? '' }, ['access', unknown]);
  const again = repeated(access);
  return again === null ? null : fault('row-twice', { list: 'access' }, ['access', again]);
}
