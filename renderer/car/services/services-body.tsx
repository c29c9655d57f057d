import { useState } from 'react';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import type { CoverageView } from '../../../shared-core/views/coverage-view.ts';
import { Asked } from '../../ui/asked.tsx';
import { useAsk } from '../../ui/use-ask.ts';
import type { OpenSheet } from '../car-sheet.ts';
import { CoverageColumns } from './coverage-columns.tsx';
import { NoService } from './no-service.tsx';
import { ServiceChoice } from './service-choice.tsx';
import type { OpenServicesSheet, ServicesSheet } from './services-sheet.ts';
import { ServicesSheets } from './services-sheets.tsx';
import styles from './services.module.css';

interface ServicesBodyProps {
  readonly view: CarView;
  /** All items of the car against its records, with the names of its services. */
  readonly all: CoverageView;
  readonly open: OpenSheet;
}

/** The service that was chosen, else the latest that is not yet whole, else all items. */
export function ServicesBody({ view, all, open }: ServicesBodyProps) {
  const [wanted, setWanted] = useState<string | null | undefined>(undefined);
  const [sheet, setSheet] = useState<ServicesSheet | null>(null);
  const { plans } = all;
  const chosen = wanted === null || plans.some((plan) => plan.id === wanted) ? (wanted ?? null) : firstOf(plans);
  return (
    <div className={styles.leaf}>
      {plans.length === 0 && <NoService onAdd={() => setSheet({ kind: 'service', service: null })} />}
      {plans.length > 0 && <ServiceChoice all={all} chosen={chosen} onChoose={setWanted} onAdd={() => setSheet({ kind: 'service', service: null })} />}
      {chosen === null ? <CoverageColumns coverage={all} open={open} openOwn={setSheet} /> : <OneService key={chosen} car={view.car.id} plan={chosen} open={open} openOwn={setSheet} />}
      <ServicesSheets view={view} all={all} sheet={sheet} onClose={() => setSheet(null)} onNamed={setWanted} />
    </div>
  );
}

function firstOf(plans: CoverageView['plans']): string | null {
  return (plans.find((plan) => plan.done < plan.lines) ?? plans[0])?.id ?? null;
}

interface OneServiceProps {
  readonly car: string;
  readonly plan: string;
  readonly open: OpenSheet;
  readonly openOwn: OpenServicesSheet;
}

function OneService({ car, plan, open, openOwn }: OneServiceProps) {
  const answer = useAsk('coverage.show', { car, plan });
  return <Asked answer={answer}>{(coverage) => <CoverageColumns coverage={coverage} open={open} openOwn={openOwn} />}</Asked>;
}
