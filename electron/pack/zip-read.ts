import { fileFault, type Fault } from '../../shared-core/handover/check-fault.ts';
import { compareUtf8 } from '../../shared-core/journal/utf8-text.ts';
import { isWellFormed } from '../../shared-core/journal/canonical-json.ts';
import type { ByteSource } from './byte-source.ts';
import type { FoundSource } from './found-source.ts';
import { auditZip, type StatedEntry } from './zip-audit.ts';
import { missingEndFault, readZipEnd, type ZipEnd } from './zip-end.ts';
import { readMembers, type ZipMember, type ZipMembers } from './zip-entries.ts';
import { LOCAL_BYTES } from './zip-layout.ts';

/** A pack's ZIP as found. */
export interface ZipPack {
  /** The folder that the ZIP holds everything in; empty where there is none. */
  readonly base: string | null;
  readonly sources: readonly FoundSource[];
  readonly faults: readonly Fault[];
}

/** Reads a pack's ZIP strictly: its structure is audited byte for byte, and only harmless entries are given out. */
export async function readZip(source: ByteSource): Promise<ZipPack> {
  const end = await readZipEnd(source);
  if (end === null) return { base: null, sources: [], faults: [await missingEndFault(source)] };
  const members = await readMembers(source);
  if ('unreadable' in members) return { base: null, sources: [], faults: [fileFault('container', null, 'fault-zip-unreadable', { why: members.unreadable })] };
  const faults = await zipFaults(source, end, members);
  // Where the end itself is wrong, so may be the number of entries: what was read of them would only mislead.
  const isEndWrong = faults.some((fault) => fault.path === null && fault.message.key !== 'fault-zip-anew');
  return { base: members.base, sources: isEndWrong ? [] : members.members.map((member) => foundSource(member, source)), faults };
}

/** A ZIP made anew by another program is named once, not also by what follows from that; entries that could harm always are. */
async function zipFaults(source: ByteSource, end: ZipEnd, members: ZipMembers): Promise<Fault[]> {
  const audit = await auditZip(source, end, members.stated);
  const named = new Set([...members.faults, ...audit].map((fault) => fault.path));
  const isAnew = audit.some((fault) => fault.message.key === 'fault-zip-anew');
  const order = isAnew ? [] : orderFaults(members.stated).filter((fault) => !named.has(fault.path));
  const harmful = new Set(members.faults.map((fault) => fault.path));
  const sorted = members.faults.filter((fault) => !isAnew || fault.message.key !== 'fault-entry-folder');
  return [...sorted, ...audit.filter((fault) => fault.path === null || !harmful.has(fault.path)), ...order];
}

function orderFaults(entries: readonly StatedEntry[]): Fault[] {
  return entries.flatMap((entry, at) => {
    const before = entries[at - 1];
    if (before === undefined || !isWellFormed(before.path + entry.path) || compareUtf8(before.path, entry.path) < 0) return [];
    return [fileFault('container', entry.path, 'fault-zip-order', { before: before.path })];
  });
}

function foundSource(member: ZipMember, source: ByteSource): FoundSource {
  const start = member.offset + LOCAL_BYTES + member.name.length;
  return {
    path: member.path,
    open: member.open,
    statedCrc32: member.crc32,
    within: member.stored ? source.part(start, start + member.size) : null,
  };
}
