import { Button, SegmentedControl } from '@mantine/core';
import { useDeferredValue, useMemo, useState, type ReactNode } from 'react';
import type { YardView } from '../../shared-core/views/yard-view.ts';
import { Asked } from '../ui/asked.tsx';
import { PlanBar } from '../ui/plan/plan-bar.tsx';
import { SessionSheet } from '../ui/plan/session-sheet.tsx';
import { useSessions } from '../ui/plan/use-sessions.ts';
import { useWords } from '../ui/household.tsx';
import { ScreenTitle } from '../ui/screen-title.tsx';
import { useAsk } from '../ui/use-ask.ts';
import { tell } from '../ui/words/tell.ts';
import { aheadSentence } from './ahead-sentence.ts';
import { EmptyYard } from './empty-yard.tsx';
import { LaneSheet } from './lane-sheet.tsx';
import { MarkTable } from './mark-table.tsx';
import { marksOfLane } from './marks-of-lane.ts';
import { SessionTable } from './session-table.tsx';
import { SpanChoice } from './span-choice.tsx';
import { spanHolding } from './calendar-sight.ts';
import { useLaneReadings } from './use-lane-readings.ts';
import { usePosts } from './use-posts.tsx';
import { useSight } from './use-sight.ts';
import { useYardKeys } from './use-yard-keys.ts';
import { WaitingList } from './waiting-list.tsx';
import styles from './yard.module.css';

/** The yard: all cars at a glance, on one calendar. It comes when cars and sessions are there, all at once: nothing jumps under one's hand. */
export function YardScreen() {
  const answer = useAsk('yard.show', {});
  const sessions = useSessions();
  return (
    <div className={styles.screen}>
      <ScreenTitle>{tell('yard.title')}</ScreenTitle>
      <Asked answer={answer}>{(view) => (view.lanes.length === 0 ? <EmptyYard /> : <WhenHeard sessions={sessions}>{() => <Yard view={view} sessions={sessions} />}</WhenHeard>)}</Asked>
    </div>
  );
}

function WhenHeard({ sessions, children }: { readonly sessions: ReturnType<typeof useSessions>; readonly children: () => ReactNode }) {
  return sessions.state === 'asking' ? <Asked answer={sessions}>{() => null}</Asked> : children();
}

type ShowAs = 'lanes' | 'table';

interface YardProps {
  readonly view: YardView;
  readonly sessions: ReturnType<typeof useSessions>;
}

function Yard({ view, sessions }: YardProps) {
  const words = useWords();
  const control = useSight(view.today);
  const readings = useLaneReadings(view.lanes.map((lane) => lane.id));
  const [unfolded, setUnfolded] = useState(false);
  const [showAs, setShowAs] = useState<ShowAs>('lanes');
  // Many cars take a moment to draw: the press is seen at once, and what it asks for follows.
  const [shownAs, shownUnfolded] = [useDeferredValue(showAs), useDeferredValue(unfolded)];
  const standing = sessions.state === 'answered' ? sessions.value : null;
  const posts = usePosts(standing);
  useYardKeys({ control, readings: { ...readings, key: (key, lane) => readings.key(key, lane) && (setShowAs('lanes'), true) } });
  const lanes = useMemo(() => view.lanes.map((lane) => ({ lane, marks: marksOfLane(lane, view.today, words) })), [view, words]);
  return (
    <>
      <p className={styles.today}>{words.longDate(view.today)}</p>
      <p className={styles.sentence}>{aheadSentence(view.ahead)}</p>
      {standing !== null && <PlanBar view={standing} onPlan={(plan) => plan.sessions.length > 0 && control.setSpan(spanHolding(view.today, plan.lastDay))} />}
      {sessions.state !== 'asking' && standing === null && <Asked answer={sessions}>{() => null}</Asked>}
      <div className={styles.columns}>
        <div className={styles.main}>
          <p role="status" className={readings.lettersShown ? styles.letters : 'only-said'}>{readings.lettersShown ? tell('readings.letters') : ''}</p>
          <div className={styles.choices}>
            <SegmentedControl<ShowAs> aria-label={tell('yard.view')} value={showAs} onChange={setShowAs} data={[{ value: 'lanes', label: tell('yard.lanes') }, { value: 'table', label: tell('yard.table') }]} />
            {showAs === 'lanes' && <Button className={styles.unfold ?? ''} variant="subtle" onClick={() => setUnfolded(!unfolded)}>{tell(unfolded ? 'yard.fold-all' : 'yard.unfold-all')}</Button>}
            {showAs === 'lanes' && <SpanChoice control={control} />}
          </div>
          {shownAs === 'lanes' ? <LaneSheet today={view.today} lanes={lanes} control={control} unfolded={shownUnfolded} readings={readings} posts={posts} /> : <MarkTable lanes={lanes} />}
          {shownAs === 'table' && standing !== null && <SessionTable view={standing} onOpen={posts.open} />}
          {shownAs === 'table' && posts.panel}
        </div>
        <WaitingList today={view.today} lanes={lanes} />
      </div>
      {standing !== null && <SessionSheet view={standing} session={posts.opened} onClose={posts.close} onMove={posts.lift} />}
    </>
  );
}
