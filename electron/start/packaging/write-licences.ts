import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { gatherLicences, licencesOfPage, licencesText } from './gather-licences.ts';
import { packagesAskedFor, withTheirNeeds } from './shipped-packages.ts';

/** Writes the licences of all that goes out into a file; `main` is the folder of the main program's bundles. Answers how many parts it names. */
export async function writeLicences(project: string, main: string, file: string): Promise<number> {
  const licences = gatherLicences(project, withTheirNeeds(project, packagesAskedFor(main)), await licencesOfPage(project));
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(file, licencesText(licences));
  return licences.length;
}
