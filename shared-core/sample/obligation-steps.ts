import { addMonths } from '../calendar/add-months.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import type { Renewals, SampleCar } from './sample-car.ts';
import type { SampleInstrument } from './sample-instrument.ts';
import { call, LABEL_PREFIX, type PaperStep, type SampleRequest, type SampleStep } from './sample-step.ts';

/** The dated duties of a sample car and their renewals, with certificates and the readings taken at them. */
export function obligationSteps(car: SampleCar, instrument: SampleInstrument): readonly SampleStep[] {
  return car.obligations.flatMap(({ obligation, firstTestYears, renewals }) => [
    firstTestYears === undefined
      ? call(car.addedOn, 'obligation.add', { ...(obligation as SampleRequest), car: car.car.id })
      : call(car.addedOn, 'first-test.add', { ...(obligation as SampleRequest), car: car.car.id, years: firstTestYears }),
    ...(renewals === undefined ? [] : renewalSteps(car, obligation.id, renewals, instrument)),
  ]);
}

function renewalSteps(car: SampleCar, obligation: string, renewals: Renewals, instrument: SampleInstrument): readonly SampleStep[] {
  const { first, everyMonths, paidMinor, certificates } = renewals;
  return paidMinor.flatMap((paid, at) => {
    const on = addMonths(first, at * everyMonths);
    const kept = at >= paidMinor.length - certificates;
    const reference = renewals.reference === undefined ? null : `${renewals.reference}-${String(at + 1)}`;
    const certificate = kept ? certificateStep(car, on, `${obligation}-${String(at + 1)}`, reference, instrument) : null;
    const reading = renewals.reads ? [testReading(car, on, certificate, instrument)] : [];
    const renewal = { id: `${obligation}-${String(at + 1)}`, obligation, on, paidMinor: paid, reference, papers: certificate === null ? [] : [certificate.label] };
    return [...(certificate === null ? [] : [certificate]), ...reading, call(on, 'obligation.renew', renewal)];
  });
}

function certificateStep(car: SampleCar, on: LocalDate, name: string, reference: string | null, { shown, unit }: SampleInstrument): PaperStep {
  return {
    on,
    operation: 'paper.keep',
    label: LABEL_PREFIX + name,
    request: {
      name: `${on} certificate, ${car.car.name}.pdf`,
      draw: {
        kind: 'certificate', heading: 'Roadworthiness test', number: reference ?? name, date: on, car: car.car.name,
        odometer: `${String(shown(on))} ${unit}`, statements: ['Passed.', 'Nothing found that must be put right.'],
      },
    },
  };
}

function testReading(car: SampleCar, on: LocalDate, certificate: PaperStep | null, { shown, unit }: SampleInstrument): SampleStep {
  const paper = certificate?.label ?? null;
  return call(on, 'reading.record', { id: `${car.car.id}-test-${on}`, car: car.car.id, date: on, value: shown(on), unit, source: 'test', paper });
}
