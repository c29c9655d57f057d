import { Button, Checkbox, NativeSelect } from '@mantine/core';
import { Link } from 'wouter';
import type { Refusal } from '../../shared-core/result/result.ts';
import type { ReplyOf } from '../../shared-core/contract/contract.ts';
import { DateField } from '../ui/form/date-field.tsx';
import { FieldGroup, FieldRow } from '../ui/form/fields.tsx';
import { sayFault } from '../ui/form/say-fault.ts';
import { Section } from '../ui/section.tsx';
import { WITHHELD_GROUPS } from '../ui/withheld-groups.ts';
import { tell } from '../ui/words/tell.ts';
import styles from './handover.module.css';
import type { PackDraft } from './pack-draft.ts';
import type { AnyCar } from './use-all-cars.ts';

interface PackChoicesProps {
  readonly draft: PackDraft;
  readonly set: (change: Partial<PackDraft>) => void;
  readonly cars: readonly AnyCar[];
  readonly papers: ReplyOf<'pack.papers'>['papers'];
  /** The packs of earlier keepers, by name. */
  readonly previous: readonly string[];
  readonly refusal: Refusal | null;
}

/** The choices for a pack: car, days, papers, what is kept back, and the paper it is laid out for. */
export function PackChoices(props: PackChoicesProps) {
  const { draft, set, cars, refusal } = props;
  const faultAt = (field: 'from' | 'to') => (refusal?.path?.join('.') === `period.${field}` || (field === 'to' && refusal?.code === 'period-ends-before-it-begins') ? sayFault(refusal) : undefined);
  return (
    <Section title={tell('handover.choose')}>
      <NativeSelect className={styles.wide} label={tell('handover.car')} value={draft.car} onChange={(event) => set({ car: event.currentTarget.value })} data={cars.map(({ id, name, left }) => ({ value: id, label: left ? tell('handover.car-left', { name }) : name }))} />
      <FieldGroup legend={tell('handover.period')} hint={tell('handover.period-what')}>
        <FieldRow>
          <DateField id="pack-from" error={faultAt('from')} label={tell('handover.from')} value={draft.from} onChange={(from) => set({ from })} />
          <DateField id="pack-to" error={faultAt('to')} label={tell('handover.to')} value={draft.to} onChange={(to) => set({ to })} />
        </FieldRow>
      </FieldGroup>
      <Papers {...props} />
      <FieldGroup legend={tell('pack.back')} hint={tell('pack.back-what')}>
        {(['prices', 'names', 'numbers'] as const).map((group) => <Withholding key={group} group={group} draft={draft} set={set} />)}
      </FieldGroup>
      {props.previous.length > 0 && <Previous {...props} />}
      <NativeSelect className={styles.wide} label={tell('pack.size')} value={draft.paperSize} onChange={(event) => set({ paperSize: event.currentTarget.value === 'LETTER' ? 'LETTER' : 'A4' })} data={[{ value: 'A4', label: tell('pack.size-a4') }, { value: 'LETTER', label: tell('pack.size-letter') }]} />
    </Section>
  );
}

/** The packs of earlier keepers go along whole or are left out: one of two ticks, where anything is withheld. */
function Previous({ draft, set, previous, refusal }: PackChoicesProps) {
  const isAsked = refusal?.code === 'previous-pack-shows-withheld';
  const tick = (what: 'whole' | 'left-out') => <Checkbox label={tell(`pack.previous-${what}`)} checked={draft.previous === what} onChange={(event) => set({ previous: event.currentTarget.checked ? what : '' })} error={isAsked} aria-invalid={isAsked} />;
  return <FieldGroup legend={tell('pack.previous', { names: previous.join(', ') })} hint={tell('pack.previous-what')}>{tick('whole')}{tick('left-out')}</FieldGroup>;
}

function Papers({ draft, set, papers }: PackChoicesProps) {
  const chosen = papers.filter((one) => !draft.leftOut.includes(one.id));
  const pictures = chosen.filter((one) => one.media.startsWith('image/'));
  const turn = (id: string) => {
    const leftOut = draft.leftOut.includes(id) ? draft.leftOut.filter((one) => one !== id) : [...draft.leftOut, id];
    set({ leftOut, ...(leftOut.includes(draft.cover) ? { cover: '' } : {}) });
  };
  return (
    <>
      <FieldGroup legend={tell('handover.papers', { chosen: chosen.length, all: papers.length })} hint={tell('handover.papers-what')}>
        {papers.length === 0 ? <p>{tell('handover.no-papers')}</p> : (
          <>
            <div className={styles.buttons}>
              <Button size="compact-md" variant="default" onClick={() => set({ leftOut: [] })}>{tell('handover.papers-all')}</Button>
              <Button size="compact-md" variant="default" onClick={() => set({ leftOut: papers.map((one) => one.id), cover: '' })}>{tell('handover.papers-none')}</Button>
            </div>
            <ul className={styles.ticks} tabIndex={0} aria-label={tell('handover.papers-list')}>
              {papers.map((one) => <li key={one.id}><Checkbox label={one.name} checked={!draft.leftOut.includes(one.id)} onChange={() => turn(one.id)} /><Link href={`/paper/${one.id}`} className={styles.black} aria-label={tell(one.blackedOut === 0 ? 'handover.black-out-of' : 'handover.blacked-out-of', { n: one.blackedOut, name: one.name })}>{tell(one.blackedOut === 0 ? 'handover.black-out' : 'handover.blacked-out', { n: one.blackedOut })}</Link></li>)}
            </ul>
          </>
        )}
      </FieldGroup>
      {chosen.some((one) => one.blackedOut > 0) && <Checkbox label={tell('handover.name-originals')} description={tell('handover.name-originals-what')} checked={draft.nameOriginals} onChange={(event) => set({ nameOriginals: event.currentTarget.checked })} />}
      {pictures.length > 0 && <NativeSelect className={styles.wide} label={tell('handover.cover')} value={draft.cover} onChange={(event) => set({ cover: event.currentTarget.value })} data={[{ value: '', label: tell('handover.cover-own') }, ...pictures.map((one) => ({ value: one.id, label: one.name }))]} />}
    </>
  );
}

/** A group to be kept back as a whole, and its fields one by one. */
function Withholding({ group, draft, set }: Pick<PackChoicesProps, 'draft' | 'set'> & { readonly group: keyof typeof WITHHELD_GROUPS }) {
  const fields = WITHHELD_GROUPS[group];
  const back = fields.filter((field) => draft.withhold.includes(field));
  const others = draft.withhold.filter((field) => !fields.includes(field));
  return (
    <div>
      <Checkbox label={tell(`pack.${group}`)} checked={back.length === fields.length} indeterminate={back.length > 0 && back.length < fields.length} onChange={(event) => set({ withhold: [...others, ...(event.currentTarget.checked ? fields : [])] })} />
      <details className={styles.fields}>
        <summary>{tell('handover.one-by-one', { group: tell(`handover-group.${group}`) })}</summary>
        {fields.map((field) => <Checkbox key={field} label={tell(`handover-field.${field}`)} checked={back.includes(field)} onChange={(event) => set({ withhold: event.currentTarget.checked ? [...draft.withhold, field] : draft.withhold.filter((one) => one !== field) })} />)}
      </details>
    </div>
  );
}
