import { Checkbox } from '@mantine/core';
import { FieldGroup } from '../../ui/form/fields.tsx';
import type { FieldPlace } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { tell } from '../../ui/words/tell.ts';
import styles from './forms.module.css';

interface MonthsFieldProps {
  readonly place: FieldPlace;
  readonly months: readonly number[];
  readonly onChange: (months: readonly number[]) => void;
}

const ALL = Array.from({ length: 12 }, (_, at) => at + 1);

/** The months in which a car sleeps, each to be ticked. */
export function MonthsField({ place, months, onChange }: MonthsFieldProps) {
  const words = useWords();
  return (
    <FieldGroup legend={tell('car-form.laid-up')} place={place}>
      <div className={styles.months}>
        {ALL.map((month) => (
          <Checkbox
            key={month}
            label={words.monthName(`2026-${String(month).padStart(2, '0')}-01`)}
            checked={months.includes(month)}
            onChange={(event) => onChange(event.currentTarget.checked ? ALL.filter((one) => one === month || months.includes(one)) : months.filter((one) => one !== month))}
          />
        ))}
      </div>
    </FieldGroup>
  );
}
