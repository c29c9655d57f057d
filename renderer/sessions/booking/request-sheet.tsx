import type { BookingView, RequestCar } from '../../../shared-core/views/booking-view-schema.ts';
import { amountWords } from '../../ui/amount-words.ts';
import { tell } from '../../ui/words/tell.ts';
import sheetStyles from '../sheet/sheet.module.css';

interface RequestSheetProps {
  readonly view: BookingView;
  readonly car: RequestCar;
  readonly at: number;
}

/** The request for one car as it is printed: what is wanted, what is not, what we bring. */
export function RequestSheet({ view, car, at }: RequestSheetProps) {
  const { booking } = view;
  const [title = '', ...about] = (car.text.split('\n\n')[0] ?? '').split('\n');
  const entered = car.figures.filter((one) => one.entered);
  const lacking = car.figures.filter((one) => !one.entered);
  const id = `request-${at}`;
  return (
    <section className={sheetStyles.car} aria-labelledby={id} data-job-car={at}>
      <h2 id={id}><span className="only-said">{tell('booking.sheet-of', { car: car.carName })}. </span>{title}</h2>
      <ul className={sheetStyles.plain}>{about.map((line) => <li key={line}>{line}</li>)}</ul>
      <Lines title={tell('booking.wanted')} lines={car.wanted.map((one) => one.text)} boxes />
      <Lines title={tell('booking.unwanted')} lines={car.unwanted.map((one) => one.text)} />
      <Lines title={tell('booking.bring')} lines={car.bring.map((one) => (one.quantity === null ? one.text : `${one.text}, ${amountWords(one.quantity, one.unit)}`))} boxes />
      <Lines title={tell('booking.figures')} lines={entered.map((one) => `${one.name}: ${one.text}${one.source === null ? '' : ` (${one.source})`}`)} />
      <div className={sheetStyles.part}>
        {(booking?.digitalRecord ?? true) && <p>{tell('booking.record')}</p>}
        <p>{tell(booking?.booked?.quote == null ? 'booking.price-first' : 'booking.ask-first')}</p>
        {booking !== null && booking.note !== '' && <p>{tell('booking.note')}: {booking.note}</p>}
        {booking !== null && booking.contact !== '' && <p>{tell('booking.contact')}: {booking.contact}</p>}
      </div>
      {lacking.length > 0 && <p className={`${sheetStyles.soft} ${sheetStyles.screenOnly}`}>{tell('booking.lacks', { names: lacking.map((one) => one.name).join(', ') })}</p>}
    </section>
  );
}

interface LinesProps {
  readonly title: string;
  readonly lines: readonly string[];
  readonly boxes?: boolean;
}

function Lines({ title, lines, boxes = false }: LinesProps) {
  if (lines.length === 0) return null;
  return (
    <div className={sheetStyles.part} role="group" aria-label={title}>
      <h3>{title}</h3>
      <ul className={sheetStyles.plain}>{lines.map((line) => <li key={line} className={boxes ? sheetStyles.ticked : ''}>{boxes && <span className={sheetStyles.box} aria-hidden="true" />}<span>{line}</span></li>)}</ul>
    </div>
  );
}
