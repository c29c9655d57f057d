import { Button, NativeSelect } from '@mantine/core';
import { useState } from 'react';
import type { LedgerView } from '../../../shared-core/views/ledger-view-schema.ts';
import { Asked } from '../../ui/asked.tsx';
import { useWords } from '../../ui/household.tsx';
import { Section } from '../../ui/section.tsx';
import { SideSheet } from '../../ui/side-sheet.tsx';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';
import styles from '../ledger.module.css';
import { CarCosts } from './car-costs.tsx';
import { FuelForm } from './fuel-form.tsx';
import { HouseholdCosts } from './household-costs.tsx';
import { LinesSection } from './lines-section.tsx';
import { RateForm } from './rate-form.tsx';
import { StandingSection } from './standing-section.tsx';
import { WaitingSection } from './waiting-section.tsx';

/** What was paid, by car and year, what it still stands for, and the lines behind the sums. */
export function CostsLeaf() {
  const answer = useAsk('ledger.show', {});
  return <Asked answer={answer}>{(view) => <Costs view={view} />}</Asked>;
}

type Sheet = 'fuel' | 'rate' | null;

function Costs({ view }: { readonly view: LedgerView }) {
  const words = useWords();
  const [chosen, setChosen] = useState('');
  const [sheet, setSheet] = useState<Sheet>(null);
  const car = view.cars.find((one) => one.car === chosen) ?? null;
  const { paidMinor, carsMinor, shelfMinor, wishesMinor } = view.paid;
  return (
    <div className={styles.leaf}>
      <p className={styles.lead}>{tell('ledger.paid', { paid: words.money(paidMinor), cars: words.money(carsMinor), shelf: words.money(shelfMinor), wishes: words.money(wishesMinor) })}</p>
      <div className={styles.bar}>
        <NativeSelect label={tell('ledger.of')} value={car?.car ?? ''} onChange={(event) => setChosen(event.currentTarget.value)} data={[{ value: '', label: tell('ledger.all-cars') }, ...view.cars.map((one) => ({ value: one.car, label: one.left === null ? one.name : tell('ledger.car-left', { car: one.name }) }))]} />
        <Button variant="default" onClick={() => setSheet('fuel')}>{tell('ledger.enter-fuel')}</Button>
        <Button variant="default" onClick={() => setSheet('rate')}>{tell('ledger.enter-rate')}</Button>
      </div>
      {car === null ? <HouseholdCosts view={view} onCar={setChosen} /> : <CarCosts view={view} car={car} />}
      <LinesSection key={chosen} car={car?.car ?? null} years={car === null ? view.years.map((one) => one.year) : car.years.map((one) => one.year)} />
      {car === null && <WaitingSection view={view} />}
      {car === null && <StandingSection view={view} />}
      {view.notes.length > 0 && (
        <Section title={tell('ledger.notes')}>
          <ul className={styles.notes}>{view.notes.map((note) => <li key={note.text}>{note.text}</li>)}</ul>
        </Section>
      )}
      <SideSheet title={sheet === 'rate' ? tell('ledger.enter-rate') : tell('ledger.enter-fuel')} opened={sheet !== null} onClose={() => setSheet(null)}>
        {sheet === 'fuel' && <FuelForm view={view} car={car?.car ?? null} onClose={() => setSheet(null)} />}
        {sheet === 'rate' && <RateForm view={view} onClose={() => setSheet(null)} />}
      </SideSheet>
    </div>
  );
}
