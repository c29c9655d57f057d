import { Checkbox } from '@mantine/core';
import { Link, useLocation } from 'wouter';
import type { Closing } from '../../../shared-core/views/closing-schema.ts';
import { Asked } from '../../ui/asked.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { bindText, bindTick } from '../../ui/form/bind.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { useEntry } from '../../ui/form/use-entry.ts';
import { minutesWords } from '../../ui/due-words.ts';
import { hourOf } from '../../ui/hour-of.ts';
import { useHousehold, useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { sessionTitle } from '../../ui/plan/plan-words.ts';
import { ScreenTitle } from '../../ui/screen-title.tsx';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';
import { CarClosing } from './car-closing.tsx';
import { leftOver, UNCHANGED } from './closing-changes.ts';
import styles from './closing.module.css';
import waysStyles from '../ways.module.css';
import { sendClosing } from './send-closing.ts';
import { WasteLines } from './waste-lines.tsx';

/** A session is closed: all that was ticked, read, timed and used is looked over once, and becomes the records of its cars. */
export function ClosingScreen({ session }: { readonly session: string }) {
  const words = useWords();
  const answer = useAsk('work.closing', { session }, { hold: true });
  const title = answer.state === 'answered' ? tell('closing.title-of', { title: sessionTitle(answer.value.session, answer.value.today, words) }) : tell('closing.title');
  const back = <Link href="/sessions">{tell('job.back')}</Link>;
  return (
    <div className={styles.screen}>
      <div className={styles.top}>
        <p className={waysStyles.ways}>{back} <Link href={`/sessions/${session}/work`}>{tell('closing.to-work')}</Link></p>
        <ScreenTitle>{title}</ScreenTitle>
      </div>
      <Asked answer={answer} onward={back}>{(closing) => <ClosingForm closing={closing} />}</Asked>
    </div>
  );
}

function ClosingForm({ closing }: { readonly closing: Closing }) {
  const [, go] = useLocation();
  const { currency } = useHousehold();
  const entry = useEntry({
    key: `session.close ${closing.session.id}`,
    start: UNCHANGED,
    send: (draft) => sendClosing(draft, closing, currency),
    onDone: ({ records, left, undo }) => {
      const aside = records.some((one) => one.reading?.state === 'set-aside');
      note([tell('closing.done', { n: records.length }), ...(left.length === 0 ? [] : [tell('closing.done-left', { n: left.length })]), ...(aside ? [tell('closing.done-aside')] : [])].join(' '), undo);
      go('/sessions');
    },
  });
  const { draft, set } = entry;
  const wastes = leftOver(closing, draft);
  return (
    <EntryForm entry={entry} submit={tell('closing.submit')} onCancel={() => go('/sessions')}>
      <div className={styles.reading}><DateField {...entry.at('date')} value={draft.date ?? closing.date} onChange={(date) => set({ date })} max={closing.today} label={tell('closing.date')} /></div>
      {/* Asked only where something is unlikely. */}
      {(draft.sure || entry.at('sure').error !== undefined) && <Checkbox {...bindTick(entry, 'sure')} error={entry.at('sure').error !== undefined} label={tell('closing.sure')} />}
      {closing.ranOn !== null && <p role="note">{tell('closing.ran-on', { name: closing.ranOn.name, time: hourOf(closing.ranOn.after), minutes: minutesWords(closing.ranOn.minutes) })}</p>}
      {closing.cars.map((car, at) => (
        <CarClosing key={car.car} car={car} told={draft.cars[car.car] ?? {}} at={at} place={entry.at} group={entry.atGroup} currency={currency} garage={closing.session.placeKind === 'garage'} onChange={(next) => set({ cars: { ...draft.cars, [car.car]: { ...draft.cars[car.car], ...next } } })} />
      ))}
      {wastes.length > 0 && <WasteLines wastes={wastes} told={draft.wastes} onChange={(told) => set({ wastes: told })} where={bindText(entry, 'wasteWhere', 'wastes')} />}
    </EntryForm>
  );
}
