import { Button } from '@mantine/core';
import { Section } from '../../ui/section.tsx';
import { isWordKey, tell } from '../../ui/words/tell.ts';
import type { OpenSheet } from '../car-sheet.ts';
import type { Intake } from './answers.ts';
import styles from './intake.module.css';

interface MissingSectionProps {
  readonly missing: Intake['first'];
  readonly open: OpenSheet;
  /** Items come from a starting set. */
  readonly onSet: () => void;
}

/** What is missing of the car itself, to be entered first, each with the way to enter it. */
export function MissingSection({ missing, open, onSet }: MissingSectionProps) {
  if (missing.length === 0) return null;
  const ways: Readonly<Record<string, () => void>> = {
    'intake-no-reading': () => open({ kind: 'reading' }),
    'intake-no-registration': () => open({ kind: 'car' }),
    'intake-no-items': onSet,
    'intake-no-obligations': () => open({ kind: 'obligation', obligation: null }),
  };
  return (
    <Section title={tell('advice.first')}>
      <ul className={styles.advice}>
        {missing.map(({ code, text }) => {
          const [way, label] = [ways[code], `missing.${code}`];
          return (
            <li key={code}>
              <p>{text}</p>
              {way !== undefined && isWordKey(label) && <Button size="compact-sm" variant="default" onClick={way}>{tell(label)}</Button>}
            </li>
          );
        })}
      </ul>
    </Section>
  );
}
