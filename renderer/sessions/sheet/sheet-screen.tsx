import { Link } from 'wouter';
import type { JobSheet } from '../../../shared-core/views/job-sheet-view-schema.ts';
import { Asked } from '../../ui/asked.tsx';
import { minutesWords } from '../../ui/due-words.ts';
import { useWords } from '../../ui/household.tsx';
import { sessionTitle } from '../../ui/plan/plan-words.ts';
import { ScreenTitle } from '../../ui/screen-title.tsx';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';
import { CarLinks } from './car-links.tsx';
import { CarSheet } from './car-sheet.tsx';
import { partOfCar } from './of-car.ts';
import { PageStyle } from './page-style.tsx';
import { useSheetPaper, useSheetUnit } from './sheet-choices.ts';
import { SheetOptions } from './sheet-options.tsx';
import styles from './sheet.module.css';

/** The job sheet of a session, to read on the screen and to print: what is printed is what stands here. */
export function SheetScreen({ session }: { readonly session: string }) {
  const words = useWords();
  const answer = useAsk('sheet.session', { session }, { hold: true });
  const title = answer.state === 'answered' ? tell('job.title-of', { title: sessionTitle(answer.value.session, answer.value.today, words) }) : tell('job.title');
  const back = <Link href="/sessions">{tell('job.back')}</Link>;
  return (
    <div className={styles.screen} data-job-sheet>
      <div className={styles.top}>
        <p>{back}</p>
        <ScreenTitle>{title}</ScreenTitle>
      </div>
      <Asked answer={answer} onward={back}>{(sheet) => <Sheet sheet={sheet} />}</Asked>
    </div>
  );
}

function Sheet({ sheet }: { readonly sheet: JobSheet }) {
  const words = useWords();
  const [unit, setUnit] = useSheetUnit();
  const [paper, setPaper] = useSheetPaper();
  const { session, minutes, withoutMinutes } = sheet;
  const tasks = sheet.cars.flatMap((car) => car.tasks);
  const about = [tell('job.about', { tasks: tell('session.tasks', { n: tasks.length }), minutes: minutesWords(minutes) }), ...(withoutMinutes === 0 ? [] : [tell('job.about-unsaid', { n: withoutMinutes })])].join(', ');
  return (
    <>
      <PageStyle paper={paper} session={tell('job.head', { day: words.longDate(session.day), place: session.placeName })} cars={sheet.cars.map((car) => car.carName)} />
      <div className={styles.top}>
        <p>{about}</p>
        {session.note !== '' && <p>{tell('session.note', { note: session.note })}</p>}
        {sheet.cars.length > 1 && <CarLinks cars={sheet.cars} />}
        <SheetOptions unit={unit} onUnit={setUnit} paper={paper} onPaper={setPaper} />
      </div>
      {sheet.cars.length === 0 && <p>{tell('job.empty')}</p>}
      {sheet.cars.map((job, at) => <CarSheet key={job.car} part={partOfCar(sheet, job)} at={at} unit={unit} />)}
    </>
  );
}
