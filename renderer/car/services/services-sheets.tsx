import type { ReactNode } from 'react';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import type { CoverageView } from '../../../shared-core/views/coverage-view.ts';
import { Asked } from '../../ui/asked.tsx';
import { SideSheet } from '../../ui/side-sheet.tsx';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';
import { RecordForm } from '../forms/record-form.tsx';
import { ServiceForm } from './service-form.tsx';
import type { ServicesSheet } from './services-sheet.ts';

interface ServicesSheetsProps {
  readonly view: CarView;
  readonly all: CoverageView;
  readonly sheet: ServicesSheet | null;
  readonly onClose: () => void;
  /** A service was named: it is the one to be shown. */
  readonly onNamed: (service: string) => void;
}

interface Content {
  readonly title: string;
  readonly form: ReactNode;
}

/** The entry that lies over the Services leaf, if any. */
export function ServicesSheets(props: ServicesSheetsProps) {
  const shown = props.sheet === null ? null : contentOf(props, props.sheet);
  return <SideSheet title={shown?.title ?? ''} opened={shown !== null} onClose={props.onClose}>{shown?.form}</SideSheet>;
}

/** Null where the service is no longer there. */
function contentOf({ view, all, onClose, onNamed }: ServicesSheetsProps, sheet: ServicesSheet): Content | null {
  const car = view.car.name;
  if (sheet.kind === 'record') return { title: tell('record-form.title', { car }), form: <RecordForm view={view} item={null} lines={sheet.lines} onClose={onClose} /> };
  if (sheet.service === null) return { title: tell('service-form.add-title', { car }), form: <ServiceForm view={view} service={null} onClose={onClose} onNamed={onNamed} /> };
  const plan = all.plans.find((one) => one.id === sheet.service);
  return plan === undefined ? null : { title: tell('service-form.change-title', { name: plan.name }), form: <KnownService view={view} plan={plan.id} onClose={onClose} onNamed={onNamed} /> };
}

interface KnownServiceProps {
  readonly view: CarView;
  readonly plan: string;
  readonly onClose: () => void;
  readonly onNamed: (service: string) => void;
}

function KnownService({ view, plan, onClose, onNamed }: KnownServiceProps) {
  const answer = useAsk('coverage.show', { car: view.car.id, plan });
  return <Asked answer={answer}>{(coverage) => <ServiceForm view={view} service={coverage.plan} onClose={onClose} onNamed={onNamed} />}</Asked>;
}
