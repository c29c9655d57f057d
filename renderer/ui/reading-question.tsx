import { Button } from '@mantine/core';
import { useId, useState } from 'react';
import { useWords } from './household.tsx';
import { InstrumentPanel, OtherReadingPanel, OtherValuePanel } from './reading-question-panels.tsx';
import styles from './reading-question.module.css';
import { useSettling, type Answer, type DoubtfulReading } from './settle-reading.ts';
import { tell } from './words/tell.ts';

export type { DoubtfulReading } from './settle-reading.ts';

interface ReadingQuestionProps {
  readonly car: string;
  readonly doubtful: DoubtfulReading;
  readonly onSettled?: () => void;
}

type Panel = 'value' | 'other' | 'instrument';

/** Asks what a doubtful reading was, with every answer there is. Nothing is changed until one is given. */
export function ReadingQuestion({ car, doubtful, onSettled }: ReadingQuestionProps) {
  const words = useWords();
  const id = useId();
  const settling = useSettling(car, doubtful, onSettled);
  const [panel, setPanel] = useState<Panel | null>(null);
  const { value, unit, date, text, repairs, slips, against, next } = doubtful;
  const toggle = (one: Panel) => ({ size: 'compact-sm', 'aria-expanded': panel === one, onClick: () => setPanel(panel === one ? null : one) });
  const likely = (is: boolean) => (is ? {} : { variant: 'default' });
  return (
    <div className={styles.question} role="group" aria-labelledby={id}>
      <p id={id}>{tell('reading.question', { value: words.distance(value, unit), date: words.date(date), doubt: text })}</p>
      <Beside doubtful={doubtful} />
      <div className={styles.answers}>
        {repairs.map((repair, at) => {
          const meant = meantBy(doubtful, repair, slips?.[at]);
          return (
            <Button key={repair} size="compact-sm" onClick={() => settling.settle(meant.answer)}>
              {tell('reading.it-was', { value: words.distance(meant.value, meant.unit) })}
            </Button>
          );
        })}
        <Button size="compact-sm" {...likely(doubtful.fitsNow === true)} onClick={() => settling.settle({ verdict: 'right' })}>{tell('reading.right')}</Button>
        <Button {...toggle('value')} variant="default">{tell('reading.other')}</Button>
        {against != null && <Button {...toggle('other')} {...likely(against.likelierSlip)}>{tell('reading.other-wrong')}</Button>}
        <Button {...toggle('instrument')} {...likely(next?.says === 'replaced')}>{tell('reading.replaced')}</Button>
        <Button size="compact-sm" variant="default" onClick={() => settling.settle({ verdict: 'wrong' })}>{tell('reading.wrong')}</Button>
      </div>
      {panel === 'value' && <OtherValuePanel doubtful={doubtful} settling={settling} />}
      {panel === 'other' && against != null && <OtherReadingPanel against={against} settling={settling} />}
      {panel === 'instrument' && <InstrumentPanel doubtful={doubtful} settling={settling} />}
      <p role="alert" className={settling.fault === null ? 'only-said' : styles.fault}>{settling.fault}</p>
    </div>
  );
}

/** What was expected that day, the reading it contradicts, and what the next one says. */
function Beside({ doubtful: { expected, unit, against, next } }: { readonly doubtful: DoubtfulReading }) {
  const words = useWords();
  const said = [
    ...(expected == null ? [] : [tell('reading.expected', { low: expected.low, high: words.distance(expected.high, unit) })]),
    ...[against, next].flatMap((one) => (one == null ? [] : [one.text])),
  ];
  return said.length === 0 ? null : <p className={styles.beside}>{said.join(' ')}</p>;
}

interface Meant {
  readonly value: number;
  readonly unit: 'km' | 'mi';
  readonly answer: Answer;
}

/** Where the unit was the slip, the figures were right: they are kept as they were read, in the other unit. */
function meantBy({ value, unit }: DoubtfulReading, repair: number, slip: string | undefined): Meant {
  const otherUnit = unit === 'km' ? 'mi' : 'km';
  const isUnit = slip === 'unit' && (unit === 'km' ? repair > value : repair < value);
  return isUnit
    ? { value, unit: otherUnit, answer: { verdict: 'corrected', unit: otherUnit } }
    : { value: repair, unit, answer: { verdict: 'corrected', value: repair } };
}
