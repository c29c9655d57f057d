import { dialog } from 'electron';
import { noteFault } from './note-fault.ts';
import { windowWords } from './window-words.ts';

/** Answers what is done about a fault of our own that nobody caught: noted, said in one sentence, and the program ends in order with status 1. Only the first one. */
export function faultEnds(endWith: (status: number) => Promise<void>): (error: unknown) => void {
  let met = false;
  return (error) => {
    noteFault(error);
    if (met) return;
    met = true;
    dialog.showErrorBox('Trunnion', windowWords('program-fault'));
    void endWith(1);
  };
}

/** Takes what was thrown, or refused by a promise, and caught nowhere. */
export function hearFaults(onFault: (error: unknown) => void): void {
  process.on('uncaughtException', onFault);
  process.on('unhandledRejection', onFault);
}
