import { useState } from 'react';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { useWords } from '../../ui/household.tsx';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { AnswerRow } from './answer-row.tsx';
import { firstAnswer, questionsOf, rowAfter, type Answer, type Intake } from './answers.ts';
import sectionStyles from '../../ui/section.module.css';
import styles from './intake.module.css';

interface QuestionsSectionProps {
  readonly view: CarView;
  readonly intake: Intake;
}

/** What is asked, item by item, and how far one has come. */
export function QuestionsSection({ view, intake }: QuestionsSectionProps) {
  const questions = questionsOf(intake, useWords().byName);
  // All rows are one stop of the Tab key: where one was last, else the first that is open.
  const [at, setAt] = useState<{ readonly item: string; readonly answer: Answer } | null>(null);
  const row = questions.find(({ item }) => item === at?.item) ?? questions.find(({ question }) => question === 'open') ?? questions[0];
  const { items, open } = intake.counts;
  const without = items - questions.length;
  return (
    <Section title={tell('intake.title')}>
      {questions.length === 0 ? <p className={sectionStyles.soft}>{tell('intake.none')}</p> : (
        <>
          <p>{tell('intake.lead')}</p>
          <div className={styles.progress}>
            <p role="status">{open === 0 ? tell('intake.all-answered', { n: questions.length }) : tell('intake.progress', { answered: questions.length - open, questions: questions.length })}</p>
            <progress aria-hidden="true" max={questions.length} value={questions.length - open} />
          </div>
          <p className={styles.stand}>{tell('intake.keys')}</p>
          <ul className={sectionStyles.list} aria-label={tell('intake.asked')}>
            {questions.map((item) => (
              <AnswerRow
                key={item.item}
                view={view}
                item={item}
                next={rowAfter(questions, item.item)}
                stop={item !== row ? null : at?.item === item.item ? at.answer : firstAnswer(item, view.car)}
                onStop={(answer) => setAt({ item: item.item, answer })}
              />
            ))}
          </ul>
        </>
      )}
      {without > 0 && <p className={styles.stand}>{tell('intake.without', { n: without })}</p>}
    </Section>
  );
}
