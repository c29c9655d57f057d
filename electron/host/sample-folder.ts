import { existsSync } from 'node:fs';
import { databaseFile } from './household-folder.ts';

/** The folder of the sample household beside a household's own. */
export function sampleFolder(home: string): string {
  return `${home}.sample`;
}

/** A sample on its way in or out: never opened, and deleted when it is met. */
export function unfinishedSample(home: string): string {
  return `${sampleFolder(home)}.unfinished`;
}

/** Whether the sample was opened and not left. */
export function sampleIsOpen(home: string): boolean {
  return existsSync(databaseFile(sampleFolder(home)));
}
