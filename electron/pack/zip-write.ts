import { createReadStream } from 'node:fs';
import { crc32 } from 'node:zlib';
import { assert } from '../../shared-core/result/assert.ts';
import type { PackContent, PackFile } from '../../shared-core/handover/pack-files.ts';
import { compareUtf8 } from '../../shared-core/journal/utf8-text.ts';
import { centralRecord, endRecord, localHeader, type ZipFacts } from './zip-layout.ts';

/** A file has changed on disk between being measured and being written. */
export class FileChangedError extends Error {
  readonly source: string;
  constructor(source: string) {
    super(`The file ${source} changed while it was being read.`);
    this.source = source;
  }
}

/**
 * The bytes of a ZIP of these files below a folder, in the pack's one layout, piece by piece; files on disk are streamed. Throws
 * FileChangedError where a file is no longer what was measured.
 */
export async function* zipBytes(base: string, files: readonly PackFile[]): AsyncGenerator<Buffer> {
  const directory: Buffer[] = [];
  let offset = 0;
  for (const { facts, content } of entriesOf(base, files)) {
    const header = localHeader(facts);
    directory.push(centralRecord(facts, offset));
    yield header;
    yield* contentBytes(content, facts);
    offset += header.length + facts.size;
  }
  const directoryBytes = directory.reduce((sum, record) => sum + record.length, 0);
  yield* directory;
  yield endRecord(directory.length, directoryBytes, offset);
}

function entriesOf(base: string, files: readonly PackFile[]): { readonly facts: ZipFacts; readonly content: PackContent }[] {
  const named = files.map((file) => ({ name: `${base}/${file.path}`, file })).sort((a, b) => compareUtf8(a.name, b.name));
  named.forEach(({ name }, at) => assert(named[at - 1]?.name !== name, `one entry named ${name}`));
  return named.map(({ name, file }) => {
    const crc = file.content.kind === 'bytes' ? crc32(file.content.bytes) : file.content.crc32;
    return { facts: { name: Buffer.from(name), size: file.size, crc32: crc }, content: file.content };
  });
}

async function* contentBytes(content: PackContent, facts: ZipFacts): AsyncGenerator<Buffer> {
  if (content.kind === 'bytes') {
    yield Buffer.from(content.bytes.buffer, content.bytes.byteOffset, content.bytes.byteLength);
    return;
  }
  let [size, crc] = [0, 0];
  for await (const chunk of createReadStream(content.source)) {
    const bytes = chunk as Buffer;
    [size, crc] = [size + bytes.length, crc32(bytes, crc)];
    yield bytes;
  }
  // The headers are written already: what follows them must be what they say.
  if (size !== facts.size || crc !== facts.crc32) throw new FileChangedError(content.source);
}
