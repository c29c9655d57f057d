import { Button } from '@mantine/core';
import type { ReactNode } from 'react';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { change } from '../../ui/change.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { useWords } from '../../ui/household.tsx';
import type { HouseholdWords } from '../../ui/household-words.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { monthRuns } from '../car-facts.ts';
import sectionStyles from '../../ui/section.module.css';
import carStyles from '../car.module.css';
import type { OpenDistanceSheet } from './distance-sheet.ts';
import styles from './distance.module.css';

interface RestSectionProps {
  readonly view: CarView;
  readonly open: OpenDistanceSheet;
}

/** When the car rests, each year or once, and from when it was used otherwise. */
export function RestSection({ view, open }: RestSectionProps) {
  const words = useWords();
  const { car, layUps, useChanges, today } = view;
  return (
    <Section title={tell('rest.title')}>
      <p>{car.laidUpMonths.length === 0 ? tell('rest.no-months') : tell('rest.months', { months: monthRuns(car.laidUpMonths, words) })}</p>
      <SubHead id="lay-ups" title={tell('lay-ups.title')} add={tell('lay-ups.add')} onAdd={() => open({ kind: 'lay-up', layUp: null, ending: false })} />
      {layUps.length === 0 && <p className={sectionStyles.soft}>{tell('lay-ups.none')}</p>}
      <List labelledBy="lay-ups" show={layUps.length > 0}>
        {layUps.map((one) => (
          <Row key={one.id} text={layUpWords(one, words)} remark={one.note}>
            {one.to === null && one.from <= today && <Button size="compact-sm" onClick={() => open({ kind: 'lay-up', layUp: one.id, ending: true })}>{tell('lay-ups.end')}</Button>}
            <Button size="compact-sm" variant="default" aria-label={tell('lay-ups.change-for', { what: layUpWords(one, words) })} onClick={() => open({ kind: 'lay-up', layUp: one.id, ending: false })}>{tell('rest.change')}</Button>
            <Button size="compact-sm" variant="default" aria-label={tell('lay-ups.remove-for', { what: layUpWords(one, words) })} onClick={() => void remove('lay-up', one.id)}>{tell('rest.remove')}</Button>
          </Row>
        ))}
      </List>
      <SubHead id="use-changes" title={tell('use-changes.title')} add={tell('use-changes.add')} onAdd={() => open({ kind: 'use-change', useChange: null })} />
      {useChanges.length === 0 && <p className={sectionStyles.soft}>{tell('use-changes.none')}</p>}
      <List labelledBy="use-changes" show={useChanges.length > 0}>
        {useChanges.map((one) => (
          <Row key={one.id} text={changeOfUseWords(one, words)} remark={one.note}>
            <Button size="compact-sm" variant="default" aria-label={tell('use-changes.change-for', { date: words.date(one.date) })} onClick={() => open({ kind: 'use-change', useChange: one.id })}>{tell('rest.change')}</Button>
            <Button size="compact-sm" variant="default" aria-label={tell('use-changes.remove-for', { date: words.date(one.date) })} onClick={() => void remove('use-change', one.id)}>{tell('rest.remove')}</Button>
          </Row>
        ))}
      </List>
    </Section>
  );
}

/** Taken away with one press, and given back by its undo. */
async function remove(what: 'lay-up' | 'use-change', id: string): Promise<void> {
  const result = await change(`${what}.remove`, { id });
  if (result.ok) note(tell(`removed.${what}`), result.value.undo);
  else note(sayFault(result.refusal));
}

function layUpWords({ from, to }: CarView['layUps'][number], words: HouseholdWords): string {
  return to === null ? tell('lay-ups.from', { from: words.date(from) }) : tell('lay-ups.from-to', { from: words.date(from), to: words.date(to) });
}

function changeOfUseWords({ date, declaredAYear }: CarView['useChanges'][number], words: HouseholdWords): string {
  const from = { date: words.date(date) };
  return declaredAYear === null ? tell('use-changes.from', from) : tell('use-changes.from-expected', { ...from, distance: words.distance(declaredAYear.value, declaredAYear.unit) });
}

function SubHead({ id, title, add, onAdd }: { readonly id: string; readonly title: string; readonly add: string; readonly onAdd: () => void }) {
  return (
    <div className={`${sectionStyles.head} ${styles.subHead}`}>
      <h3 id={id}>{title}</h3>
      <Button size="compact-sm" variant="default" onClick={onAdd}>{add}</Button>
    </div>
  );
}

function List({ labelledBy, show, children }: { readonly labelledBy: string; readonly show: boolean; readonly children: ReactNode }) {
  return show ? <ul className={sectionStyles.list} aria-labelledby={labelledBy}>{children}</ul> : null;
}

function Row({ text, remark, children }: { readonly text: string; readonly remark: string; readonly children: ReactNode }) {
  return (
    <li className={styles.plainRow}>
      <div className={carStyles.rowWords}>
        <p>{text}</p>
        {remark !== '' && <p className={sectionStyles.small}>{remark}</p>}
      </div>
      <div className={styles.rowButtons}>{children}</div>
    </li>
  );
}
