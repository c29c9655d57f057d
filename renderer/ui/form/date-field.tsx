import { ActionIcon, TextInput } from '@mantine/core';
import { useRef, useState } from 'react';
import { localDate } from '../../../shared-core/calendar/local-date.ts';
import { useWords } from '../household.tsx';
import { tell } from '../words/tell.ts';
import styles from './date-field.module.css';
import { datePattern, readDate } from './read-date.ts';

interface DateFieldProps {
  readonly id: string;
  readonly error: string | undefined;
  readonly label: string;
  readonly description?: string;
  /** The date as YYYY-MM-DD, or what was typed while it is none; empty: no date. */
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly max?: string;
  readonly 'data-autofocus'?: boolean;
}

/** A date to be typed as the household writes dates, or chosen from a calendar. */
export function DateField({ value, onChange, max, label, ...rest }: DateFieldProps) {
  const words = useWords();
  const calendar = useRef<HTMLInputElement>(null);
  const [typing, setTyping] = useState<string | null>(null);
  const isDate = localDate(value).ok;
  return (
    <div className={styles.place}>
      <TextInput
        {...rest}
        label={label}
        autoComplete="off"
        placeholder={datePattern(words.locale)}
        value={typing ?? (isDate ? words.date(value) : value)}
        onChange={(event) => {
          const text = event.currentTarget.value;
          setTyping(text);
          onChange(readDate(text, words.locale) ?? text.trim());
        }}
        onBlur={() => setTyping(null)}
        rightSection={
          <ActionIcon variant="subtle" aria-label={tell('form.calendar-for', { label })} onClick={() => calendar.current?.showPicker()}>
            <CalendarSign />
          </ActionIcon>
        }
      />
      <input ref={calendar} type="date" className={styles.calendar} tabIndex={-1} aria-hidden="true" value={isDate ? value : ''} {...(max === undefined ? {} : { max })} onChange={(event) => onChange(event.currentTarget.value)} />
    </div>
  );
}

function CalendarSign() {
  return (
    <svg width="16" height="16" viewBox="0 0 16 16" fill="none" stroke="currentColor" strokeWidth="1.5" aria-hidden="true">
      <path d="M2 4 H14 V14 H2 Z M2 7 H14 M5 2 V5 M11 2 V5" strokeLinejoin="round" />
    </svg>
  );
}
