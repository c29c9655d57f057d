import { Checkbox, NativeSelect } from '@mantine/core';
import { useState } from 'react';
import { Link } from 'wouter';
import type { ReplyOf, RequestOf } from '../../../shared-core/contract/contract.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { runLong } from '../../ui/run-long.ts';
import { bindText, bindTick } from '../../ui/form/bind.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup } from '../../ui/form/fields.tsx';
import { useEntry } from '../../ui/form/use-entry.ts';
import { WITHHELD_GROUPS } from '../../ui/withheld-groups.ts';
import { tell } from '../../ui/words/tell.ts';
import { PackWritten } from './pack-written.tsx';

interface PackFormProps {
  readonly view: CarView;
  readonly onClose: () => void;
}

interface Draft {
  readonly papers: boolean;
  readonly prices: boolean;
  readonly names: boolean;
  readonly numbers: boolean;
  readonly previous: string;
  readonly paperSize: string;
}

/** Chooses what goes into a car's history pack, writes it, and then says where it stands and what its seal is. */
export function PackForm({ view: { car }, onClose }: PackFormProps) {
  const [written, setWritten] = useState<ReplyOf<'pack.write'> | null>(null);
  const entry = useEntry({
    key: `pack.write ${car.id}`,
    start: { papers: true, prices: false, names: false, numbers: false, previous: '', paperSize: 'A4' } satisfies Draft as Draft,
    send: (draft) => runLong('pack.write', requestOf(draft, car.id)),
    onDone: (reply: ReplyOf<'pack.write'>) => setWritten(reply),
  });
  if (written !== null) return <PackWritten written={written} onClose={onClose} />;
  return (
    <EntryForm entry={entry} submit={tell('pack.submit')} onCancel={onClose}>
      <p>{tell('pack.what')} <Link href={`/handover/write/${car.id}`}>{tell('handover.to-more')}</Link></p>
      <Checkbox {...bindTick(entry, 'papers')} data-autofocus label={tell('pack.papers')} />
      <FieldGroup legend={tell('pack.back')} hint={tell('pack.back-what')} place={entry.at('withhold')}>
        <Checkbox {...bindTick(entry, 'prices')} label={tell('pack.prices')} />
        <Checkbox {...bindTick(entry, 'names')} label={tell('pack.names')} />
        <Checkbox {...bindTick(entry, 'numbers')} label={tell('pack.numbers')} />
      </FieldGroup>
      {(entry.draft.previous !== '' || entry.at('previous').error !== undefined) && <NativeSelect {...bindText(entry, 'previous')} label={tell('pack.previous-any')} data={[{ value: '', label: tell('pack.previous-none') }, { value: 'whole', label: tell('pack.previous-whole') }, { value: 'left-out', label: tell('pack.previous-left-out') }]} />}
      <NativeSelect {...bindText(entry, 'paperSize')} label={tell('pack.size')} data={[{ value: 'A4', label: tell('pack.size-a4') }, { value: 'LETTER', label: tell('pack.size-letter') }]} />
      <p>{tell('pack.out')}</p>
      <p>{tell('pack.sealed')}</p>
    </EntryForm>
  );
}

function requestOf(draft: Draft, car: string): RequestOf<'pack.write'> {
  const withhold = (['prices', 'names', 'numbers'] as const).flatMap((group) => (draft[group] ? WITHHELD_GROUPS[group] : []));
  return { car, papers: draft.papers, withhold, previous: draft.previous === '' ? null : (draft.previous as 'whole'), paperSize: draft.paperSize as 'A4' };
}
