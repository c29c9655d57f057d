import { Button, Checkbox, NativeSelect } from '@mantine/core';
import { useId, useState } from 'react';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { DateField } from '../../ui/form/date-field.tsx';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { useWords } from '../../ui/household.tsx';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { HorizonChoice } from '../horizon-choice.tsx';
import { setTerms, stopOrdering, useOrdering, workOutOrder } from './ordering.ts';
import styles from '../parts.module.css';

/** What the order is to keep to: how far ahead, and what if from one supplier, by a day, or with nothing left over. */
export function TermsForm({ view }: { readonly view: PartsView }) {
  const { terms, running, stopped, refusal, view: proposal } = useOrdering();
  const { byName } = useWords();
  const id = useId();
  const [dateFault, setDateFault] = useState<string | undefined>(undefined);
  const suppliers = [...view.suppliers].sort((a, b) => byName(a.name, b.name));
  const workOut = () => {
    const read = new FieldsRead();
    const whole = read.whole({ horizonDays: terms.horizonDays, onlySupplier: terms.onlySupplier === '' ? null : terms.onlySupplier, arriveBy: read.dateOrNull('arriveBy', terms.arriveBy), noLeftovers: terms.noLeftovers, wishes: terms.wishes });
    setDateFault(whole.ok ? undefined : sayFault(whole.refusal));
    if (!whole.ok) return document.getElementById(`${id}-by`)?.focus();
    void workOutOrder(whole.value);
  };
  return (
    <Section title={tell('order.terms')} hint={tell('order.terms-what')}>
      <form className={styles.leaf} noValidate onSubmit={(event) => (event.preventDefault(), workOut())}>
        <div className={styles.bar}>
          <HorizonChoice />
          <NativeSelect label={tell('order.only')} value={terms.onlySupplier} onChange={(event) => setTerms({ onlySupplier: event.currentTarget.value })} data={[{ value: '', label: tell('order.only-any') }, ...suppliers.map((one) => ({ value: one.id, label: one.name }))]} />
          <DateField id={`${id}-by`} error={dateFault} label={tell('order.by')} value={terms.arriveBy} onChange={(arriveBy) => setTerms({ arriveBy })} />
          <Checkbox label={tell('order.with-wishes')} checked={terms.wishes} onChange={(event) => setTerms({ wishes: event.currentTarget.checked })} />
          <Checkbox label={tell('order.no-leftovers')} checked={terms.noLeftovers} onChange={(event) => setTerms({ noLeftovers: event.currentTarget.checked })} />
        </div>
        <div className={styles.actions}>
          <Button type="submit" aria-disabled={running}>{tell(proposal === null ? 'order.work-out' : 'order.work-out-anew')}</Button>
        </div>
      </form>
      <Progress />
      <p role="alert" className={refusal === null ? 'only-said' : styles.fault}>{refusal !== null && (stopped && refusal.code === 'order-not-found' ? tell('order.stopped-empty') : sayFault(refusal))}</p>
    </Section>
  );
}

/** Who listens hears once that it is being worked out; how far it is, is for the eye. */
function Progress() {
  const { running, stopping, steps } = useOrdering();
  return (
    <div className={running ? styles.progress : 'only-said'}>
      <p role="status">{running && tell(stopping ? 'order.stopping' : 'order.looking')}</p>
      {running && (
        <>
          <progress aria-label={tell('order.looking')} />
          <span aria-hidden="true">{steps > 0 && tell('plan.steps', { n: steps })}</span>
          <Button size="compact-md" variant="default" onClick={stopOrdering} aria-disabled={stopping}>{tell('order.stop')}</Button>
        </>
      )}
    </div>
  );
}
