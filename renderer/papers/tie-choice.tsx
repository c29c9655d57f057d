import { Button, NativeSelect } from '@mantine/core';
import { useState } from 'react';
import type { CarView } from '../../shared-core/views/car-view.ts';
import type { PaperView } from '../../shared-core/views/papers-view.ts';
import { useWords } from '../ui/household.tsx';
import { useAsk } from '../ui/use-ask.ts';
import { tell } from '../ui/words/tell.ts';
import styles from './papers.module.css';
import type { TieTo } from './tie-paper.ts';

/** Ties a paper to anything of a car that one chooses oneself. */
export function TieChoice({ view, onTie }: { readonly view: PaperView; readonly onTie: (to: TieTo) => void }) {
  const [car, setCar] = useState(view.start.car ?? view.cars[0]?.id ?? '');
  if (view.cars.length === 0) return null;
  return (
    <div className={styles.choice}>
      <NativeSelect label={tell('paper.choose-car')} value={car} onChange={(event) => setCar(event.currentTarget.value)} data={view.cars.map(({ id, name }) => ({ value: id, label: name }))} />
      <OfCar key={car} car={car} onTie={onTie} />
    </div>
  );
}

function OfCar({ car, onTie }: { readonly car: string; readonly onTie: (to: TieTo) => void }) {
  const answer = useAsk('car.show', { car });
  const words = useWords();
  const [chosen, setChosen] = useState(0);
  if (answer.state !== 'answered') return null;
  const all = choicesOf(answer.value, words.date);
  const one = all[chosen];
  return (
    <>
      <NativeSelect label={tell('paper.choose-what')} value={String(chosen)} onChange={(event) => setChosen(Number(event.currentTarget.value))} data={all.map(({ label }, at) => ({ value: String(at), label }))} />
      <Button variant="default" onClick={() => one !== undefined && onTie(one)}>{tell('paper.choose-submit')}</Button>
    </>
  );
}

function choicesOf({ car, records, observations, obligations }: CarView, date: (day: string) => string): readonly (TieTo & { readonly label: string })[] {
  return [
    ...records.map(({ record: { id, title, date: on } }) => ({ kind: 'record' as const, id, title, label: tell('paper.choose-record', { title, date: date(on) }) })),
    ...observations.map(({ id, text: title, date: on }) => ({ kind: 'observation' as const, id, title, label: tell('paper.choose-observation', { title, date: date(on) }) })),
    ...obligations.map(({ id, name, kind, lastValidDay }) => ({ kind: 'obligation' as const, id, title: name ?? tell(`kind.${kind}`), label: tell('paper.choose-obligation', { title: name ?? tell(`kind.${kind}`), date: date(lastValidDay) }) })),
    { kind: 'car' as const, id: car.id, title: car.name, label: tell('paper.choose-whole') },
  ];
}
