import { useRef } from 'react';
import type { CardView, FigureView } from '../../../shared-core/views/card-view.ts';
import { useWords } from '../../ui/household.tsx';
import { tell } from '../../ui/words/tell.ts';
import { figuresOf } from './card-order.ts';
import { useFitSheet } from './use-fit-sheet.ts';
import styles from './card-sheet.module.css';

interface CardSheetProps {
  readonly card: CardView;
  readonly onFit: (fits: boolean) => void;
}

/** The card as it is printed on one page: what is entered, and lines to fill in by hand where there is room. */
export function CardSheet({ card, onFit }: CardSheetProps) {
  const words = useWords();
  const page = useRef<HTMLDivElement>(null);
  useFitSheet(page, card, onFit);
  const groups = card.groups.map(({ group, name, figures }) => ({ group, name, figures: figures.filter((figure) => figure.entered) })).filter((group) => group.figures.length > 0);
  const missing = figuresOf(card).filter((figure) => !figure.entered);
  const { name, description, year } = card.car;
  return (
    <div className={styles.printed} aria-hidden="true" data-card-sheet>
      <div className={styles.page} ref={page}>
        <div data-whole>
          <p className={styles.title}>{tell('sheet.title', { car: name })}</p>
          <p className={styles.about}>{[...(description === null ? [] : [description]), ...(year === null ? [] : [String(year)]), tell('sheet.as-of', { date: words.longDate(card.today) })].join(' · ')}</p>
          <div className={styles.columns}>
            {groups.map((group) => (
              <div key={group.group} className={styles.group}>
                <p className={styles.groupName}>{group.name}</p>
                {group.figures.map((figure) => <Line key={figure.key} figure={figure} />)}
              </div>
            ))}
            <div className={styles.blanks} data-blanks>
              <p className={styles.groupName}>{tell('sheet.to-fill')}</p>
              {missing.map((figure) => <p key={figure.key} className={styles.blank} data-blank>{figure.name}<span /></p>)}
            </div>
          </div>
          <p className={styles.foot}>{tell('sheet.foot')}</p>
        </div>
      </div>
    </div>
  );
}

function Line({ figure }: { readonly figure: FigureView }) {
  const { name, text, otherUnits, source, paper, note, question } = figure;
  const from = [source ?? paper?.name ?? tell('card.no-source'), ...(question === null ? [] : [tell('sheet.compare')]), ...(note === '' ? [] : [note])];
  return (
    <div className={styles.line}>
      <p>{name}</p>
      <div>
        <p><strong>{text}</strong>{otherUnits.length > 0 && <span className={styles.others}> {tell('card.is', { units: otherUnits.join(', ') })}</span>}</p>
        <p className={styles.from}>{from.join(' · ')}</p>
      </div>
    </div>
  );
}
