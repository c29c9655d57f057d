import { Button, NativeSelect, TextInput } from '@mantine/core';
import { amountText } from '../../../shared-core/units/money.ts';
import type { BookingView } from '../../../shared-core/views/booking-view-schema.ts';
import { change } from '../../ui/change.ts';
import { bindDate, bindText } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { withPapers } from '../../ui/form/keep-papers.ts';
import { PaperField } from '../../ui/form/paper-field.tsx';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';

interface Said {
  readonly as: string;
  readonly charge: string;
  readonly text: string;
  readonly note: string;
}

/** Says what came back: each line wanted was done or not, each line not wanted was left or done all the same, and what was done unasked. */
export function BackForm({ view, onClose }: { readonly view: BookingView; readonly onClose: () => void }) {
  const { currency, today, session } = view;
  const { wanted = [], unwanted = [], cameBack = null } = view.booking ?? {};
  const shown = (minor: number | null | undefined) => (minor == null ? '' : amountText(minor, currency));
  const begun = session.day > today ? today : session.day;
  const entry = useEntry({
    key: `booking.back ${session.id}`,
    start: {
      doneOn: (cameBack?.doneOn ?? begun) as string, total: shown(cameBack?.chargedMinor), note: cameBack?.note ?? '', file: null as File | null,
      asked: wanted.map((line): Said => {
        const said = cameBack?.lines.find((one) => one.wanted === line.id);
        return { text: line.text, as: said?.as ?? (cameBack === null ? 'done' : 'unsaid'), charge: shown(said?.chargedMinor), note: said?.note ?? '' };
      }) as readonly Said[],
      against: unwanted.map((line): Said => {
        const said = cameBack?.lines.find((one) => one.unwanted === line.id);
        return { text: line.text, as: said === undefined ? 'left' : 'all-same', charge: shown(said?.chargedMinor), note: said?.note ?? '' };
      }) as readonly Said[],
      more: (cameBack?.lines ?? []).filter((one) => one.as === 'done-unasked').map((one): Said => ({ text: one.text, as: 'done', charge: shown(one.chargedMinor), note: one.note })) as readonly Said[],
    },
    send: async (draft) => {
      const read = new FieldsRead();
      const amount = (one: Said, path: string) => read.moneyOrNull(path, one.charge, currency);
      const lines = [
        ...draft.asked.flatMap((one, at) => (one.as === 'unsaid' ? [] : [{ wanted: wanted[at]?.id ?? null, as: one.as === 'done' ? ('done' as const) : ('not-done' as const), note: one.note, chargedMinor: one.as === 'done' ? amount(one, `asked.${at}`) : null }])),
        ...draft.against.flatMap((one, at) => (one.as === 'left' ? [] : [{ unwanted: unwanted[at]?.id ?? null, as: 'not-wanted-done' as const, note: one.note, chargedMinor: amount(one, `against.${at}`) }])),
        ...draft.more.flatMap((one, at) => (one.text.trim() === '' ? [] : [{ as: 'done-unasked' as const, text: one.text, note: one.note, chargedMinor: amount(one, `more.${at}`) }])),
      ];
      const doneOn = read.date('doneOn', draft.doneOn) ?? today;
      const whole = read.whole({ session: session.id, doneOn, lines, chargedMinor: read.moneyOrNull('chargedMinor', draft.total, currency), note: draft.note });
      if (!whole.ok) return whole;
      return withPapers(draft.file === null ? [] : [draft.file], ([paper]) => change('booking.came-back', { ...whole.value, paper: paper ?? cameBack?.paper ?? null }));
    },
    onDone: ({ undo }) => {
      note(tell('back.saved'), undo);
      onClose();
    },
  });
  const put = (list: 'asked' | 'against' | 'more', at: number, changed: Partial<Said>) => entry.set({ [list]: entry.draft[list].map((one, index) => (index === at ? { ...one, ...changed } : one)) });
  const charge = (list: 'asked' | 'against' | 'more', one: Said, at: number) => <TextInput {...entry.at(`${list}.${at}`)} label={tell('back.charge-of', { text: one.text, currency })} value={one.charge} onChange={(event) => put(list, at, { charge: event.currentTarget.value })} inputMode="decimal" autoComplete="off" />;
  const said = (list: 'asked' | 'against', one: Said, at: number) => <TextInput label={tell('back.note-of', { text: one.text })} value={one.note} maxLength={500} autoComplete="off" onChange={(event) => put(list, at, { note: event.currentTarget.value })} />;
  return (
    <EntryForm entry={entry} submit={tell('back.save')} onCancel={onClose}>
      <DateField {...bindDate(entry, 'doneOn')} data-autofocus max={today} label={tell('back.day')} />
      {entry.draft.asked.map((one, at) => (
        <FieldRow key={`asked ${at}`}>
          <NativeSelect label={one.text} value={one.as} onChange={(event) => put('asked', at, { as: event.currentTarget.value })} data={choices('back.as-', ['done', 'not-done', 'unsaid'])} />
          {one.as === 'done' && charge('asked', one, at)}
          {one.as === 'not-done' && said('asked', one, at)}
        </FieldRow>
      ))}
      {entry.draft.against.map((one, at) => (
        <FieldRow key={`against ${at}`}>
          <NativeSelect label={one.text} value={one.as} onChange={(event) => put('against', at, { as: event.currentTarget.value })} data={choices('back.as-', ['left', 'all-same'])} />
          {one.as === 'all-same' && charge('against', one, at)}
          {one.as === 'all-same' && said('against', one, at)}
        </FieldRow>
      ))}
      {entry.draft.more.map((one, at) => (
        <FieldRow key={`more ${at}`}>
          <TextInput label={tell('back.more', { n: at + 1 })} value={one.text} onChange={(event) => put('more', at, { text: event.currentTarget.value })} autoComplete="off" />
          {charge('more', one, at)}
        </FieldRow>
      ))}
      <Button variant="default" size="compact-md" onClick={() => entry.set({ more: [...entry.draft.more, { text: '', as: 'done', charge: '', note: '' }] })}>{tell('back.more-add')}</Button>
      <TextInput {...bindText(entry, 'total', 'chargedMinor')} label={tell('back.total', { currency })} inputMode="decimal" autoComplete="off" />
      <PaperField place={entry.at('papers')} label={tell('back.paper')} file={entry.draft.file} kept={cameBack?.paper ?? null} onChange={(file) => entry.set({ file })} />
      <TextInput {...bindText(entry, 'note')} label={tell('back.note')} autoComplete="off" />
    </EntryForm>
  );
}
