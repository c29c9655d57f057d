import { Popover, TextInput } from '@mantine/core';
import { useRef, useState } from 'react';
import { say } from '../../shared-core/result/words/say.ts';
import type { Lane } from '../../shared-core/views/yard-view.ts';
import { change, type Changed } from '../ui/change.ts';
import { FieldsRead } from '../ui/form/read-fields.ts';
import { sayFault } from '../ui/form/say-fault.ts';
import { useWords } from '../ui/household.tsx';
import { note } from '../ui/notices/notice-store.ts';
import { ReadingQuestion, type DoubtfulReading } from '../ui/reading-question.tsx';
import { tell } from '../ui/words/tell.ts';
import styles from './lane-reading.module.css';

interface LaneReadingProps {
  readonly lane: Lane;
  readonly letter: string | null;
  readonly open: boolean;
  readonly onOpen: (open: boolean) => void;
}

/** A reading typed straight into a lane: R in the lane, or R and the lane's letter from anywhere in the yard, then the figures and Enter. One that is set aside is asked about on the spot. */
export function LaneReading({ lane, letter, open, onOpen }: LaneReadingProps) {
  const words = useWords();
  const button = useRef<HTMLButtonElement>(null);
  const [typed, setTyped] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const [doubtful, setDoubtful] = useState<DoubtfulReading | null>(null);

  const leave = () => {
    onOpen(false);
    setFault(null);
    setDoubtful(null);
    requestAnimationFrame(() => button.current?.focus());
  };
  const record = async () => {
    const read = new FieldsRead();
    const value = read.number('value', typed);
    const whole = read.whole({ car: lane.id, value, unit: lane.unit });
    if (!whole.ok) return setFault(sayFault(whole.refusal));
    const result = await change('reading.record', whole.value);
    if (!result.ok) return setFault(sayFault(result.refusal));
    setTyped('');
    setFault(null);
    const aside = result.value.state === 'set-aside';
    note(tell(aside ? 'reading.recorded-aside' : 'reading.recorded', { car: lane.name, value: words.distance(value, lane.unit) }), result.value.undo);
    if (aside) setDoubtful(doubtfulOf(result.value));
    else leave();
  };

  if (!open) {
    return (
      <button ref={button} type="button" data-tour="reading" className={styles.button} aria-label={letter === null ? tell('lane.reading-for', { car: lane.name }) : tell('lane.reading-letter', { letter: letter.toUpperCase(), car: lane.name })} onClick={() => onOpen(true)}>
        {letter !== null && <><kbd className={styles.letter}>{letter.toUpperCase()}</kbd> </>}
        {tell('lane.reading')}
      </button>
    );
  }
  return (
    <Popover opened={doubtful !== null} onChange={(shown) => !shown && leave()} position="bottom-start" width={360} trapFocus withRoles={false} withinPortal={false} transitionProps={{ duration: 0 }} shadow="md">
      <Popover.Target>
        <div className={styles.field}>
          <TextInput
            size="xs"
            autoFocus
            inputMode="numeric"
            aria-label={tell('lane.reading-label', { car: lane.name, unit: tell(`unit.${lane.unit}`) })}
            placeholder={tell('lane.reading-hint')}
            value={typed}
            error={fault}
            rightSection={tell(`unit.${lane.unit}`)}
            onChange={(event) => setTyped(event.currentTarget.value)}
            onKeyDown={(event) => {
              if (event.key === 'Enter') void record();
              if (event.key === 'Escape') leave();
            }}
            onBlur={() => typed === '' && doubtful === null && onOpen(false)}
          />
        </div>
      </Popover.Target>
      <Popover.Dropdown>
        {doubtful !== null && (
          <>
            <p className={styles.aside}>{tell('reading.set-aside')}</p>
            <ReadingQuestion car={lane.name} doubtful={lane.doubtful.find((one) => one.reading === doubtful.reading) ?? doubtful} onSettled={leave} />
          </>
        )}
      </Popover.Dropdown>
    </Popover>
  );
}

function doubtfulOf({ reading, code, repairs }: Changed<'reading.record'>): DoubtfulReading {
  const text = say({ key: `doubt-${code ?? 'decrease'}`, values: {} });
  return { reading: reading.id, date: reading.date, value: reading.typed.value, unit: reading.typed.unit, text, repairs };
}
