import { NativeSelect } from '@mantine/core';
import { useState } from 'react';
import type { NeedsView } from '../../../shared-core/views/needs-view-schema.ts';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { addDays } from '../../../shared-core/calendar/local-date.ts';
import { Asked } from '../../ui/asked.tsx';
import { useWords } from '../../ui/household.tsx';
import type { HouseholdWords } from '../../ui/household-words.ts';
import { Section } from '../../ui/section.tsx';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';
import { HorizonChoice } from '../horizon-choice.tsx';
import { useOrdering } from '../order/ordering.ts';
import { PartsNotes } from '../parts-notes.tsx';
import type { OpenPartsSheet } from '../parts-sheet.ts';
import { NeedsTable } from './needs-table.tsx';
import { SessionsAhead } from './sessions-ahead.tsx';
import { TasksTake } from './tasks-take.tsx';
import styles from '../parts.module.css';

interface NeededLeafProps {
  readonly view: PartsView;
  readonly open: OpenPartsSheet;
}

/** What all cars need, soonest first, and what of it there is; what the next sessions lack; what each task takes. */
export function NeededLeaf({ view, open }: NeededLeafProps) {
  const { terms } = useOrdering();
  const answer = useAsk('needs.show', { horizonDays: terms.horizonDays }, { hold: true });
  return <Asked answer={answer}>{(needs) => <Needed needs={needs} view={view} open={open} />}</Asked>;
}

function Needed({ needs, view, open }: NeededLeafProps & { readonly needs: NeedsView }) {
  const words = useWords();
  const [car, setCar] = useState('');
  const cars = [...new Map(needs.tasks.map((one) => [one.car, one.carName]))].sort((a, b) => words.byName(a[1], b[1]));
  const ofCar = <One extends { readonly car: string }>(list: readonly One[]) => (car === '' ? list : list.filter((one) => one.car === car));
  return (
    <div className={styles.leaf}>
      <p className={styles.lead}>{sumWords(needs, words)}</p>
      <div className={styles.bar}>
        <HorizonChoice />
        {cars.length > 1 && <NativeSelect label={tell('needed.car')} value={car} onChange={(event) => setCar(event.currentTarget.value)} data={[{ value: '', label: tell('needed.all-cars') }, ...cars.map(([value, label]) => ({ value, label }))]} />}
      </div>
      {view.notes.length > 0 && <Section title={tell('parts.notes')}><PartsNotes notes={view.notes} /></Section>}
      <NeedsTable needs={ofCar(needs.needs)} all={needs} open={open} />
      <SessionsAhead view={view} />
      <TasksTake tasks={ofCar(needs.tasks)} view={view} open={open} />
    </div>
  );
}

function sumWords({ needs, today, horizonDays }: NeedsView, words: HouseholdWords): string {
  const by = words.date(addDays(today, horizonDays));
  if (needs.length === 0) return tell('needed.none', { date: by });
  const count = (state: string) => needs.filter((one) => one.state === state).length;
  const gaps = needs.filter((one) => one.gap !== null).length;
  const counts = [...(['on-shelf', 'on-the-way', 'missing'] as const).flatMap((state) => (count(state) === 0 ? [] : [tell(`needed.count-${state}`, { n: count(state) })]))];
  return `${tell('needed.sum', { n: needs.length, date: by })} ${counts.join(', ')}.${gaps === 0 ? '' : ` ${tell('needed.gaps', { n: gaps })}`}`;
}
