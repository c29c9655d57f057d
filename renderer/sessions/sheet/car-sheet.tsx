import { Link } from 'wouter';
import { minutesWords } from '../../ui/due-words.ts';
import { tell } from '../../ui/words/tell.ts';
import { CarAfter } from './car-after.tsx';
import { CarCautions } from './car-cautions.tsx';
import { CarInHand } from './car-in-hand.tsx';
import { carHeading } from './car-links.tsx';
import { CarSteps } from './car-steps.tsx';
import type { CarPart } from './of-car.ts';
import type { SheetUnit } from './sheet-choices.ts';
import styles from './sheet.module.css';
import type { Task } from './sheet-types.ts';

interface CarSheetProps {
  readonly part: CarPart;
  /** Its place among the cars, which names its pages. */
  readonly at: number;
  readonly unit: SheetUnit;
}

/** The sheet of one car: cautions, what to have in hand, the steps, what comes afterwards. */
export function CarSheet({ part, at, unit }: CarSheetProps) {
  const { job, openTasks } = part;
  const id = carHeading(job.car);
  const facts = [job.description, job.registration].filter((one) => one !== null).join(' · ');
  return (
    <section className={styles.car} aria-labelledby={id} data-job-car={at}>
      <div className={styles.carHead}>
        <h2 id={id} tabIndex={-1}>{job.carName}</h2>
        {facts !== '' && <p>{facts}</p>}
      </div>
      <ul className={styles.tasks} aria-label={tell('job.tasks')}>{job.tasks.map((task) => <TaskLine key={task.key} car={job.car} task={task} />)}</ul>
      {openTasks.length === 0 ? <p>{tell('job.all-done')}</p> : (
        <>
          <CarCautions part={part} />
          <CarInHand part={part} unit={unit} />
          <CarSteps part={part} unit={unit} />
          <CarAfter part={part} />
        </>
      )}
    </section>
  );
}

function TaskLine({ car, task }: { readonly car: string; readonly task: Task }) {
  const minutes = task.minutes === null ? null : minutesWords(task.minutes);
  const more = task.done ? tell('job.task-done') : minutes;
  return (
    <li>
      <strong>{task.name}</strong>{more !== null && <span className={styles.soft}> · {more}</span>}
      {task.task.kind === 'item' && <span className={styles.change}> <Link href={`/car/${car}/sheet/${task.task.id}`} aria-label={tell(task.hasSheet ? 'job.change-of' : 'job.write-of', { task: task.name })}>{tell(task.hasSheet ? 'job.change' : 'job.write')}</Link></span>}
      {task.note !== '' && <p className={styles.note}>{task.note}</p>}
    </li>
  );
}
