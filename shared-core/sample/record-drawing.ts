import { assertNever } from '../result/assert.ts';
import type { RecordPaper, SampleCar, SampleRecord } from './sample-car.ts';
import type { SampleDrawing } from './sample-drawing.ts';
import type { SampleInstrument } from './sample-instrument.ts';

/** What a paper of a record is drawn from. */
export interface RecordPaperToDraw {
  readonly car: SampleCar;
  readonly record: SampleRecord;
  readonly paper: RecordPaper;
  readonly currency: string;
  readonly instrument: SampleInstrument;
  readonly seed: number;
}

/** The description of a record's paper: a receipt repeats its costs and its printed total, whether or not they agree. */
export function drawingOf({ car, record, paper, currency, instrument, seed }: RecordPaperToDraw): SampleDrawing {
  const sheet = {
    heading: record.placeName ?? 'at home',
    number: record.reference ?? record.id,
    date: record.on,
    car: car.car.name,
    odometer: record.read ? `${String(instrument.shown(record.on))} ${instrument.unit}` : null,
  };
  switch (paper.draw) {
    case 'receipt':
      return { kind: 'receipt', ...sheet, heading: paper.heading ?? sheet.heading, currency, lines: linesOf(record), totalMinor: totalOf(record) };
    case 'certificate':
      return { kind: 'certificate', ...sheet, statements: paper.statements };
    case 'photograph':
      return { kind: 'photograph', subject: paper.subject, wear: paper.wear, seed };
    default:
      return assertNever(paper);
  }
}

/** The ending of a paper's file name. */
export function extensionOf(draw: RecordPaper['draw']): string {
  return draw === 'photograph' ? 'png' : 'pdf';
}

function linesOf(record: SampleRecord) {
  return record.costs.map(({ text, amountMinor }) => ({ text, amountMinor }));
}

function totalOf(record: SampleRecord): number {
  return record.printedTotalMinor ?? record.costs.reduce((sum, line) => sum + line.amountMinor, 0);
}
