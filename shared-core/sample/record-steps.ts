import { must } from '../result/assert.ts';
import { drawingOf, extensionOf } from './record-drawing.ts';
import type { Photograph, SampleCar, SampleObservation, SampleRecord } from './sample-car.ts';
import type { SampleInstrument } from './sample-instrument.ts';
import { call, LABEL_PREFIX, type PaperStep, type SampleRequest, type SampleStep } from './sample-step.ts';

/** The work records of a sample car, each after its papers, with its correction where there was one. */
export function recordSteps(car: SampleCar, currency: string, instrument: SampleInstrument): readonly SampleStep[] {
  return car.records.flatMap((record) => {
    const papers = record.papers.map((paper, at): PaperStep => ({
      on: record.entered ?? record.on,
      operation: 'paper.keep',
      label: `${LABEL_PREFIX}${record.id}-${String(at + 1)}`,
      request: {
        name: `${record.on} ${paper.draw === 'photograph' ? paper.subject : paper.draw}, ${car.car.name}.${extensionOf(paper.draw)}`,
        draw: drawingOf({ car, record, paper, currency, instrument, seed: at + 1 }),
      },
    }));
    return [...papers, recordStep(car, record, papers.map((paper) => paper.label), instrument), ...amendSteps(record)];
  });
}

function recordStep(car: SampleCar, record: SampleRecord, papers: readonly string[], { shown, unit }: SampleInstrument): SampleStep {
  const { on, entered, read, amended: _amended, ...fields } = record;
  const reading = read ? { value: shown(on), unit } : null;
  return call(entered ?? on, 'record.add', { ...(fields as unknown as SampleRequest), car: car.car.id, date: on, reading, papers });
}

function amendSteps({ id, amended }: SampleRecord): readonly SampleStep[] {
  return amended === undefined ? [] : [call(amended.on, 'record.amend', { ...(amended.fields as SampleRequest), id })];
}

/** What was seen on a sample car, with its photograph, and the record that settled it. */
export function observationSteps(car: SampleCar): readonly SampleStep[] {
  return car.observations.flatMap((seen) => {
    const { on, photograph, closed, ...fields } = seen;
    const photographs = photograph === undefined ? [] : [photographStep(car, seen, photograph)];
    const papers = photographs.map((paper) => paper.label);
    const noted = call(on, 'observation.note', { ...(fields as SampleRequest), car: car.car.id, date: on, papers });
    const settled = closed === undefined ? [] : [call(closed.on, 'observation.close', { observation: seen.id, record: closed.record, on: closed.on })];
    return [...photographs, noted, ...settled];
  });
}

/** What is to be looked at again after a work, ticked or not. */
export function followUpSteps({ car, followUps }: SampleCar): readonly SampleStep[] {
  return followUps.flatMap(({ on, done, ...fields }) => [
    call(on, 'follow-up.add', { ...(fields as SampleRequest), car: car.id }),
    ...(done === undefined ? [] : [call(done.on, 'follow-up.done', { followUp: fields.id, note: done.note })]),
  ]);
}

function photographStep(car: SampleCar, seen: SampleObservation, { subject, wear }: Photograph): PaperStep {
  const seed = must(seen.id.codePointAt(seen.id.length - 1), 'id of an observation');
  return {
    on: seen.on,
    operation: 'paper.keep',
    label: `${LABEL_PREFIX}${seen.id}`,
    request: { name: `${seen.on} ${subject}, ${car.car.name}.png`, draw: { kind: 'photograph', subject, wear, seed } },
  };
}
