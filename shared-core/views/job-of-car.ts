import type { z } from 'zod';
import { cardFigures } from '../fleet/card-figure.ts';
import type { Car } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import { say } from '../result/words/say.ts';
import type { TaskRef } from '../sessions/task-ref.ts';
import type { MeasuredUnit } from '../units/measured-value.ts';
import { composeBlocks, inNameOrder } from '../work/compose-blocks.ts';
import type { Hazard } from '../work/hazard.ts';
import type { JobBlock, JobStep } from '../work/job-block.ts';
import { hazardsOf } from '../work/job-hazards.ts';
import type { SheetStep } from '../work/sheet-step.ts';
import { sheetFor } from '../work/starting-sheet.ts';
import type { FollowUpRule, TaskSheet } from '../work/task-sheet.ts';
import { jobFigure, jobFluid, jobTorque, type JobCard } from './job-figure-view.ts';
import { gatherFigures } from './job-gather.ts';
import type { CarJob, jobBlockSchema, jobStepSchema, jobTaskSchema } from './job-sheet-view-schema.ts';
import { unitToRead } from './measure-unit.ts';
import { said, type Said } from './plan-said.ts';

/** A task of a car as its job is composed of it. */
export interface CarTask {
  readonly ref: TaskRef;
  readonly key: string;
  readonly name: string;
  readonly done: boolean;
  readonly minutes: number | null;
  readonly access: readonly string[];
  readonly sheet: TaskSheet | null;
}

/** What of a car its steps are shown with: its data card, and the unit in which something is read on it. */
interface OfCar {
  readonly card: JobCard;
  readonly unitOf: (measure: NonNullable<SheetStep['measure']>) => MeasuredUnit | null;
}

/** The work on one car in order, each figure from its data card. */
export function jobOfCar(facts: Facts, car: Car, tasks: readonly CarTask[]): CarJob {
  const card: JobCard = { carName: car.name, figures: facts.ofCar(cardFigures, car.id) };
  const open = tasks.filter((task) => !task.done);
  const composed = composeBlocks(open.map(({ key, name, access, sheet }) => ({ key, name, access, steps: sheet?.steps ?? [] })));
  const blocks = numbered(composed, (block) => ({ title: titleOf(open, block), gap: gapOfBlock(car, open, block) }), { card, unitOf: (measure) => unitToRead(facts, car.id, measure) });
  const place = new Map([...new Set(composed.flatMap((block) => (block.access === null ? block.tasks : [])))].map((key, at) => [key, at]));
  const inOrderOfWork = [...inNameOrder(tasks)].sort((a, b) => (place.get(a.key) ?? -1) - (place.get(b.key) ?? -1));
  return {
    car: car.id, carName: car.name, description: car.description, registration: car.registration,
    tasks: inOrderOfWork.map((task) => taskView(car, task)),
    blocks,
    ...gatherFigures(composed, card),
  };
}

function taskView(car: Car, task: CarTask): z.infer<typeof jobTaskSchema> {
  const { sheet, name } = task;
  const starting = task.ref.kind === 'item' ? (sheetFor(name, car)?.key ?? null) : null;
  return {
    task: task.ref, key: task.key, name, done: task.done, minutes: task.minutes, access: [...task.access],
    hasSheet: sheet !== null,
    startingSheet: starting,
    gap: gapOfTask(car, task),
    hazards: named(task.ref.kind === 'item' ? hazardsOf(car, name, sheet) : []),
    checks: [...(sheet?.checks ?? [])],
    reset: sheet?.reset ?? null,
    followUps: (sheet?.followUps ?? []).map((one) => ({ ...one, when: whenOf(one) })),
    note: sheet?.note ?? '',
  };
}

/** Where the steps of a task can be written; an obligation has none. */
function gapOfTask(car: Car, { ref, sheet, name }: CarTask): Said | null {
  if (sheet !== null || ref.kind === 'obligation') return null;
  const starting = sheetFor(name, car);
  return starting === null ? said({ key: 'sheet-none', values: { task: name } }) : said({ key: 'sheet-none-but-starting', values: { task: name, starting: starting.name } });
}

/** When something is to be looked at again, in words. */
function whenOf({ days, distance }: FollowUpRule): Said {
  const values = { days, distance: distance?.value ?? null, unit: distance?.unit ?? null };
  if (days === null) return said({ key: 'follow-up-distance', values });
  const key = days === 1 ? 'follow-up-day' : 'follow-up-days';
  return said({ key: distance === null ? key : `${key}-or-distance`, values });
}

function titleOf(tasks: readonly CarTask[], { kind, access, tasks: of }: JobBlock): string {
  const task = tasks.find((one) => one.key === of[0])?.name ?? '';
  return say({ key: `sheet-block-${kind}`, values: { access, task } });
}

function gapOfBlock(car: Car, tasks: readonly CarTask[], { kind, access, steps, tasks: of }: JobBlock): Said | null {
  if (steps.length > 0) return null;
  if (access !== null) return said({ key: `sheet-access-${kind === 'open' ? 'open' : 'close'}-unwritten`, values: { access } });
  const task = tasks.find((one) => one.key === of[0]);
  return task === undefined ? null : (gapOfTask(car, task) ?? said({ key: 'sheet-obligation', values: { task: task.name } }));
}

/** Blocks with their steps numbered through. */
function numbered(blocks: readonly JobBlock[], more: (block: JobBlock) => { readonly title: string; readonly gap: Said | null }, ofCar: OfCar): z.infer<typeof jobBlockSchema>[] {
  let number = 0;
  return blocks.map((block) => ({ kind: block.kind, access: block.access, tasks: [...block.tasks], ...more(block), steps: block.steps.map((step) => stepView(ofCar, step, (number += 1))) }));
}

function stepView({ card, unitOf }: OfCar, { of, step }: JobStep, number: number): z.infer<typeof jobStepSchema> {
  const { measure } = step;
  return {
    number,
    of: [...of],
    text: step.text,
    torques: step.torques.map((one) => jobTorque(card, one)),
    fluids: step.fluids.map((one) => jobFluid(card, one)),
    figures: step.figures.map((one) => jobFigure(card, one, null)),
    tools: [...step.tools],
    measure: measure === null ? null : { ...measure, text: measure.name ?? say({ key: `sheet-measure-${measure.kind}`, values: {} }), unit: unitOf(measure) },
    hazards: named(step.hazards),
    disposal: [...step.disposal],
  };
}

function named(hazards: readonly Hazard[]): { hazard: Hazard; name: string }[] {
  return hazards.map((hazard) => ({ hazard, name: say({ key: `hazard-${hazard}`, values: {} }) }));
}
