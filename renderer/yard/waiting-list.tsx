import { Button } from '@mantine/core';
import { memo, useId, useState, type ReactNode } from 'react';
import { Link } from 'wouter';
import type { LocalDate } from '../../shared-core/calendar/local-date.ts';
import { recheckWords } from '../ui/due-words.ts';
import { useWords } from '../ui/household.tsx';
import { MarkGlyph } from '../ui/marks/mark-glyph.tsx';
import { PutOffButton } from '../ui/put-off-button.tsx';
import { ReadingQuestion } from '../ui/reading-question.tsx';
import { tickFollowUp } from '../ui/tick-follow-up.ts';
import { tell, type WordKey } from '../ui/words/tell.ts';
import type { LaneWithMarks } from './lane-with-marks.ts';
import { nothingWaits, waitingGroups, type WaitingGroups } from './waiting-groups.ts';
import styles from './waiting.module.css';
import type { YardMark } from './yard-mark.ts';

interface WaitingListProps {
  readonly today: LocalDate;
  readonly lanes: readonly LaneWithMarks[];
}

/** What waiting costs: late things first, then questions, duties, and what comes soon. */
export const WaitingList = memo(function WaitingList({ today, lanes }: WaitingListProps) {
  const id = useId();
  const groups = waitingGroups(lanes, today);
  return (
    <section className={styles.panel} aria-labelledby={id}>
      <h2 id={id}>{tell('waiting.title')}</h2>
      {nothingWaits(groups) && <NothingWaits groups={groups} />}
      <SeenGroup title="waiting.unsafe" rows={groups.unsafe} today={today} />
      <MarkGroup title="waiting.late" marks={groups.late} second={(mark) => [mark.late ?? '', ...mark.effort]} />
      <Group title="waiting.questions" show={groups.questions.length > 0}>
        {groups.questions.map(({ lane, doubtful }) => (
          <li key={doubtful.reading} className={styles.row}>
            <MarkGlyph shape="question" filled={false} tone="plain" />
            <div className={styles.words}>
              <strong>{lane.name}</strong>
              <ReadingQuestion car={lane.name} doubtful={doubtful} />
            </div>
          </li>
        ))}
      </Group>
      <Group title="waiting.measured" show={groups.measured.length > 0}>
        {groups.measured.map(({ lane, told }) => (
          <li key={`${lane.id} ${told.key}`} className={styles.row}>
            <MarkGlyph shape={told.verdict === 'past-limit' ? 'worn' : 'question'} filled={told.verdict === 'past-limit'} tone={told.verdict === 'past-limit' ? 'late' : 'plain'} />
            <div className={styles.words}>
              <Link href={`/car/${lane.id}/wear`}>{tell('waiting.row', { car: lane.name, name: told.subject })}</Link>
              <p className={styles.soft}>{told.text}</p>
            </div>
          </li>
        ))}
      </Group>
      <MarkGroup title="waiting.obligations" marks={groups.obligations} second={(mark) => [mark.state === 'probably-due' ? mark.standing : mark.when, ...(mark.kind === 'recall' ? [mark.why] : [])]} />
      <FollowUpGroup rows={groups.followUps} />
      <MarkGroup title="waiting.today" marks={groups.today} second={(mark) => mark.effort} />
      <MarkGroup title="waiting.probably" marks={groups.probably} second={(mark) => [tell('waiting.probably-what'), ...mark.effort]} />
      <MarkGroup title="waiting.soon" marks={groups.soon} second={(mark) => [mark.when, ...mark.effort]} />
      <SeenGroup title="waiting.seen" rows={groups.seen} today={today} />
    </section>
  );
});

function NothingWaits({ groups: { next } }: { readonly groups: WaitingGroups }) {
  if (next === null) return <p className={styles.soft}>{tell('waiting.nothing-at-all')}</p>;
  return <p className={styles.soft}>{tell('waiting.nothing', { row: tell('waiting.row', { car: next.carName, name: next.name }), when: next.when })}</p>;
}

function Group({ title, show, after, children }: { readonly title: WordKey; readonly show: boolean; readonly after?: ReactNode; readonly children: ReactNode }) {
  const id = useId();
  if (!show) return null;
  return (
    <div className={styles.group}>
      <h3 id={id}>{tell(title)}</h3>
      <ul aria-labelledby={id}>{children}</ul>
      {after}
    </div>
  );
}

/** So many lines of a group stand open; a neglected car does not push the rest out of sight. */
const SHOWN = 12;

interface MarkGroupProps {
  readonly title: WordKey;
  readonly marks: readonly YardMark[];
  readonly second: (mark: YardMark) => readonly string[];
}

function MarkGroup({ title, marks, second }: MarkGroupProps) {
  const [all, setAll] = useState(false);
  return (
    <Group title={title} show={marks.length > 0} after={marks.length > SHOWN && <Button size="compact-sm" variant="subtle" aria-expanded={all} onClick={() => setAll(!all)}>{all ? tell('waiting.fewer') : tell('waiting.all', { n: marks.length })}</Button>}>
      {(all ? marks : marks.slice(0, SHOWN)).map((mark) => (
        <li key={mark.id} className={styles.row}>
          <MarkGlyph {...mark} />
          <div className={styles.words}>
            <Link href={mark.href}>{tell('waiting.row', { car: mark.carName, name: mark.name })}</Link>
            <p className={styles.soft}>{second(mark).join(' · ')}</p>
          </div>
        </li>
      ))}
    </Group>
  );
}

function FollowUpGroup({ rows }: { readonly rows: WaitingGroups['followUps'] }) {
  return (
    <Group title="waiting.follow-ups" show={rows.length > 0}>
      {rows.map(({ followUp, putOff, unit, mark }) => (
        <li key={mark.id} className={styles.ticked}>
          <MarkGlyph {...mark} />
          <div className={styles.words}>
            <Link href={mark.href}>{tell('waiting.row', { car: mark.carName, name: followUp.text })}</Link>
            <p className={styles.soft}>{mark.state === 'unknown' ? mark.why : mark.late ?? (mark.state === 'probably-due' ? mark.standing : mark.when)}</p>
            {putOff !== '' && <p className={styles.soft}>{putOff}</p>}
          </div>
          <Button size="compact-sm" variant="default" aria-label={tell('follow-ups.tick-for', { text: followUp.text })} onClick={() => void tickFollowUp(followUp)}>{tell('follow-ups.tick')}</Button>
          <PutOffButton followUp={followUp} unit={unit} />
        </li>
      ))}
    </Group>
  );
}

function SeenGroup({ title, rows, today }: { readonly title: WordKey; readonly rows: WaitingGroups['seen']; readonly today: LocalDate }) {
  const words = useWords();
  return (
    <Group title={title} show={rows.length > 0}>
      {rows.map(({ lane, seen }) => (
        <li key={seen.id} className={styles.row}>
          <MarkGlyph shape="eye" filled={false} tone={seen.severity === 'unsafe' ? 'late' : 'plain'} />
          <div className={styles.words}>
            <Link href={`/car/${lane.id}/observation/${seen.id}`}>{tell('waiting.row', { car: lane.name, name: seen.text })}</Link>
            <p className={styles.soft}>{[tell(`severity.${seen.severity}`), ...recheckWords(seen.recheckOn, today, words)].join(' · ')}</p>
          </div>
        </li>
      ))}
    </Group>
  );
}
