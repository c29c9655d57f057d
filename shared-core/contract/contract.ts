import type { z } from 'zod';
import { careOperations } from '../care/care.operations.ts';
import { fleetOperations } from '../fleet/fleet.operations.ts';
import { ledgerOperations } from '../ledger/ledger.operations.ts';
import { partsOperations } from '../parts/parts.operations.ts';
import { recordsOperations } from '../records/records.operations.ts';
import { sessionsOperations } from '../sessions/sessions.operations.ts';
import { viewOperations } from '../views/views.operations.ts';
import { workOperations } from '../work/work.operations.ts';
import { hostOperations } from './host-operations.ts';

/** Every operation by its name: the whole of what a window, the loopback server or the command line can ask. */
export const contract = {
  ...fleetOperations,
  ...careOperations,
  ...sessionsOperations,
  ...partsOperations,
  ...workOperations,
  ...recordsOperations,
  ...ledgerOperations,
  ...viewOperations,
  ...hostOperations,
} as const;

export type Contract = typeof contract;
export type OperationName = keyof Contract;
/** What is sent; fields with a default may be left out. */
export type RequestOf<Name extends OperationName> = z.input<Contract[Name]['request']>;
/** What comes back when it is not refused; a change also answers how to undo it. */
export type ReplyOf<Name extends OperationName> = Contract[Name]['kind'] extends 'do'
  ? z.output<Contract[Name]['reply']> & Undo
  : z.output<Contract[Name]['reply']>;

/** The numbers of the entries a change wrote, for `entry.withdraw`; empty where it is not undone so. */
export interface Undo {
  readonly undo: readonly number[];
}

/** The names of all operations. */
export const operationNames = Object.keys(contract) as readonly OperationName[];
