import type { LocalDate } from '../calendar/local-date.ts';
import type { OperationName } from '../contract/contract.ts';
import type { Json } from '../journal/canonical-json.ts';
import type { SampleDrawing } from './sample-drawing.ts';

/** A request as plain JSON. */
export type SampleRequest = { readonly [field: string]: Json };

/** An operation of the contract, done on a day with that day as today. Papers in it are named by their labels. */
export interface CallStep {
  readonly on: LocalDate;
  readonly operation: Exclude<OperationName, 'paper.keep'>;
  readonly request: SampleRequest;
}

/** A paper to be drawn and kept on a day; later steps name it by its label, for its id is the digest of the bytes drawn. */
export interface PaperStep {
  readonly on: LocalDate;
  readonly operation: 'paper.keep';
  readonly label: string;
  readonly request: { readonly name: string; readonly draw: SampleDrawing };
}

/** One thing done in the sample household. */
export type SampleStep = CallStep | PaperStep;

/** Every label starts so. */
export const LABEL_PREFIX = 'paper:';

/** The UTC instant at which a step's entries are written: the evening of its day. @example enteredAt('2026-11-12') //=> '2026-11-12T18:00:00.000Z' */
export function enteredAt(on: LocalDate): string {
  return `${on}T18:00:00.000Z`;
}

/** A step that calls an operation. */
export function call(on: LocalDate, operation: CallStep['operation'], request: SampleRequest): CallStep {
  return { on, operation, request };
}
