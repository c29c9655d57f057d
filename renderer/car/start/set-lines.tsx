import { Checkbox } from '@mantine/core';
import { DateField } from '../../ui/form/date-field.tsx';
import type { FieldPlace } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { tell } from '../../ui/words/tell.ts';
import { intervalWords } from '../interval-words.ts';
import { intervalOf } from './set-draft.ts';
import styles from './start.module.css';
import type { OfferedItem } from './use-starting-sets.ts';

interface SetLinesProps {
  readonly items: readonly OfferedItem[];
  readonly unit: 'km' | 'mi';
  readonly omit: readonly string[];
  readonly onOmit: (omit: readonly string[]) => void;
  /** What else is to be known of an item. */
  readonly remark?: (item: OfferedItem) => string;
  /** Asks for the dates printed on things; left out where they can follow. */
  readonly printed?: PrintedDates;
}

/** The dates printed on the things themselves, by the item's key. */
export interface PrintedDates {
  readonly dates: Readonly<Record<string, string>>;
  readonly place: (key: string) => FieldPlace;
  readonly onChange: (dates: Readonly<Record<string, string>>) => void;
}

/** The items of a set, each with its interval, to be ticked or left out. */
export function SetLines({ items, unit, omit, onOmit, remark, printed }: SetLinesProps) {
  const words = useWords();
  return (
    <ul className={styles.lines}>
      {items.map((item) => {
        const taken = !omit.includes(item.key);
        return (
          <li key={item.key}>
            <Checkbox
              label={item.name}
              description={[...(remark === undefined ? [] : [remark(item)]), intervalWords(intervalOf(item, unit), words)].join(' · ')}
              checked={taken}
              onChange={() => onOmit(taken ? [...omit, item.key] : omit.filter((key) => key !== item.key))}
            />
            {taken && item.printedDate && printed !== undefined && (
              <DateField
                {...printed.place(item.key)}
                label={tell('set.printed')}
                value={printed.dates[item.key] ?? ''}
                onChange={(date) => printed.onChange({ ...printed.dates, [item.key]: date })}
              />
            )}
          </li>
        );
      })}
    </ul>
  );
}
