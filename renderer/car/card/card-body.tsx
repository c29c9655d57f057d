import { Button } from '@mantine/core';
import type { CardView, FigureView } from '../../../shared-core/views/card-view.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { tell } from '../../ui/words/tell.ts';
import { nextMissing } from './card-order.ts';
import { CardGroup } from './card-group.tsx';
import { newOwnFigure } from './own-figure.ts';
import { CardPrint } from './card-print.tsx';
import { ADD_OWN, useOpenFigure } from './use-open-figure.ts';
import sectionStyles from '../../ui/section.module.css';
import carStyles from '../car.module.css';
import styles from './card.module.css';

interface CardBodyProps {
  readonly card: CardView;
  readonly papers: CarView['papers'];
}

type Group = Pick<CardView['groups'][number], 'group' | 'name' | 'figures'>;

/** What goes to the left where there is room for two columns; the rest stands on the right. */
const LEFT = ['fluids', 'tyres', 'torques'];

/** The whole card: how full it is, its groups in two columns, and the way to print it. */
export function CardBody({ card, papers }: CardBodyProps) {
  const at = useOpenFigure(card);
  const first = nextMissing(card, null);
  const column = (groups: readonly Group[]) => (
    <div className={carStyles.column}>
      {groups.map((group) => <CardGroup key={group.group} group={group} card={card} papers={papers} at={at} {...(group.group === 'own' ? { foot: <OwnFoot empty={group.figures.length === 0} at={at} /> } : {})} />)}
    </div>
  );
  return (
    <div className={styles.leaf}>
      <div className={styles.head}>
        <p className={styles.counts}>{card.entered === 0 ? tell('card.none') : countWords(card)}</p>
        <div className={styles.headActions}>
          {first !== null && <Button variant="default" onClick={() => at.open(first)}>{tell('card.fill')}</Button>}
          <CardPrint card={card} />
        </div>
      </div>
      <div className={styles.columns}>
        {column(card.groups.filter((group) => LEFT.includes(group.group)))}
        {column([...card.groups.filter((group) => !LEFT.includes(group.group) && group.group !== 'own'), ownGroup(card, at.figure)])}
      </div>
    </div>
  );
}

/** The keeper's own figures, with the one that is being added. */
function ownGroup(card: CardView, open: FigureView | null): Group {
  const figures = card.groups.find((group) => group.group === 'own')?.figures ?? [];
  const added = open !== null && open.own && !figures.some((figure) => figure.key === open.key) ? [open] : [];
  return { group: 'own', name: tell('card.own'), figures: [...figures, ...added] };
}

function OwnFoot({ empty, at }: { readonly empty: boolean; readonly at: ReturnType<typeof useOpenFigure> }) {
  return (
    <>
      {empty && <p className={sectionStyles.soft}>{tell('card.own-none')}</p>}
      <Button id={ADD_OWN} size="compact-md" variant="default" onClick={() => at.open(newOwnFigure())}>{tell('card.add-own')}</Button>
    </>
  );
}

function countWords({ entered, missing, withoutSource }: CardView): string {
  const parts = [tell('card.counts', { n: entered }), ...(missing === 0 ? [] : [tell('card.missing', { n: missing })]), ...(withoutSource === 0 ? [] : [tell('card.without-source', { n: withoutSource })])];
  return `${parts.join(', ')}.`;
}
