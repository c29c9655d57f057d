import type { ImportQuestion, ImportView } from '../../../shared-core/views/import/import-view.ts';
import { tell } from '../../ui/words/tell.ts';
import { answerQuestion, type TableChoices, type TableDraft } from './table-draft.ts';
import sectionStyles from '../../ui/section.module.css';
import styles from './import.module.css';

/** What most parts of the page are given: the table, what it comes to, and how to say something of it. */
export interface PartProps {
  readonly draft: TableDraft;
  readonly view: ImportView;
  readonly onChoices: (choices: TableChoices) => void;
}

const SHOWN = 6;
const MOST_LINES = 5;

/** What the table leaves open, each with its answers; nothing is chosen beforehand. */
export function QuestionsSection({ draft, view, onChoices }: PartProps) {
  const { questions } = view;
  const more = questions.length - SHOWN;
  return (
    <section className={`${sectionStyles.section} ${styles.open}`} aria-labelledby="import-questions">
      <h2 id="import-questions" tabIndex={-1}>{tell('import.questions')}</h2>
      <p>{tell('import.questions-what', { n: questions.length })}</p>
      {questions.slice(0, SHOWN).map((question) => (
        <Question key={`${question.code} ${question.subject ?? ''} ${question.options[0]?.value ?? ''}`} question={question} onAnswer={(value) => onChoices(answerQuestion(draft.choices, question, value, view))} />
      ))}
      {more > 0 && <p className={sectionStyles.soft}>{tell('import.questions-more', { n: more })}</p>}
    </section>
  );
}

function Question({ question, onAnswer }: { readonly question: ImportQuestion; readonly onAnswer: (value: string) => void }) {
  const { text, options, suggested, why, lines } = question;
  const about = lines.length === 0 ? null : tell(lines.length < MOST_LINES ? 'import.question-lines' : 'import.question-lines-more', { lines: lines.join(', ') });
  return (
    <div role="group" aria-label={text} className={styles.question}>
      <h3>{text}</h3>
      {about !== null && lines.length > 1 && <p className={sectionStyles.small}>{about}</p>}
      <ul className={styles.answers}>
        {options.map((option) => (
          <li key={option.value}>
            <button type="button" className={styles.answer} onClick={() => onAnswer(option.value)}>
              <span className={styles.answerText}>{option.text}</span>
              {option.examples.length > 0 && <span className={sectionStyles.small}>{option.examples.join(' · ')}</span>}
              {option.value === suggested && <span className={styles.likely}>{tell('import.likely')} {why ?? ''}</span>}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
