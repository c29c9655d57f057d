import type { ReactNode } from 'react';
import styles from './doing.module.css';

interface BigButtonProps {
  readonly look?: 'main' | 'plain';
  readonly onPress?: () => void;
  /** It sends the form around it, as Enter does in a field. */
  readonly submits?: boolean;
  readonly pressed?: boolean;
  readonly label?: string;
  readonly children: ReactNode;
}

/** A button for a gloved hand: 64 px high. */
export function BigButton({ look = 'plain', onPress, submits = false, pressed, label, children }: BigButtonProps) {
  return <button type={submits ? 'submit' : 'button'} className={styles.big} data-look={look} aria-pressed={pressed} aria-label={label} onClick={onPress}>{children}</button>;
}
