import { Button, Checkbox, NativeSelect } from '@mantine/core';
import { useState } from 'react';
import type { CarView } from '../../shared-core/views/car-view.ts';
import type { PaperView } from '../../shared-core/views/papers-view.ts';
import { useWords } from '../ui/household.tsx';
import { useAsk } from '../ui/use-ask.ts';
import { tell } from '../ui/words/tell.ts';
import styles from './papers.module.css';
import { tiePaper, type TieTo } from './tie-paper.ts';

interface Choice extends TieTo {
  readonly label: string;
}

/** Ties a paper to what one ticks oneself, of one car or of several, all at once. */
export function TieChoice({ view: { paper, start, cars } }: { readonly view: PaperView }) {
  const [car, setCar] = useState(start.car ?? cars[0]?.id ?? '');
  const [ticked, setTicked] = useState<readonly TieTo[]>([]);
  if (cars.length === 0) return null;
  const uses = new Set(paper.uses.map(keyOf));
  const wanted = ticked.filter((one) => !uses.has(keyOf(one)));
  const tick = (one: TieTo, on: boolean) => setTicked([...wanted.filter((other) => keyOf(other) !== keyOf(one)), ...(on ? [one] : [])]);
  const tie = async () => {
    if (await tiePaper(paper.id, wanted)) setTicked([]);
  };
  return (
    <div className={styles.choice}>
      <NativeSelect label={tell('paper.choose-car')} value={car} onChange={(event) => setCar(event.currentTarget.value)} data={cars.map(({ id, name }) => ({ value: id, label: name }))} />
      <OfCar key={car} car={car} uses={uses} ticked={new Set(wanted.map(keyOf))} onTick={tick} />
      <Button variant="default" disabled={wanted.length === 0} onClick={() => void tie()}>{tell('paper.choose-submit', { n: wanted.length })}</Button>
    </div>
  );
}

interface OfCarProps {
  readonly car: string;
  /** What the paper is with already. */
  readonly uses: ReadonlySet<string>;
  readonly ticked: ReadonlySet<string>;
  readonly onTick: (one: TieTo, on: boolean) => void;
}

function OfCar({ car, uses, ticked, onTick }: OfCarProps) {
  const answer = useAsk('car.show', { car });
  const words = useWords();
  if (answer.state !== 'answered') return null;
  return (
    <fieldset className={styles.choices}>
      <legend>{tell('paper.choose-what')}</legend>
      <div className={styles.ticks}>
        {choicesOf(answer.value, words.date).filter((one) => !uses.has(keyOf(one))).map(({ label, ...one }) => (
          <Checkbox key={keyOf(one)} label={label} checked={ticked.has(keyOf(one))} onChange={(event) => onTick(one, event.currentTarget.checked)} />
        ))}
      </div>
    </fieldset>
  );
}

function keyOf({ kind, id }: { readonly kind: string; readonly id: string }): string {
  return `${kind} ${id}`;
}

function choicesOf({ car, records, observations, obligations }: CarView, date: (day: string) => string): readonly Choice[] {
  return [
    { kind: 'car' as const, id: car.id, title: car.name, label: tell('paper.choose-whole') },
    ...records.map(({ record: { id, title, date: on } }) => ({ kind: 'record' as const, id, title, label: tell('paper.choose-record', { title, date: date(on) }) })),
    ...observations.map(({ id, text: title, date: on }) => ({ kind: 'observation' as const, id, title, label: tell('paper.choose-observation', { title, date: date(on) }) })),
    ...obligations.map(({ id, name, kind, lastValidDay }) => ({ kind: 'obligation' as const, id, title: name ?? tell(`kind.${kind}`), label: tell('paper.choose-obligation', { title: name ?? tell(`kind.${kind}`), date: date(lastValidDay) }) })),
  ];
}
