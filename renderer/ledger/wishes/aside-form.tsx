import { Checkbox } from '@mantine/core';
import type { WishView } from '../../../shared-core/views/wishes-view-schema.ts';
import { amountWords } from '../../ui/amount-words.ts';
import { Asked } from '../../ui/asked.tsx';
import { change } from '../../ui/change.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup } from '../../ui/form/fields.tsx';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';

interface AsideFormProps {
  readonly view: WishView;
  readonly onClose: () => void;
}

/** Chooses the lots on the shelf that are put aside for a wish. */
export function AsideForm(props: AsideFormProps) {
  const parts = useAsk('parts.show', {});
  return (
    <Asked answer={parts}>
      {({ shelf, parts: all }) => {
        const meets = new Map(all.map(({ part }) => [part.id, part.meets]));
        const fitting = shelf.filter((one) => one.left > 0 && props.view.needs.some((need) => meets.get(one.lot.part)?.includes(need.specification)));
        const lots = fitting.map((one) => ({ id: one.lot.id, name: `${one.partName}, ${amountWords(one.left, one.unit)}` }));
        return lots.length === 0 ? <p>{tell('wishes.nothing-fits')}</p> : <Aside {...props} lots={lots} />;
      }}
    </Asked>
  );
}

function Aside({ view, onClose, lots }: AsideFormProps & { readonly lots: readonly { readonly id: string; readonly name: string }[] }) {
  const entry = useEntry({
    key: `wish.put-aside ${view.wish.id}`,
    start: { lots: view.wish.lots as readonly string[] },
    send: (draft) => change('wish.put-aside', { wish: view.wish.id, lots: [...draft.lots] }),
    onDone: ({ undo }) => {
      note(tell('wishes.aside-done', { wish: view.wish.name }), undo);
      onClose();
    },
  });
  const { lots: chosen } = entry.draft;
  return (
    <EntryForm entry={entry} submit={tell('parts.save')} onCancel={onClose}>
      <FieldGroup legend={tell('wishes.aside-lots')} place={entry.atGroup('lots')}>
        {lots.map((lot) => <Checkbox key={lot.id} label={lot.name} checked={chosen.includes(lot.id)} onChange={(event) => entry.set({ lots: event.currentTarget.checked ? [...chosen, lot.id] : chosen.filter((id) => id !== lot.id) })} />)}
      </FieldGroup>
    </EntryForm>
  );
}
