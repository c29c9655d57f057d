import { useEffect, useState } from 'react';
import type { Doing } from '../../../shared-core/views/doing-schema.ts';
import { change } from '../../ui/change.ts';
import { minutesWords } from '../../ui/due-words.ts';
import { hourOf } from '../../ui/hour-of.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { BigButton } from './big-button.tsx';
import styles from './doing.module.css';

interface TimeBarProps {
  readonly doing: Doing;
  /** The task of the step in hand; null where several share it. */
  readonly task: string | null;
}

/** The time of the task in hand, with its pause; what ran on while nobody was there is asked about. */
export function TimeBar({ doing, task }: TimeBarProps) {
  const { running, session } = doing;
  const seconds = useSecondsSince(doing.now, running !== null);
  const [asked, setAsked] = useState(doing.leftRunning);
  const time = async (run: boolean, upTo: string | null = null) => {
    const reply = await change('work.time', { session: session.id, task: run ? task : null, run, upTo });
    const paused = reply.ok ? reply.value.paused.flatMap(({ to }) => to ?? []).at(-1) : undefined;
    if (paused !== undefined) note(tell('doing.paused-elsewhere', { time: hourOf(paused) }));
  };
  const own = doing.tasks.find((one) => one.key === task);
  const spent = (own?.seconds ?? doing.sharedSeconds) + (running !== null && running.task === task ? seconds : 0);
  if (asked && running !== null && doing.lastSign !== null) {
    const { lastSign } = doing;
    const answer = (upTo: string | null) => {
      setAsked(false);
      void time(true, upTo);
    };
    return (
      <div className={styles.time} role="group" aria-label={tell('doing.time')}>
        <p>{tell('doing.ran-on', { name: running.name, time: hourOf(lastSign), minutes: minutesWords(Math.max(1, Math.round(secondsFrom(lastSign, doing.now) / 60))) })}</p>
        <BigButton onPress={() => answer(lastSign)}>{tell('doing.count-not')}</BigButton>
        <BigButton onPress={() => answer(doing.now)}>{tell('doing.count-all')}</BigButton>
      </div>
    );
  }
  return (
    <div className={styles.time} role="group" aria-label={tell('doing.time')}>
      <p><span className={styles.clock}>{shown(spent)}</span> {own === undefined ? tell('doing.time-shared') : own.name}{own?.likelyMinutes != null && <span className={styles.soft}> · {tell('doing.time-likely', { minutes: minutesWords(own.likelyMinutes) })}</span>}</p>
      {running === null ? <BigButton onPress={() => void time(true)}>{tell('doing.time-run')}</BigButton> : <BigButton onPress={() => void time(false)}>{tell('doing.time-pause')}</BigButton>}
    </div>
  );
}

/** Whole seconds since an answer came, while the time runs. */
function useSecondsSince(answer: string, runs: boolean): number {
  const [at, setAt] = useState({ answer, seconds: 0 });
  useEffect(() => {
    if (!runs) return undefined;
    const began = performance.now();
    const timer = setInterval(() => setAt({ answer, seconds: Math.floor((performance.now() - began) / 1000) }), 1000);
    return () => clearInterval(timer);
  }, [answer, runs]);
  return at.answer === answer && runs ? at.seconds : 0;
}

function secondsFrom(from: string, to: string): number {
  return Math.max(0, (Date.parse(to) - Date.parse(from)) / 1000);
}

/** @example shown(3725) //=> '1:02:05' */
function shown(seconds: number): string {
  const [hours, minutes, rest] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  return `${hours}:${String(minutes).padStart(2, '0')}:${String(rest).padStart(2, '0')}`;
}
