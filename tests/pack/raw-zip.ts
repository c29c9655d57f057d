import { crc32, deflateRawSync } from 'node:zlib';
import { centralRecord, endRecord, localHeader } from '../../electron/pack/zip-layout.ts';

/** An entry of a ZIP as anyone may write it. */
export interface RawEntry {
  readonly name: string | Buffer;
  readonly text?: string | Buffer;
  readonly localName?: string;
  readonly mode?: number;
  readonly flags?: number;
  readonly method?: number;
  /** As stated, whatever it holds. */
  readonly size?: number;
  /** Likewise, of its bytes in the ZIP. */
  readonly stored?: number;
}

/** A ZIP written by hand, with whatever an honest writer would not write. */
export function rawZip(entries: readonly RawEntry[]): Buffer {
  const [bodies, records]: [Buffer[], Buffer[]] = [[], []];
  let offset = 0;
  for (const entry of entries) {
    const plain = Buffer.from(entry.text as string | undefined ?? '');
    const data = entry.method === 8 ? deflateRawSync(plain) : plain;
    const name = Buffer.from(entry.name as string);
    const facts = { size: entry.size ?? plain.length, crc32: crc32(plain) };
    const local = localHeader({ name: Buffer.from(entry.localName ?? name), ...facts });
    const central = centralRecord({ name, ...facts }, offset);
    local.writeUInt16LE(entry.method ?? 0, 8);
    local.writeUInt32LE(entry.stored ?? data.length, 18);
    central.writeUInt16LE(entry.flags ?? 0x800, 8);
    central.writeUInt16LE(entry.method ?? 0, 10);
    central.writeUInt32LE(entry.stored ?? data.length, 20);
    central.writeUInt32LE(((entry.mode ?? 0o100644) << 16) >>> 0, 38);
    bodies.push(local, data);
    records.push(central);
    offset += local.length + data.length;
  }
  const directory = Buffer.concat(records);
  return Buffer.concat([...bodies, directory, endRecord(entries.length, directory.length, offset)]);
}
