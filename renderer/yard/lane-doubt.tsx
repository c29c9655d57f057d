import { Popover } from '@mantine/core';
import { useRef, useState } from 'react';
import type { Lane } from '../../shared-core/views/yard-view.ts';
import { ReadingQuestion } from '../ui/reading-question.tsx';
import { tell } from '../ui/words/tell.ts';
import styles from './lane-reading.module.css';

/** Says in a lane that a reading of the car is in doubt, and asks about it where one is. */
export function LaneDoubt({ lane }: { readonly lane: Lane }) {
  const button = useRef<HTMLButtonElement>(null);
  const [open, setOpen] = useState(false);
  const count = lane.doubtful.length;
  const show = (shown: boolean) => {
    setOpen(shown);
    if (!shown) requestAnimationFrame(() => button.current?.focus());
  };
  if (count === 0) return null;
  return (
    <Popover opened={open} onChange={show} position="bottom-start" width={400} trapFocus withRoles={false} withinPortal={false} transitionProps={{ duration: 0 }} shadow="md">
      <Popover.Target>
        <button ref={button} type="button" className={styles.doubt} aria-expanded={open} aria-label={tell('lane.doubt-of', { n: count, car: lane.name })} onClick={() => show(!open)}>
          {tell('lane.doubt', { n: count })}
        </button>
      </Popover.Target>
      <Popover.Dropdown className={styles.questions ?? ''}>
        {lane.doubtful.map((doubtful) => <ReadingQuestion key={doubtful.reading} car={lane.name} doubtful={doubtful} onSettled={() => count === 1 && show(false)} />)}
      </Popover.Dropdown>
    </Popover>
  );
}
