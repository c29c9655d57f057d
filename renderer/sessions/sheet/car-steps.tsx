import { tell } from '../../ui/words/tell.ts';
import { BeginSheet } from './begin-sheet.tsx';
import { carHeading } from './car-links.tsx';
import type { CarPart } from './of-car.ts';
import type { SheetUnit } from './sheet-choices.ts';
import { Box, Part } from './sheet-part.tsx';
import styles from './sheet.module.css';
import type { JobBlock, Task } from './sheet-types.ts';
import { StepLine } from './step-line.tsx';

interface CarStepsProps {
  readonly part: CarPart;
  readonly unit: SheetUnit;
}

/** The steps of all tasks of a car in order of work. */
export function CarSteps({ part, unit }: CarStepsProps) {
  return (
    <Part title={tell('job.steps')}>
      {part.job.blocks.map((block, at) => <Block key={`${block.kind} ${block.title} ${at}`} block={block} part={part} unit={unit} />)}
    </Part>
  );
}

function Block({ block, part, unit }: CarStepsProps & { readonly block: JobBlock }) {
  const without = block.access === null ? part.openTasks.find((task) => block.tasks.includes(task.key) && !task.hasSheet) : undefined;
  return (
    <div className={styles.block}>
      <h4>{block.title}</h4>
      {block.steps.length > 0 && <ol className={styles.steps}>{block.steps.map((step) => <StepLine key={step.number} step={step} unit={unit} />)}</ol>}
      {block.gap !== null && <Gap text={block.gap.text} task={without?.task.kind === 'item' ? without : null} car={part.job.car} />}
    </div>
  );
}

interface GapProps {
  readonly text: string;
  /** The task that has no steps; null where only an access has none. */
  readonly task: Task | null;
  readonly car: string;
}

/** Where nobody has written how: what to do about it on the screen; on paper that it is so, and a box all the same. */
function Gap({ text, task, car }: GapProps) {
  // What was pressed is gone once a sheet was begun: the car's heading takes the focus.
  const onBegun = () => document.getElementById(carHeading(car))?.focus();
  return (
    <>
      <div className={styles.ticked}><Box /><div><p className={task === null ? undefined : styles.screenOnly}>{text}</p>{task !== null && <p className={styles.paperOnly}>{tell('job.no-steps')}</p>}</div></div>
      {task !== null && <BeginSheet task={task} onBegun={onBegun} />}
    </>
  );
}
