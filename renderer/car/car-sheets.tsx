import type { ReactNode } from 'react';
import type { CarView } from '../../shared-core/views/car-view.ts';
import { SideSheet } from '../ui/side-sheet.tsx';
import { tell } from '../ui/words/tell.ts';
import type { CarSheet } from './car-sheet.ts';
import { CarForm } from './forms/car-form.tsx';
import { CloseForm } from './forms/close-form.tsx';
import { FollowUpForm } from './forms/follow-up-form.tsx';
import { ItemForm } from './forms/item-form.tsx';
import { ObligationForm } from './forms/obligation-form.tsx';
import { ObservationForm } from './forms/observation-form.tsx';
import { PackForm } from './forms/pack-form.tsx';
import { ReadingForm } from './forms/reading-form.tsx';
import { RecallForm } from './forms/recall-form.tsx';
import { RecordForm } from './forms/record-form.tsx';
import { RenewalForm } from './forms/renewal-form.tsx';

interface CarSheetsProps {
  readonly view: CarView;
  readonly sheet: CarSheet | null;
  readonly onClose: () => void;
}

/** The entry that lies over the Car screen, if any. */
export function CarSheets({ view, sheet, onClose }: CarSheetsProps) {
  const shown = sheet === null ? null : contentOf(view, sheet, onClose);
  return <SideSheet title={shown?.title ?? ''} opened={shown !== null} onClose={onClose}>{shown?.form}</SideSheet>;
}

interface Content {
  readonly title: string;
  readonly form: ReactNode;
}

/** Null where what it was about is no longer there. */
function contentOf(view: CarView, sheet: CarSheet, onClose: () => void): Content | null {
  const car = view.car.name;
  const common = { view, onClose };
  switch (sheet.kind) {
    case 'car':
      return { title: tell('car.change'), form: <CarForm car={view.car} onClose={onClose} /> };
    case 'reading':
      return { title: tell('reading-form.title', { car }), form: <ReadingForm {...common} /> };
    case 'record':
      return { title: tell('record-form.title', { car }), form: <RecordForm {...common} item={sheet.item} /> };
    case 'item': {
      const item = view.items.find((one) => one.item.id === sheet.item)?.item ?? null;
      const title = item === null ? tell('item-form.add-title', { car }) : tell('item-form.change-title', { item: item.name });
      return { title, form: <ItemForm {...common} item={item} /> };
    }
    case 'obligation': {
      const now = view.obligations.find((one) => one.id === sheet.obligation) ?? null;
      return { title: tell(now === null ? 'obligation-form.title' : 'obligation-form.change-title', { car }), form: <ObligationForm {...common} now={now} /> };
    }
    case 'recall': {
      const now = view.recalls.find(({ recall }) => recall.id === sheet.recall)?.recall ?? null;
      return { title: tell(now === null ? 'recall-form.title' : 'recall-form.change-title', { car, number: now?.number ?? '' }), form: <RecallForm {...common} now={now} /> };
    }
    case 'renew': {
      const obligation = view.due.obligations.find((one) => one.id === sheet.obligation);
      return obligation === undefined ? null : { title: tell('renew-form.title', { name: obligation.name }), form: <RenewalForm {...common} obligation={obligation} /> };
    }
    case 'pack':
      return { title: tell('pack.title', { car }), form: <PackForm {...common} /> };
    case 'observation':
      return { title: tell('observation-form.title', { car }), form: <ObservationForm {...common} /> };
    case 'follow-up':
      return { title: tell('follow-up-form.title', { car }), form: <FollowUpForm {...common} /> };
    case 'close':
      return { title: tell('close-form.title'), form: <CloseForm {...common} observation={sheet.observation} /> };
  }
}
