import type { Readable } from 'node:stream';
import type { ByteSource } from './byte-source.ts';

/** A file of a pack that can be streamed, from a folder or a ZIP. */
export interface FoundSource {
  readonly path: string;
  readonly open: () => Promise<Readable>;
  /** The CRC-32 that the container states for it; null where there is none. */
  readonly statedCrc32: number | null;
  /** Its bytes in place, for a pack within the pack; null where they are compressed. */
  readonly within: ByteSource | null;
}
