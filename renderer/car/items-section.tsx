import { Button, Table } from '@mantine/core';
import type { CarView } from '../../shared-core/views/car-view.ts';
import type { WindowView } from '../../shared-core/views/due-view.ts';
import { dueWords, isExact, lateWords } from '../ui/due-words.ts';
import { useWords } from '../ui/household.tsx';
import { MarkGlyph } from '../ui/marks/mark-glyph.tsx';
import { shapeOfWindow } from '../ui/marks/mark-shape.ts';
import { tell } from '../ui/words/tell.ts';
import type { OpenSheet } from './car-sheet.ts';
import { intervalWords } from './interval-words.ts';
import { Section } from './section.tsx';
import styles from './car.module.css';

interface ItemsSectionProps {
  readonly view: CarView;
  readonly open: OpenSheet;
}

type ItemView = CarView['items'][number];

/** What is cared for on this car, soonest first: when each is due, and why. */
export function ItemsSection({ view, open }: ItemsSectionProps) {
  const byId = new Map(view.items.map((one) => [one.item.id, one]));
  return (
    <Section title={tell('items.title')} add={{ label: tell('items.add'), onAdd: () => open({ kind: 'item', item: null }) }}>
      {view.items.length === 0 ? (
        <p className={styles.soft}>{tell('items.none')}</p>
      ) : (
        <div className={styles.tableFrame}>
          <Table className={styles.items ?? ''} verticalSpacing="xs">
            <Table.Thead>
              <Table.Tr>
                <Table.Th scope="col">{tell('items.item')}</Table.Th>
                <Table.Th scope="col">{tell('items.due')}</Table.Th>
                <Table.Th scope="col">{tell('items.done')}</Table.Th>
                <Table.Th scope="col"><span className="only-said">{tell('items.actions')}</span></Table.Th>
              </Table.Tr>
            </Table.Thead>
            <Table.Tbody>
              {view.due.windows.map((window) => {
                const one = byId.get(window.item);
                return one === undefined ? null : <ItemRow key={window.item} one={one} window={window} open={open} />;
              })}
            </Table.Tbody>
          </Table>
        </div>
      )}
    </Section>
  );
}

interface ItemRowProps {
  readonly one: ItemView;
  readonly window: WindowView;
  readonly open: OpenSheet;
}

function ItemRow({ one: { item, doneOn }, window, open }: ItemRowProps) {
  const words = useWords();
  const last = doneOn.at(-1);
  const shape = shapeOfWindow(window);
  const state = window.lateBy === null ? tell(`state.${window.state}`) : lateWords(window.lateBy, words);
  return (
    <Table.Tr id={`item-${item.id}`} tabIndex={-1} data-place className={styles.place ?? ''}>
      <Table.Th scope="row" className={styles.itemName ?? ''}>
        {item.name}
        <p className={styles.small}>{intervalWords(item.interval, words)}{item.source !== null && ` · ${item.source}`}{item.source !== null && !item.confirmed && ` (${tell('interval.unconfirmed')})`}</p>
      </Table.Th>
      <Table.Td className={styles.due ?? ''}>
        <span className={styles.state}><MarkGlyph {...shape} /> <strong className={styles[shape.tone]}>{state}</strong></span>
        {saysWhen(window) && <p>{dueWords(window, words)}</p>}
        <p className={styles.small}>{window.reason.text}</p>
      </Table.Td>
      <Table.Td className={styles.date ?? ''}>{last === undefined ? <span className={styles.small}>{tell('items.never')}</span> : words.date(last)}</Table.Td>
      <Table.Td>
        <div className={styles.rowActions}>
          <Button size="compact-sm" variant="default" aria-label={tell('items.record-for', { item: item.name })} onClick={() => open({ kind: 'record', item: item.id })}>{tell('items.record')}</Button>
          <Button size="compact-sm" variant="subtle" aria-label={tell('items.change-for', { item: item.name })} onClick={() => open({ kind: 'item', item: item.id })}>{tell('items.change')}</Button>
        </div>
      </Table.Td>
    </Table.Tr>
  );
}

/** Of what is late by its distance, or not known, the state and the reason say all there is. */
function saysWhen(window: WindowView): boolean {
  return window.state !== 'unknown' && (window.state !== 'late' || isExact(window));
}
