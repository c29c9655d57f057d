import type { ReactNode } from 'react';
import styles from './doing.module.css';

interface BigButtonProps {
  readonly look?: 'main' | 'plain';
  readonly onPress: () => void;
  readonly pressed?: boolean;
  readonly label?: string;
  readonly children: ReactNode;
}

/** A button for a gloved hand: 64 px high. */
export function BigButton({ look = 'plain', onPress, pressed, label, children }: BigButtonProps) {
  return <button type="button" className={styles.big} data-look={look} aria-pressed={pressed} aria-label={label} onClick={onPress}>{children}</button>;
}
