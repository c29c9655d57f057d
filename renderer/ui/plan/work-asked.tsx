import { Button } from '@mantine/core';
import { useEffect, useRef } from 'react';
import { Link } from 'wouter';
import { tell } from '../words/tell.ts';
import styles from './session.module.css';

interface WorkAskedProps {
  /** What stands to be lost, in a sentence. */
  readonly said: string;
  readonly sure: string;
  readonly onSure: () => void;
  readonly onLeave: () => void;
  /** Where its record is written, where its day has come. */
  readonly record?: string | undefined;
}

/** Asks before something is done that nothing undoes: work in hand that comes into no record, a seal. It is left as it is, done, or written down. */
export function WorkAsked({ said, sure, onSure, onLeave, record }: WorkAskedProps) {
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => place.current?.focus(), []);
  return (
    <div ref={place} tabIndex={-1} role="group" aria-label={said} className={styles.asked} onKeyDown={(event) => {
      if (event.key !== 'Escape') return;
      event.stopPropagation();
      onLeave();
    }}>
      <p>{said}</p>
      <div className={styles.buttons}>
        {record !== undefined && <Button component={Link} href={record} size="compact-md">{tell('closing.open')}</Button>}
        <Button size="compact-md" variant="default" onClick={onLeave}>{tell('session.leave')}</Button>
        <Button size="compact-md" variant="default" onClick={onSure}>{sure}</Button>
      </div>
    </div>
  );
}
