import type { ReactNode } from 'react';
import type { CardView } from '../../../shared-core/views/card-view.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { Section } from '../../ui/section.tsx';
import { FigureForm } from './figure-form.tsx';
import { FigureRow } from './figure-row.tsx';
import type { OpenFigure } from './use-open-figure.ts';
import sectionStyles from '../../ui/section.module.css';
import styles from './card.module.css';

interface CardGroupProps {
  readonly group: Pick<CardView['groups'][number], 'name' | 'figures'>;
  readonly card: CardView;
  readonly papers: CarView['papers'];
  readonly at: OpenFigure;
  readonly foot?: ReactNode;
}

/** Figures that belong together; the open one is its form. */
export function CardGroup({ group, card, papers, at, foot }: CardGroupProps) {
  return (
    <Section title={group.name}>
      {group.figures.length > 0 && (
        <ul className={`${sectionStyles.list} ${styles.figures}`}>
          {group.figures.map((figure) => (
            <li key={figure.key}>
              {at.figure?.key === figure.key ? (
                <FigureForm card={card} figure={at.figure} papers={papers} onSaved={at.saved} onSkip={at.skip} onClose={at.close} />
              ) : (
                <FigureRow car={card.car.id} figure={figure} onOpen={() => at.open(figure)} onAnswered={() => at.answered(figure)} />
              )}
            </li>
          ))}
        </ul>
      )}
      {foot}
    </Section>
  );
}
