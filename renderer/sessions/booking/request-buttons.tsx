import { Button, SegmentedControl } from '@mantine/core';
import { useId } from 'react';
import type { BookingView } from '../../../shared-core/views/booking-view-schema.ts';
import { change } from '../../ui/change.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { SHEET_PAPERS, type SheetPaper } from '../sheet/sheet-choices.ts';
import sheetStyles from '../sheet/sheet.module.css';
import { copyText } from './copy-text.ts';
import type { OpenBookingSheet } from './booking-sheet.ts';

interface RequestButtonsProps {
  readonly view: BookingView;
  readonly paper: SheetPaper;
  readonly onPaper: (paper: SheetPaper) => void;
  readonly open: OpenBookingSheet;
}

/** What can be done with the request: written, said to be asked, printed, copied, dropped. */
export function RequestButtons({ view, paper, onPaper, open }: RequestButtonsProps) {
  const id = useId();
  const { booking } = view;
  const write = booking === null ? 'booking.write' : booking.dropped === null ? 'booking.change' : 'booking.anew';
  const askedToday = async () => {
    if (booking === null) return;
    const { wanted, unwanted, bring, digitalRecord, contact } = booking;
    const reply = await change('booking.ask', { session: view.session.id, askedOn: view.today, wanted, unwanted, bring, digitalRecord, contact, note: booking.note });
    note(reply.ok ? tell('booking.saved') : sayFault(reply.refusal), reply.ok ? reply.value.undo : []);
  };
  const canDrop = (booking !== null && booking.dropped === null && booking.cameBack === null) || view.elsewhere?.underway === true;
  return (
    <>
      <div className={sheetStyles.buttons}>
        {view.open && <Button size="compact-md" onClick={() => open({ kind: 'ask' })}>{tell(write)}</Button>}
        {view.open && booking !== null && booking.cameBack !== null && <Button size="compact-md" variant="default" onClick={() => open({ kind: 'ask-rest' })}>{tell('booking.rest')}</Button>}
        {view.open && booking !== null && booking.askedOn === null && <Button size="compact-md" variant="default" onClick={() => void askedToday()}>{tell('booking.asked-today')}</Button>}
        {canDrop && <Button size="compact-md" variant="default" onClick={() => open({ kind: 'drop' })}>{tell('booking.drop')}</Button>}
        {view.cars.map((car) => <Button key={car.car} size="compact-md" variant="default" onClick={() => note(tell(copyText(`${car.subject}\n\n${car.text}`) ? 'booking.copied' : 'booking.not-copied'))}>{tell('booking.copy', { car: car.carName })}</Button>)}
      </div>
      <div className={sheetStyles.options} role="group" aria-label={tell('job.options')}>
        <div className={sheetStyles.option}><span id={id}>{tell('job.paper')}</span><SegmentedControl<SheetPaper> aria-labelledby={id} value={paper} onChange={onPaper} data={SHEET_PAPERS.map((value) => ({ value, label: tell(`job.paper-${value}`) }))} /></div>
        <Button size="compact-md" variant="default" onClick={() => window.print()}>{tell('job.print')}</Button>
      </div>
    </>
  );
}
