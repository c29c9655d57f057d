import { Button } from '@mantine/core';
import type { FigureView } from '../../../shared-core/views/card-view.ts';
import { PaperLink } from '../../ui/paper-link.tsx';
import { tell } from '../../ui/words/tell.ts';
import { FigureQuestion } from './figure-question.tsx';
import styles from './card.module.css';

interface FigureRowProps {
  readonly car: string;
  readonly figure: FigureView;
  readonly onOpen: () => void;
  readonly onAnswered: () => void;
}

/** One figure as it stands: its value in its unit and in others, where it comes from; or that it is missing, and where. */
export function FigureRow({ car, figure, onOpen, onAnswered }: FigureRowProps) {
  const { name, entered } = figure;
  return (
    <>
      <div className={styles.figure}>
        <span className={styles.name}>{name}</span>
        <div className={styles.stands}>{entered ? <Entered figure={figure} /> : <Missing figure={figure} />}</div>
        <Button id={buttonOf(figure.key)} size="compact-sm" variant={entered ? 'subtle' : 'default'} aria-label={tell(entered ? 'card.change-for' : 'card.enter-for', { name })} onClick={onOpen}>{tell(entered ? 'card.change' : 'card.enter')}</Button>
      </div>
      {figure.question !== null && <FigureQuestion car={car} figure={figure} text={figure.question.text} onChange={onOpen} onAnswered={onAnswered} />}
    </>
  );
}

/** The id of the button that opens a figure's form. */
export function buttonOf(key: string): string {
  return `figure-${key}`;
}

function Entered({ figure }: { readonly figure: FigureView }) {
  const { text, otherUnits, source, paper, note, sure, value } = figure;
  return (
    <>
      <p><strong>{text}</strong>{otherUnits.length > 0 && <span className={styles.others}> {tell('card.is', { units: otherUnits.join(', ') })}</span>}</p>
      <p className={styles.from}>
        {source ?? (paper === null && <span className={styles.without}>{tell('card.no-source')}</span>)}
        {paper !== null && <>{source !== null && ' · '}<PaperLink paper={paper.id} text={paper.name} /></>}
        {sure && value?.kind === 'torque' && ` · ${tell('card.compared')}`}
        {note !== '' && ` · ${note}`}
      </p>
    </>
  );
}

function Missing({ figure: { text, missed, items } }: { readonly figure: FigureView }) {
  return (
    <>
      <p className={styles.missing}>{text}</p>
      <p className={styles.from}>{[...missed.map((where) => where.text), ...(items.length === 0 ? [] : [tell('card.wanted-by', { items: items.map((item) => item.name).join(', ') })])].join(' ')}</p>
    </>
  );
}
