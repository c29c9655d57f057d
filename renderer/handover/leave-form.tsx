import { Checkbox, NativeSelect, Textarea, TextInput } from '@mantine/core';
import type { Result } from '../../shared-core/result/result.ts';
import type { CarView } from '../../shared-core/views/car-view.ts';
import { change, type Changed } from '../ui/change.ts';
import { bindDate, bindText, bindTick } from '../ui/form/bind.ts';
import { DateField } from '../ui/form/date-field.tsx';
import { EntryForm } from '../ui/form/entry-form.tsx';
import { FieldRow } from '../ui/form/fields.tsx';
import { FieldsRead, textOrNull } from '../ui/form/read-fields.ts';
import { useEntry } from '../ui/form/use-entry.ts';
import { useWords } from '../ui/household.tsx';
import { unitChoices } from '../ui/household-choices.ts';
import { note } from '../ui/notices/notice-store.ts';
import { tell } from '../ui/words/tell.ts';

interface Draft {
  readonly how: string;
  readonly on: string;
  readonly reading: string;
  readonly unit: string;
  readonly price: string;
  readonly buyer: string;
  readonly note: string;
  readonly sure: boolean;
}

/** Writes down that a car leaves: sold or scrapped, the day, its last reading, what it brought. */
export function LeaveForm({ view }: { readonly view: CarView }) {
  const words = useWords();
  const { car, currency, today } = view;
  const entry = useEntry({
    key: `car.leave ${car.id}`,
    start: { how: 'sold', on: today as string, reading: '', unit: car.unit as string, price: '', buyer: '', note: '', sure: false } satisfies Draft as Draft,
    send: (draft) => send(draft, car.id, currency),
    onDone: ({ departure, sessions, undo }) => {
      const freed = sessions.changed + sessions.cancelled;
      note(`${tell(`leaving.done-${departure.how}`, { car: car.name, date: words.date(departure.on) })}${freed === 0 ? '' : ` ${tell('leaving.done-sessions', { n: freed })}`}`, undo);
    },
  });
  const { draft } = entry;
  return (
    <EntryForm entry={entry} submit={tell('leaving.submit')}>
      <FieldRow>
        <NativeSelect {...bindText(entry, 'how')} label={tell('leaving.how')} data={[{ value: 'sold', label: tell('leaving.how-sold') }, { value: 'scrapped', label: tell('leaving.how-scrapped') }]} />
        <DateField {...bindDate(entry, 'on')} max={today} label={tell('leaving.on')} />
      </FieldRow>
      <FieldRow>
        <TextInput {...bindText(entry, 'reading')} label={tell('leaving.reading')} inputMode="decimal" autoComplete="off" />
        <NativeSelect {...bindText(entry, 'unit')} label={tell('leaving.unit')} data={unitChoices()} />
      </FieldRow>
      <FieldRow>
        <TextInput {...bindText(entry, 'price', 'priceMinor')} label={tell('leaving.price', { currency })} inputMode="decimal" autoComplete="off" />
        <TextInput {...bindText(entry, 'buyer')} label={tell('leaving.buyer')} autoComplete="off" />
      </FieldRow>
      <Textarea {...bindText(entry, 'note')} label={tell('leaving.note')} autosize minRows={2} />
      {/* Asked only where something stands open. */}
      {(draft.sure || entry.at('sure').error !== undefined) && <Checkbox {...bindTick(entry, 'sure')} error={entry.at('sure').error !== undefined} label={tell('leaving.sure')} />}
    </EntryForm>
  );
}

async function send(draft: Draft, car: string, currency: string): Promise<Result<Changed<'car.leave'>>> {
  const read = new FieldsRead();
  const on = read.date('on', draft.on);
  const reading = read.distanceOrNull('reading', draft.reading, draft.unit === 'mi' ? 'mi' : 'km');
  const request = read.whole({ car, how: draft.how === 'scrapped' ? ('scrapped' as const) : ('sold' as const), ...(on === undefined ? {} : { on }), reading, priceMinor: read.moneyOrNull('priceMinor', draft.price, currency), buyer: textOrNull(draft.buyer), note: draft.note, sure: draft.sure });
  return request.ok ? change('car.leave', request.value) : request;
}
