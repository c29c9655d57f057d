import glpkPackage, { type GLPK, type LP } from 'glpk.js/node';
import type { PlanInstanceAsWritten } from '../../../shared-core/sessions/plan-instance.ts';

type Written = PlanInstanceAsWritten;
type WrittenTask = Written['tasks'][number];
type Row = LP['subjectTo'][number];

const glpk: GLPK = await glpkPackage();

/**
 * The least that a plan costs by another program and another solver; null where no plan does all that must be done.
 *
 * The program counts what doing a task saves against leaving it. A car's access is opened by its tasks together: as many of them as may be
 * done on an opened one; likewise a session is opened by all its tasks, and holds its minutes only where it is opened.
 *
 * Source: GLPK (package glpk.js) as the second solver; the rules of a bare plan as the headless commands state them. It throws where GLPK
 * does not prove its answer.
 */
export function secondSolverPlan(instance: Written): number | null {
  const program = new SecondProgram();
  const cells = instance.tasks.map((task) => cellsOf(instance, task).map((cell) => ({ ...cell, name: program.binary(cell.savingMinor) })));
  instance.tasks.forEach((task, at) => program.row((cells[at] ?? []).map(({ name }) => [name, 1]), task.mustDo === true ? 1 : 0, 1));
  const held = instance.tasks.flatMap((task, at) => (cells[at] ?? []).map((cell) => ({ ...cell, task })));
  for (const place of instance.places) instance.days.forEach((_, day) => addSession(program, instance, place, day, held.filter((cell) => cell.day === day && cell.place === place.id)));
  addCarsLeft(program, instance, held);
  const leftMinor = instance.tasks.reduce((sum, task) => sum + (task.mustDo === true ? 0 : task.leftUndoneMinor), 0);
  const least = program.least();
  return least === null ? null : leftMinor + least;
}

interface Cell {
  readonly day: number;
  readonly place: string;
  readonly savingMinor: number;
}

interface HeldCell extends Cell {
  readonly name: string;
  readonly task: WrittenTask;
}

/** Where a task may be done, and what doing it there costs more than leaving it: its own minutes are paid for with it. */
function cellsOf({ days, places, cars = [] }: Written, task: WrittenTask): readonly Cell[] {
  const away = cars.flatMap(({ id, closed = [] }) => (id === task.car ? closed : []));
  return places.flatMap((place) => days.flatMap((date, day): readonly Cell[] => {
    const cost = task.costMinor[place.id]?.[day] ?? null;
    if (cost === null || away.includes(date) || (place.closed ?? []).includes(date)) return [];
    const left = task.mustDo === true ? 0 : task.leftUndoneMinor;
    return [{ day, place: place.id, savingMinor: cost + task.minutes * (place.minuteMinor ?? 0) - left }];
  }));
}

function addSession(program: SecondProgram, { days, access = [] }: Written, place: Written['places'][number], day: number, held: readonly HeldCell[]): void {
  if (held.length === 0) return;
  const most = place.minutesOn?.[String(days[day])] ?? place.minutesADay;
  const open = program.binary(place.openingMinor);
  const time: [string, number][] = held.map(({ name, task }) => [name, task.minutes]);
  for (const { name } of held) program.row([[open, 1], [name, -1]], 0, null);
  for (const group of access) {
    const using = held.filter(({ task }) => task.car === group.car && (task.access ?? []).includes(group.id));
    if (using.length === 0) continue;
    const reached = program.binary(group.minutes * (place.minuteMinor ?? 0));
    time.push([reached, group.minutes]);
    for (const { name } of using) program.row([[reached, 1], [name, -1]], 0, null);
    program.row([[reached, using.length], ...using.map(({ name }): [string, number] => [name, -1])], 0, null);
  }
  program.row([...time, [open, -most]], null, 0);
}

/**
 * A car is apart on a day where any task of it is done then. For each pair of a worked car and the rest of its list: where all the rest are apart
 * or away, it is not worked on.
 */
function addCarsLeft(program: SecondProgram, { days, cars: known = [], neverAll = [] }: Written, held: readonly HeldCell[]): void {
  for (const list of neverAll) {
    days.forEach((date, day) => {
      const cars = [...new Set(list)];
      const apart = cars.map((car) => {
        const name = program.binary(0);
        for (const cell of held) if (cell.day === day && cell.task.car === car) program.row([[name, 1], [cell.name, -1]], 0, null);
        return name;
      });
      const away = cars.map((car) => known.some((one) => one.id === car && (one.away ?? []).includes(date)));
      apart.forEach((worked, at) => {
        const others = cars.flatMap((_car, other) => (other === at || away[other] === true ? [] : [apart[other] ?? '']));
        program.row([[worked, 1], ...others.map((name): [string, number] => [name, 1])], null, others.length);
      });
    });
  }
}

/** A program in GLPK's form. */
class SecondProgram {
  private readonly costs: { name: string; coef: number }[] = [];
  private readonly rows: Row[] = [];

  binary(cost: number): string {
    const name = `x${this.costs.length}`;
    this.costs.push({ name, coef: cost });
    return name;
  }

  row(terms: readonly (readonly [string, number])[], lower: number | null, upper: number | null): void {
    const type = lower === null ? glpk.GLP_UP : upper === null ? glpk.GLP_LO : lower === upper ? glpk.GLP_FX : glpk.GLP_DB;
    // A row without variables is said with one that is held at nothing.
    const vars = terms.length === 0 ? [{ name: this.nothing(), coef: 1 }] : terms.map(([name, coef]) => ({ name, coef }));
    this.rows.push({ name: `r${this.rows.length}`, vars, bnds: { type, lb: lower ?? 0, ub: upper ?? 0 } });
  }

  private nothing(): string {
    const name = this.binary(0);
    this.rows.push({ name: `r${this.rows.length}`, vars: [{ name, coef: 1 }], bnds: { type: glpk.GLP_FX, lb: 0, ub: 0 } });
    return name;
  }

  /** The least cost; null where nothing is allowed. */
  least(): number | null {
    const binaries = this.costs.map(({ name }) => name);
    if (binaries.length === 0) return 0;
    const lp: LP = { name: 'plan', objective: { direction: glpk.GLP_MIN, name: 'cost', vars: this.costs }, subjectTo: this.rows, binaries };
    const { status, z } = glpk.solve(lp, { msglev: glpk.GLP_MSG_OFF, presol: true, mipgap: 0 }).result;
    if (status === glpk.GLP_OPT) return Math.round(z);
    if (status === glpk.GLP_NOFEAS || status === glpk.GLP_UNDEF) return null;
    throw new Error(`GLPK ended with status ${status}`);
  }
}
