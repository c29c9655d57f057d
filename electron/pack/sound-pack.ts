import { open } from 'node:fs/promises';
import { historyPartSchema, type HistoryPart } from '../../shared-core/handover/history-part.ts';
import { rowsPartSchema, sealPartSchema, type RowsPart, type SealPart } from '../../shared-core/handover/journal-part.ts';
import { HISTORY, ROWS, SEAL } from '../../shared-core/handover/pack-files.ts';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import { fileSource } from './byte-source.ts';
import { measureBytes } from './measure-bytes.ts';
import { readZip } from './zip-read.ts';

/** What is read of a pack that was checked and found sound. */
export interface SoundPack {
  readonly history: HistoryPart;
  readonly rows: RowsPart;
  readonly seal: SealPart;
  readonly bytes: number;
  /** The bytes of one of its files; null where it has none of that path, or it is too large. */
  readonly read: (path: string) => Promise<Buffer | null>;
}

/** Larger files are not taken out of a pack: what a household keeps as a paper is far below. */
const LARGEST_FILE = 64_000_000;

/** Reads what is needed of a sound pack. Refused `pack-not-sound` where it is not one after all. */
export async function openSoundPack(path: string): Promise<Result<SoundPack>> {
  const read = (wanted: string) => readOne(path, wanted);
  const [history, rows, seal] = await Promise.all([parsed(read, HISTORY, historyPartSchema), parsed(read, ROWS, rowsPartSchema), parsed(read, SEAL, sealPartSchema)]);
  if (history === null || rows === null || seal === null) return refuse('pack-not-sound', { count: 1, first: path });
  const file = await open(path, 'r');
  const bytes = (await file.stat()).size;
  await file.close();
  return ok({ history, rows, seal, bytes, read });
}

async function readOne(path: string, wanted: string): Promise<Buffer | null> {
  const file = await open(path, 'r');
  try {
    const { sources } = await readZip(fileSource(file, 0, (await file.stat()).size));
    const source = sources.find((one) => one.path === wanted);
    return source === undefined ? null : (await measureBytes(await source.open(), LARGEST_FILE)).bytes;
  } finally {
    await file.close();
  }
}

async function parsed<Value>(read: SoundPack['read'], path: string, schema: { readonly parse: (value: unknown) => Value }): Promise<Value | null> {
  const bytes = await read(path);
  return bytes === null ? null : schema.parse(JSON.parse(bytes.toString('utf8')));
}
