import type * as RealFs from 'node:fs';

/**
 * The file system with a fault at the n-th call that changes something. `once`: that call fails and the next ones do not, as a
 * full disk does. `crash`: from that call on nothing reaches the disk, not even what would clean up.
 */
export type Fault = { readonly at: number; readonly how: 'once' | 'crash' } | null;

export const disk: { fault: Fault; calls: string[] } = { fault: null, calls: [] };

const CHANGING = ['openSync', 'writeSync', 'fsyncSync', 'closeSync', 'renameSync', 'mkdirSync', 'unlinkSync'] as const;

/** `node:fs` with the fault set in `disk`. */
export function failingFs(real: typeof RealFs): typeof RealFs {
  const fsync = (file: number, then: (error: Error | null) => void) => (isNextAFault('fsync') ? void setImmediate(() => then(fault('fsync'))) : real.fsync(file, then));
  const changed = { ...Object.fromEntries(CHANGING.map((name) => [name, (...given: never[]) => call(real, name, given)])), fsync };
  return { ...real, ...changed, default: { ...real, ...changed } } as unknown as typeof RealFs;
}

function call(real: typeof RealFs, name: (typeof CHANGING)[number], given: never[]): unknown {
  if (!isNextAFault(name)) return (real[name] as (...all: never[]) => unknown)(...given);
  // What is open is closed all the same, for a test must not run out of handles.
  if (name === 'closeSync') (real.closeSync as (...all: never[]) => unknown)(...given);
  throw fault(name);
}

function isNextAFault(name: string): boolean {
  disk.calls.push(name);
  return disk.fault !== null && (disk.fault.how === 'once' ? disk.calls.length === disk.fault.at : disk.calls.length >= disk.fault.at);
}

function fault(name: string): Error {
  return Object.assign(new Error(`ENOSPC: no space left on device, ${name}`), { code: 'ENOSPC', syscall: name });
}
