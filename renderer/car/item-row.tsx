import { Button, Table } from '@mantine/core';
import { Link } from 'wouter';
import type { CarView } from '../../shared-core/views/car-view.ts';
import type { WindowView } from '../../shared-core/views/due-view.ts';
import { dueWords, isExact, stateWords } from '../ui/due-words.ts';
import { useWords } from '../ui/household.tsx';
import { MarkGlyph } from '../ui/marks/mark-glyph.tsx';
import { shapeOfWindow } from '../ui/marks/mark-shape.ts';
import { tell } from '../ui/words/tell.ts';
import type { OpenSheet } from './car-sheet.ts';
import { intervalWords } from './interval-words.ts';
import { valueText } from './wear/value-words.ts';
import sectionStyles from '../ui/section.module.css';
import styles from './car.module.css';
import tones from '../ui/tones.module.css';

type ItemView = CarView['items'][number];

interface ItemRowProps {
  readonly one: ItemView;
  readonly window: WindowView;
  readonly open: OpenSheet;
  readonly onConfirm: () => void;
}

/** One item: its interval and whence it comes, when it is due and why, and what can be done about it. */
export function ItemRow({ one, window, open, onConfirm }: ItemRowProps) {
  const words = useWords();
  const { item, doneOn } = one;
  const last = doneOn.at(-1);
  const shape = shapeOfWindow(window);
  const state = stateWords(window, words);
  return (
    <Table.Tr id={`item-${item.id}`} tabIndex={-1} data-place className={styles.place ?? ''}>
      <Table.Th scope="row" className={styles.itemName ?? ''}>
        {item.name}
        <Interval one={one} />
      </Table.Th>
      <Table.Td className={styles.due ?? ''}>
        <span className={styles.state}><MarkGlyph {...shape} /> <strong className={tones[shape.tone]}>{state}</strong></span>
        {saysWhen(window) && <p>{dueWords(window, words)}</p>}
        <p className={sectionStyles.small}>{window.reason.text}</p>
      </Table.Td>
      <Table.Td className={sectionStyles.date ?? ''}>{last === undefined ? <span className={sectionStyles.small}>{tell('items.never')}</span> : words.date(last)}</Table.Td>
      <Table.Td>
        <div className={styles.rowActions}>
          <Button size="compact-sm" variant="default" aria-label={tell('items.record-for', { item: item.name })} onClick={() => open({ kind: 'record', item: item.id })}>{tell('items.record')}</Button>
          <Button size="compact-sm" variant="subtle" aria-label={tell('items.change-for', { item: item.name })} onClick={() => open({ kind: 'item', item: item.id })}>{tell('items.change')}</Button>
          <Link href={`/car/${item.car}/sheet/${item.id}`} className={styles.sheetLink} aria-label={tell('items.sheet-for', { item: item.name })}>{tell('items.sheet')}</Link>
          {!item.confirmed && <Button size="compact-sm" variant="subtle" aria-label={tell('confirm.one-for', { item: item.name })} onClick={onConfirm}>{tell('confirm.one')}</Button>}
        </div>
      </Table.Td>
    </Table.Tr>
  );
}

/** What an item is measured by, and its own limit where it has one. */
function measureWords({ kind, name, limit }: NonNullable<ItemView['item']['measure']>): string {
  const what = name ?? tell(`measured.${kind}`);
  return limit === null ? tell('items.measured-only', { what }) : tell('items.measured', { what, limit: valueText(limit) });
}

/** The interval as its source has it, as it is counted under severe use, and the source; what is not confirmed says so. */
function Interval({ one: { item, severe, learned } }: { readonly one: ItemView }) {
  const words = useWords();
  const printed = intervalWords(item.interval, words);
  const counted = severe === null ? printed : intervalWords(severe, words);
  const said = [
    printed,
    ...(counted === printed ? [] : [tell('interval.severe', { interval: counted })]),
    ...(item.measure === null ? [] : [measureWords(item.measure)]),
    ...(learned === null ? [] : [tell('items.learned', { n: learned.own, minutes: learned.minutes, low: learned.low, high: learned.high })]),
    ...(item.confirmed && item.source !== null ? [item.source] : []),
  ];
  return (
    <>
      <p className={sectionStyles.small}>{said.join(' · ')}</p>
      {!item.confirmed && <p className={styles.unconfirmed}>{item.source === null ? tell('confirm.no-source') : tell('confirm.marked', { source: item.source })}</p>}
    </>
  );
}

/** Of what is late by its distance, or not known, the state and the reason say all there is. */
function saysWhen(window: WindowView): boolean {
  return window.state !== 'unknown' && (window.state !== 'late' || isExact(window));
}
