import type { NeedsView } from '../../../shared-core/views/needs-view-schema.ts';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { amountWords } from '../../ui/amount-words.ts';
import type { OpenPartsSheet } from '../parts-sheet.ts';
import { ShownMore } from '../shown-more.tsx';
import { SmallButton } from '../../ui/small-button.tsx';
import styles from '../parts.module.css';

interface TasksTakeProps {
  readonly tasks: readonly NeedsView['tasks'][number][];
  readonly view: PartsView;
  readonly open: OpenPartsSheet;
}

const FIRST = 40;

/** What is entered for each task of each car, folded away: it is seldom changed. */
export function TasksTake({ tasks, view, open }: TasksTakeProps) {
  const { byName } = useWords();
  const sorted = [...tasks].sort((a, b) => byName(a.carName, b.carName) || byName(a.itemName, b.itemName));
  const without = tasks.filter((one) => one.needs.length === 0).length;
  const specifications = new Map(view.specifications.map(({ specification }) => [specification.id, specification]));
  const needWords = (needs: NeedsView['tasks'][number]['needs']) => needs.map(({ specification, quantity }) => `${amountWords(quantity, specifications.get(specification)?.unit ?? null)} ${specifications.get(specification)?.name ?? specification}`).join(', ');
  return (
    <Section title={tell('take.title')} hint={tell('take.hint')}>
      {tasks.length === 0 ? <p className={sectionStyles.soft}>{tell('take.no-tasks')}</p> : (
        <details className={styles.fold} open={tasks.length === without}>
          <summary>{tell('take.fold', { n: tasks.length, without })}</summary>
          <ShownMore items={sorted} first={FIRST}>
            {(shown) => (
              <ul className={sectionStyles.list}>
                {shown.map((task) => {
                  const name = tell('needed.task-of', { car: task.carName, item: task.itemName });
                  return (
                    <li key={task.item} className={styles.row}>
                      <div className={styles.head}>
                        <span><strong>{name}</strong>{task.needs.length > 0 && <span className={sectionStyles.small}> {needWords(task.needs)}</span>}</span>
                        <SmallButton of={name} onPress={() => open({ kind: 'need', item: task.item })}>{tell(task.needs.length === 0 ? 'take.enter' : 'take.change')}</SmallButton>
                      </div>
                    </li>
                  );
                })}
              </ul>
            )}
          </ShownMore>
        </details>
      )}
    </Section>
  );
}
