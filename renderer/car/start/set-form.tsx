import type { CarView } from '../../../shared-core/views/car-view.ts';
import { change } from '../../ui/change.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { HistoryChoice, SetChoice } from './set-choice.tsx';
import { chosenSet, FITTING, itemsOf, leftOut, missingOf, type ChosenSet, type MissingOfSet, type SetDraft } from './set-draft.ts';
import { NearLines } from './near-lines.tsx';
import { SetLines, type PrintedDates } from './set-lines.tsx';
import styles from './start.module.css';
import { useStartingSets, type StartingSets } from './use-starting-sets.ts';

interface SetFormProps {
  readonly view: CarView;
  readonly onClose: () => void;
}

/** Adds what a car has not yet of a starting set. */
export function SetForm({ view, onClose }: SetFormProps) {
  const sets = useStartingSets({ car: view.car.id });
  return sets === null ? <p role="status">{tell('set.asking')}</p> : <SetFields view={view} sets={sets} onClose={onClose} />;
}

interface Draft {
  readonly start: SetDraft;
  readonly printed: Readonly<Record<string, string>>;
}
const START: Draft = { start: FITTING, printed: {} };

function SetFields({ view: { car }, sets, onClose }: SetFormProps & { readonly sets: StartingSets }) {
  const entry = useEntry({
    key: `items.start ${car.id}`,
    start: START,
    send: (draft) => {
      const whole = composeStart(draft, sets, car.id);
      return whole.ok ? change('items.start', whole.value) : Promise.resolve(whole);
    },
    onDone: ({ items, undo }) => {
      note(tell('set.done', { n: items.length }), undo);
      onClose();
    },
  });
  const { start, printed } = entry.draft;
  const chosen = chosenSet(start, sets);
  const set = itemsOf(chosen.set, sets);
  const missing = missingOf(set);
  const there = set.length - missing.fresh.length - missing.near.length;
  const source = sets.sets.find((one) => one.key === chosen.set)?.source;
  const asked: PrintedDates = { dates: printed, place: (key) => entry.at(`printedDates.${key}`), onChange: (dates) => entry.set({ printed: dates }) };
  const take = (change: Partial<SetDraft>) => entry.set({ start: { ...start, ...change } });
  return (
    <EntryForm entry={entry} submit={tell('set.submit')} onCancel={onClose}>
      <FieldRow>
        <SetChoice sets={sets} chosen={chosen} place={entry.at} mayBeNone={false} onChange={take} />
        <HistoryChoice chosen={chosen} place={entry.at} onChange={take} />
      </FieldRow>
      {source !== undefined && <p className={styles.soft}>{tell('set.marked', { source })}</p>}
      {there > 0 && <p>{there === set.length ? tell('set.all-there') : tell('set.there', { n: there })}</p>}
      <NearLines near={missing.near} unit={car.unit} besides={start.besides} onBesides={(besides) => take({ besides })} printed={asked} />
      <SetLines items={missing.fresh} unit={car.unit} omit={chosen.omit} onOmit={(omit) => take({ omit })} printed={asked} />
    </EntryForm>
  );
}

function composeStart({ start, printed }: Draft, sets: StartingSets, car: string) {
  const read = new FieldsRead();
  const chosen: ChosenSet = chosenSet(start, sets);
  const { set, history } = chosen;
  const items = itemsOf(set, sets);
  const missing: MissingOfSet = missingOf(items);
  const omit = leftOut(chosen, missing, start);
  const taken = items.filter((item) => item.printedDate && !item.there && !omit.includes(item.key));
  const dates = taken.flatMap(({ key }) => {
    const date = read.dateOrNull(`printedDates.${key}`, printed[key] ?? '');
    return date === null ? [] : [[key, date] as const];
  });
  return read.whole({ car, ...(set === null ? {} : { set }), history, omit, printedDates: Object.fromEntries(dates) });
}
