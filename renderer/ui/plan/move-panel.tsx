import { Button, NativeSelect } from '@mantine/core';
import { useEffect, useId, useState } from 'react';
import { localDate } from '../../../shared-core/calendar/local-date.ts';
import type { SessionsView } from '../../../shared-core/views/sessions-view-schema.ts';
import { DateField } from '../form/date-field.tsx';
import { useWords } from '../household.tsx';
import { note } from '../notices/notice-store.ts';
import { tell } from '../words/tell.ts';
import styles from './move-panel.module.css';
import { MoveOutcome } from './move-outcome.tsx';
import { sessionDay, sessionTitle } from './plan-words.ts';
import type { MoveControl } from './use-move.ts';
import type { Spot, TriedMove } from './move-store.ts';

interface MovePanelProps {
  readonly view: SessionsView;
  readonly move: MoveControl;
  /** It was kept or put back: the focus has to go somewhere. */
  readonly onEnd: () => void;
  /** What the keys do, where the thing that is moved can be moved by keys. */
  readonly hint?: string;
}

/** What is being moved, where to, and what that changes: by fields for who neither drags nor uses the keys of a post. */
export function MovePanel({ view, move, onEnd, hint }: MovePanelProps) {
  if (move.move === null) return null;
  return <Panel key={move.move.subject.title} view={view} move={move} now={move.move} onEnd={onEnd} hint={hint} />;
}

function Panel({ view, move, now, onEnd, hint }: Omit<MovePanelProps, 'hint'> & { readonly now: TriedMove; readonly hint: string | undefined }) {
  const words = useWords();
  const id = useId();
  const { subject, to, by } = now;
  useEffect(() => {
    if (by === 'fields') document.getElementById(`${id}-day`)?.focus();
  }, [id, by]);
  const others = view.sessions.filter((one) => !one.passed && (subject.from === null || one.day !== subject.from.day || one.place !== subject.from.place));
  const keep = () => void keepMove(move, view, words).then((kept) => kept && onEnd());
  const back = () => {
    move.putBack();
    onEnd();
  };
  return (
    <section className={styles.panel} aria-label={tell('move.place')} data-place={id} onKeyDown={(event) => event.key === 'Escape' && back()}>
      <h2 className={styles.title}>{tell('move.title', { what: subject.title })}</h2>
      <MoveOutcome now={now} where={whereWords(to, view, words)} />
      <div className={styles.fields}>
        <DayField id={`${id}-day`} to={to} onDay={(day) => move.place({ ...to, day })} />
        <NativeSelect label={tell('move.where')} value={to.place} onChange={(event) => move.place({ ...to, place: event.currentTarget.value })} data={view.places.map((one) => ({ value: one.id, label: one.name }))} />
        {(subject.part || subject.from === null) && others.length > 0 && (
          <NativeSelect
            label={tell('move.join')}
            value={others.find((one) => one.day === to.day && one.place === to.place)?.id ?? ''}
            onChange={(event) => {
              const chosen = others.find((one) => one.id === event.currentTarget.value);
              if (chosen !== undefined) move.place({ day: chosen.day, place: chosen.place });
            }}
            data={[{ value: '', label: tell('move.join-none') }, ...others.map((one) => ({ value: one.id, label: sessionTitle(one, view.today, words) }))]}
          />
        )}
        <div className={styles.buttons}>
          <Button onClick={keep} aria-disabled={now.keeping}>{tell('move.keep')}</Button>
          <Button variant="default" onClick={back}>{tell('move.back')}</Button>
        </div>
      </div>
      {hint !== undefined && <p className={styles.hint}>{hint}</p>}
    </section>
  );
}

/** The day as it is typed; it moves as soon as it is a whole date, and follows what is dragged. */
function DayField({ id, to, onDay }: { readonly id: string; readonly to: Spot; readonly onDay: (day: Spot['day']) => void }) {
  const [typed, setTyped] = useState<{ readonly text: string; readonly at: string } | null>(null);
  return (
    <DateField
      id={id}
      error={undefined}
      label={tell('move.day')}
      value={typed !== null && typed.at === to.day ? typed.text : to.day}
      onChange={(text) => {
        const date = localDate(text);
        setTyped(date.ok ? null : { text, at: to.day });
        if (date.ok) onDay(date.value);
      }}
    />
  );
}

type Words = ReturnType<typeof useWords>;

/** Keeps what is moved where it stands, and says so with its undo; false where it was refused. */
export async function keepMove(move: MoveControl, view: SessionsView, words: Words): Promise<boolean> {
  const { move: now } = move;
  if (now === null) return false;
  const kept = await move.keep();
  if (kept !== null) note([tell('session.moved', { title: whereWords(now.to, view, words) }), ...kept.notes].join(' '), kept.undo);
  return kept !== null;
}

function whereWords({ day, place }: Spot, { places, today }: SessionsView, words: Words): string {
  return tell('session.title', { day: sessionDay(day, today, words), place: places.find((one) => one.id === place)?.name ?? place });
}
