import { must } from '../result/assert.ts';
import { say } from '../result/words/say.ts';
import { stepKey, type StepRef, type StepValue, type Tick } from '../work/doing.ts';
import { whoMay } from '../work/hazard.ts';
import { accessStep, WHOLE } from '../work/known-steps.ts';
import type { DoingStep } from './doing-schema.ts';
import { askedOf } from './read-question.ts';
import type { CarJob } from './job-sheet-view-schema.ts';
import { said } from './plan-said.ts';

type Block = CarJob['blocks'][number];
type Bare = Pick<DoingStep, 'kind' | 'block' | 'of' | 'text'> & Partial<Pick<DoingStep, 'torques' | 'fluids' | 'figures' | 'tools' | 'measure' | 'hazards' | 'disposal'>>;

/** What is done on the cars in order: the steps of each car's sheet, then what is checked and set back on it. */
export function doingSteps(jobs: readonly CarJob[], ticks: readonly Tick[], values: readonly StepValue[]): DoingStep[] {
  const bare = jobs.flatMap((job) => [...job.blocks.flatMap(stepsOfBlock), ...afterwards(job)].map((step) => ({ job, step })));
  return bare.map(({ job, step }, at) => whole(job, step, at + 1, ticks, values));
}

function stepsOfBlock(block: Block): Bare[] {
  if (block.steps.length > 0) return block.steps.map((step) => ({ ...step, kind: 'step', block: block.title }));
  const step = block.access === null ? WHOLE : accessStep(block.kind === 'open' ? 'open' : 'close', block.access);
  const text = block.access === null ? say({ key: 'doing-whole', values: { task: block.title } }) : block.title;
  return [{ kind: 'whole', block: block.title, of: block.tasks.map((task) => ({ task, step })), text }];
}

/** What is looked at when all is done, and what is set back: each known by its words, so that a tick stays with what was ticked. */
function afterwards(job: CarJob): Bare[] {
  const open = job.tasks.filter((task) => !task.done);
  const checks = open.flatMap((task) => [...new Set(task.checks)].map((text): Bare => ({ kind: 'check', block: say({ key: 'doing-checks', values: { task: task.name } }), of: [{ task: task.key, step: `check: ${text}` }], text })));
  const resets = open.flatMap((task): Bare[] => (task.reset === null ? [] : [{ kind: 'reset', block: say({ key: 'doing-reset', values: { task: task.name } }), of: [{ task: task.key, step: `reset: ${task.reset}` }], text: task.reset }]));
  return [...checks, ...resets];
}

function whole(job: CarJob, { kind, block, of, text, ...more }: Bare, place: number, ticks: readonly Tick[], values: readonly StepValue[]): DoingStep {
  const hazards = more.hazards ?? [];
  const keys = new Set(of.map(stepKey));
  const own = values.filter((one) => keys.has(stepKey(one.at)));
  const [only, ...others] = [...new Set(of.map((ref) => ref.task))];
  return {
    place, key: `${job.car} ${stepKey(must(of[0], 'a step of a task'))}`, car: job.car, carName: job.carName, kind, block, of, text,
    tasks: job.tasks.filter((task) => of.some((ref) => ref.task === task.key)).map((task) => task.name),
    timeOf: others.length === 0 ? (only ?? null) : null,
    torques: more.torques ?? [], fluids: more.fluids ?? [], figures: more.figures ?? [], tools: more.tools ?? [], measure: more.measure ?? null, disposal: more.disposal ?? [],
    hazards,
    cautions: hazards.map(({ hazard, name }) => ({ name, by: whoMay(hazard), said: said({ key: `caution-${hazard}`, values: {} }) })),
    tick: tickOf(of, ticks),
    values: own,
    questions: own.flatMap(({ id: value, read }) => {
      const asked = askedOf(read, more.torques ?? []);
      return asked === null ? [] : [{ value, said: said(asked) }];
    }),
  };
}

/** A step is ticked where all that it is of is ticked: a task that joined later opens it again. Left out for one of them, it is not wholly done. */
function tickOf(of: readonly StepRef[], ticks: readonly Tick[]): Tick | null {
  const over = of.map((ref) => ticks.find((tick) => tick.of.some((one) => stepKey(one) === stepKey(ref))) ?? null);
  return over.every((tick) => tick !== null) ? (over.find((tick) => tick.as === 'left-out') ?? over[0] ?? null) : null;
}
