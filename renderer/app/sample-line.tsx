import { Button } from '@mantine/core';
import { useLocation } from 'wouter';
import { change } from '../ui/change.ts';
import { sayFault } from '../ui/form/say-fault.ts';
import { note } from '../ui/notices/notice-store.ts';
import { showTour } from '../ui/tour-store.ts';
import { tell } from '../ui/words/tell.ts';
import styles from './sample-line.module.css';

/** Says quietly that all of this is invented, and leads out of it. */
export function SampleLine() {
  const [, go] = useLocation();
  const leave = async () => {
    const result = await change('sample.leave', {});
    note(result.ok ? tell('sample.left') : sayFault(result.refusal));
    if (result.ok) go('/');
  };
  const lookAround = () => {
    go('/');
    showTour(0);
  };
  return (
    <aside className={styles.line} aria-label={tell('sample.line')}>
      <span>{tell('sample.line')}</span>
      <Button size="compact-sm" variant="subtle" onClick={lookAround}>{tell('tour.offer')}</Button>
      <Button size="compact-sm" variant="subtle" onClick={() => void leave()}>{tell('sample.leave')}</Button>
    </aside>
  );
}
