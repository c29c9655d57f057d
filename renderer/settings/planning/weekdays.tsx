import { Checkbox } from '@mantine/core';
import { FieldGroup } from '../../ui/form/fields.tsx';
import type { FieldPlace } from '../../ui/form/use-entry.ts';
import { tell, type WordKey } from '../../ui/words/tell.ts';
import styles from './planning.module.css';

/** Monday to Sunday, as ISO 8601 counts them. */
const WEEKDAYS = [1, 2, 3, 4, 5, 6, 7] as const;

/** The names of days of the week, by their numbers. @example weekdayNames([6, 7]) //=> 'Sat, Sun' */
export function weekdayNames(days: readonly number[]): string {
  return days.map((day) => tell(`weekday.${day}` as WordKey)).join(', ');
}

interface WeekdaysFieldProps {
  readonly legend: string;
  readonly place: FieldPlace;
  readonly value: readonly number[];
  readonly onChange: (days: readonly number[]) => void;
}

/** Days of the week to be ticked. */
export function WeekdaysField({ legend, place, value, onChange }: WeekdaysFieldProps) {
  return (
    <FieldGroup legend={legend} place={place}>
      <div className={styles.ticks}>
        {WEEKDAYS.map((day) => (
          <Checkbox key={day} label={tell(`weekday.${day}`)} checked={value.includes(day)} onChange={(event) => onChange(event.currentTarget.checked ? [...value, day].sort((a, b) => a - b) : value.filter((one) => one !== day))} />
        ))}
      </div>
    </FieldGroup>
  );
}
