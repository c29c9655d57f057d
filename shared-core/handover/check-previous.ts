import { z } from 'zod';
import { packTakenIn, previousPackSchema } from '../records/previous-pack.ts';
import { fileFault, rowFault, type Fault, type FoundFile } from './check-fault.ts';
import type { HistoryPart, HistoryPrevious } from './history-part.ts';
import { shownValues, type PackEntry, type RowsPart } from './journal-part.ts';
import { HISTORY, PREVIOUS } from './pack-files.ts';

const { pack, before } = previousPackSchema.shape;
const namedSchema = z.object({ pack, before });

/**
 * Checks that the packs of earlier keepers are those with which the car came: each file is the one that the history names, each pack that a
 * proven row names is there or named as left out, and none is named or there that no row names.
 */
export function checkPrevious({ previous = [] }: HistoryPart, { entries }: RowsPart, files: ReadonlyMap<string, FoundFile>): Fault[] {
  const takenIn = entries.flatMap(takenInBy);
  const proven = new Set(takenIn.flatMap(({ packs }) => packs));
  const told = new Set(previous.map((one) => one.sha256));
  const added = [...files.values()].filter((file) => file.path.startsWith(PREVIOUS) && !proven.has(file.sha256) && !previous.some((one) => one.path === file.path));
  return [
    ...previous.flatMap((one) => fileFaults(one, files)),
    ...previous.filter((one) => !proven.has(one.sha256)).map((one) => fileFault('added', one.path ?? HISTORY, 'fault-previous-unnamed', { name: one.name })),
    ...added.map(({ path }) => fileFault('added', path, 'fault-previous-unnamed', { name: path.slice(PREVIOUS.length) })),
    ...takenIn.filter(({ own }) => !told.has(own) && ![...files.values()].some((file) => file.sha256 === own)).map(({ row }) => rowFault('missing', HISTORY, row, 'fault-previous-missing')),
  ];
}

function fileFaults({ path, sha256 }: HistoryPrevious, files: ReadonlyMap<string, FoundFile>): Fault[] {
  if (path === null) return [];
  const file = files.get(path);
  if (file === undefined) return [fileFault('missing', path, 'fault-file-missing')];
  return file.sha256 === sha256 ? [] : [fileFault('changed', path, 'fault-previous-changed')];
}

/** The pack that a row says the car came with, and those that came within it. */
function takenInBy(entry: PackEntry): { readonly row: number; readonly own: string; readonly packs: readonly string[] }[] {
  if (entry.row.kind !== packTakenIn.kind) return [];
  const named = namedSchema.safeParse(shownValues(entry));
  return named.success ? [{ row: entry.row.seq, own: named.data.pack, packs: [named.data.pack, ...(named.data.before ?? []).map((one) => one.pack)] }] : [];
}
