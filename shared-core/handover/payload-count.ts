import { BAG_INFO, PAYLOAD } from './bag.ts';
import { infoValues } from './bag-lines.ts';
import { fileFault, type Fault, type FoundFile } from './check-fault.ts';

const LABEL = 'Payload-Oxum';

/** By how many bytes the payload falls short of what `bag-info.txt` counted; null where it counted none. */
export function shorterBy(files: ReadonlyMap<string, FoundFile>): number | null {
  const stated = /^(\d+)\.(\d+)$/.exec(statedCounts(files)[0] ?? '');
  return stated === null ? null : Number(stated[1]) - payloadOf(files).bytes;
}

/** The count of bytes and files that `bag-info.txt` states, where it is not that of the files found, or stands twice. */
export function countFaults(files: ReadonlyMap<string, FoundFile>): Fault[] {
  const stated = statedCounts(files);
  const { bytes, count } = payloadOf(files);
  const actual = `${bytes}.${count}`;
  const isGood = stated.length === 0 || (stated.length === 1 && stated[0] === actual);
  return isGood ? [] : [fileFault('changed', BAG_INFO, 'fault-payload-count', { stated: stated.join(', '), actual })];
}

function statedCounts(files: ReadonlyMap<string, FoundFile>): string[] {
  return infoValues(files.get(BAG_INFO)?.text ?? '', LABEL);
}

function payloadOf(files: ReadonlyMap<string, FoundFile>): { readonly bytes: number; readonly count: number } {
  const payload = [...files.values()].filter((file) => file.path.startsWith(PAYLOAD));
  return { bytes: payload.reduce((sum, file) => sum + file.size, 0), count: payload.length };
}
