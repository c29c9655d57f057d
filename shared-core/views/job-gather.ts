import type { JobBlock, JobStep } from '../work/job-block.ts';
import { jobFigure, jobFluid, jobTorque, type JobCard } from './job-figure-view.ts';
import type { CarJob } from './job-sheet-view-schema.ts';

/** All torques, fluids and other figures that the steps of a car name, once each in order of work, and what of them the card lacks. */
export function gatherFigures(blocks: readonly JobBlock[], card: JobCard): Pick<CarJob, 'torques' | 'fluids' | 'figures' | 'lacks'> {
  const steps = blocks.flatMap((block) => block.steps);
  const torques = gather(steps, (step) => step.torques.map((one) => jobTorque(card, one)));
  const fluids = gather(steps, (step) => step.fluids.map((one) => jobFluid(card, one)));
  const figures = gather(steps, (step) => step.figures.map((one) => jobFigure(card, one, null)));
  return { torques, fluids, figures, lacks: lacksOf(torques, fluids, figures) };
}

function gather<Shown extends object>(steps: readonly JobStep[], shown: (step: JobStep['step']) => readonly Shown[]): (Shown & { tasks: string[] })[] {
  const found = new Map<string, Shown & { tasks: string[] }>();
  for (const { step, of } of steps) {
    for (const one of shown(step)) {
      const key = JSON.stringify(one);
      const there = found.get(key) ?? { ...one, tasks: [] };
      there.tasks = [...new Set([...there.tasks, ...of.map((ref) => ref.task)])].sort();
      found.set(key, there);
    }
  }
  return [...found.values()];
}

/** Each figure that is not entered, once, with all tasks that miss it. */
function lacksOf(torques: CarJob['torques'], fluids: CarJob['fluids'], figures: CarJob['figures']): CarJob['lacks'] {
  const asked = [
    ...torques.flatMap(({ figure, name, lack, tasks }) => (figure === null ? [] : [{ figure, name, kind: 'torque' as const, lack, tasks }])),
    ...fluids.flatMap(({ specification, quantity, tasks }) => [specification, quantity].flatMap((one) => (one === null ? [] : [{ ...one, tasks }]))),
    ...figures,
  ];
  const lacks = new Map<string, CarJob['lacks'][number]>();
  for (const { figure, name, kind, lack, tasks } of asked) {
    if (lack === null) continue;
    const there = lacks.get(figure)?.tasks ?? [];
    lacks.set(figure, { figure, name, kind, said: lack, tasks: [...new Set([...there, ...tasks])].sort() });
  }
  return [...lacks.values()];
}
