import { constants } from 'node:fs';
import { open, readdir, stat, type FileHandle } from 'node:fs/promises';
import { join } from 'node:path';
import { fileFault, isLeftBySystem, type Fault, type FoundFile } from '../../shared-core/handover/check-fault.ts';
import { checkPack } from '../../shared-core/handover/check-pack.ts';
import type { CheckReport } from '../../shared-core/handover/check-report.ts';
import { PREVIOUS } from '../../shared-core/handover/pack-files.ts';
import type { Seal } from '../../shared-core/journal/seal.ts';
import { parseSeal } from '../../shared-core/journal/seal-text.ts';
import { ok, refuse, type Message, type Result } from '../../shared-core/result/result.ts';
import { sha256, verifyEd25519 } from '../host/node-digests.ts';
import { fileSource, type ByteSource } from './byte-source.ts';
import type { FoundSource } from './found-source.ts';
import { readFolder } from './read-folder.ts';
import { readFound } from './read-found.ts';
import { readZip } from './zip-read.ts';

/** Packs within packs: one for each keeper. What lies deeper cannot be vouched for, and is a fault. */
const DEEPEST = 20;

/** What is said of a whole pack, as it is said of an earlier keeper's within this one. */
const OF_EARLIER: Readonly<Record<string, string>> = { 'note-period': 'note-period-earlier', 'note-period-from': 'note-period-from-earlier', 'note-period-to': 'note-period-to-earlier', 'note-sample': 'note-sample-earlier' };

/**
 * Checks a pack, as a ZIP or as the folder it was unpacked into, and every earlier keeper's pack in it. Nothing is written.
 *
 * Refused: `pack-not-found`, `pack-unreadable`, and what `parseSeal` refuses for a seal text that is none.
 */
export async function checkPackAt(path: string, givenSeal: string | null = null): Promise<Result<CheckReport>> {
  const seal = givenSeal === null ? ok(null) : parseSeal(givenSeal);
  if (!seal.ok) return seal;
  try {
    const kind = await stat(path);
    if (kind.isDirectory()) return ok(await checkFolder(await baseFolder(path), seal.value));
    if (!kind.isFile()) return refuse('pack-unreadable', { path, why: 'not a file' });
    const file = await open(path, constants.O_RDONLY);
    try {
      return ok(await checkZip(await wholeFile(file), seal.value, 0));
    } finally {
      await file.close();
    }
  } catch (error) {
    const why = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    return refuse(why === 'ENOENT' ? 'pack-not-found' : 'pack-unreadable', { path, why });
  }
}

async function wholeFile(file: FileHandle): Promise<ByteSource> {
  return fileSource(file, 0, (await file.stat()).size);
}

/** A ZIP unpacked by hand often lands one folder deeper, beside what a system put there. */
async function baseFolder(folder: string): Promise<string> {
  const entries = (await readdir(folder, { withFileTypes: true })).filter((entry) => !isLeftBySystem(entry.name));
  const [only] = entries;
  return entries.length === 1 && only?.isDirectory() === true ? join(folder, only.name) : folder;
}

async function checkFolder(folder: string, seal: Seal | null): Promise<CheckReport> {
  const { sources, faults } = await readFolder(folder);
  const previous = (path: string, check: (source: ByteSource) => Promise<CheckReport>) => withFile(join(folder, path), check);
  return checkSources({ sources, faults, base: null, seal, depth: 0 }, previous);
}

async function withFile(path: string, check: (source: ByteSource) => Promise<CheckReport>): Promise<CheckReport> {
  const file = await open(path, constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0));
  try {
    return await check(await wholeFile(file));
  } finally {
    await file.close();
  }
}

async function checkZip(source: ByteSource, seal: Seal | null, depth: number): Promise<CheckReport> {
  const { sources, faults, base } = await readZip(source);
  const within = new Map(sources.map((one) => [one.path, one.within]));
  return checkSources({ sources, faults, base, seal, depth }, (path, check) => {
    const inner = within.get(path) ?? null;
    return inner === null ? Promise.resolve(null) : check(inner);
  });
}

interface Opened {
  readonly sources: readonly FoundSource[];
  readonly faults: readonly Fault[];
  readonly base: string | null;
  readonly seal: Seal | null;
  readonly depth: number;
}

/** Opens a pack within this pack; null where its bytes are not there as they are. */
type OpenPrevious = (path: string, check: (source: ByteSource) => Promise<CheckReport>) => Promise<CheckReport | null>;

async function checkSources({ sources, faults, base, seal, depth }: Opened, openPrevious: OpenPrevious): Promise<CheckReport> {
  const { found, faults: unread, crcFaults } = await readFound(sources);
  const container = [...faults, ...unread];
  const excused = new Set(container.flatMap((fault) => fault.path ?? []));
  const report = checkPack({ found, container, excused, base, givenSeal: seal }, { sha256, verify: verifyEd25519 });
  return withPrevious(withCrc(report, crcFaults), { found, depth, seal }, openPrevious);
}

/** A wrong CRC is news only where the bytes themselves are as they should be. */
function withCrc(report: CheckReport, crcFaults: readonly Fault[]): CheckReport {
  const named = new Set(report.faults.map((fault) => fault.path));
  return { ...report, faults: [...report.faults, ...crcFaults.filter((fault) => !named.has(fault.path))] };
}

interface Within {
  readonly found: readonly FoundFile[];
  readonly depth: number;
  readonly seal: Seal | null;
}

/** The packs within are compared with a given seal too where it is of another key than this pack's: it may be an earlier keeper's. */
async function withPrevious(report: CheckReport, { found, depth, seal }: Within, openPrevious: OpenPrevious): Promise<CheckReport> {
  const given = report.faults.some(isOtherKey) ? seal : null;
  let whole = report;
  for (const { path } of found.filter((file) => file.path.startsWith(PREVIOUS) && file.path.endsWith('.zip'))) {
    if (depth >= DEEPEST) {
      whole = { ...whole, faults: [...whole.faults, fileFault('container', path, 'fault-previous-too-deep', { most: DEEPEST })] };
      continue;
    }
    const inner = await openPrevious(path, (source) => checkZip(source, given, depth + 1));
    if (inner === null) whole = { ...whole, warnings: [...whole.warnings, { key: 'warning-previous-unchecked', values: { path } }] };
    else whole = given === null ? joined(whole, path, inner) : comparedWithin(whole, path, inner);
  }
  return whole;
}

function isOtherKey({ message }: Fault): boolean {
  return message.key === 'fault-given-other-key';
}

/** Where the given seal is of an earlier keeper's key, what comparing came to is told of that pack, and that this one is not proven by it. */
function comparedWithin(outer: CheckReport, at: string, inner: CheckReport): CheckReport {
  const isOfKey = inner.seal !== null && !inner.faults.some(isOtherKey);
  const whole = joined(outer, at, { ...inner, faults: inner.faults.filter((fault) => !isOtherKey(fault)) });
  if (!isOfKey) return whole;
  const compared = inner.notes.flatMap(({ key, values }) => {
    if (key === 'note-given-agrees') return [{ key: 'note-given-agrees-earlier', values: { ...values, path: at } }];
    if (key === 'note-given-newer') return [{ key: 'note-given-newer-earlier', values: { ...values, path: at } }];
    return [];
  });
  const unproven = whole.notes.some((note) => note.key === 'note-no-given-seal') ? [] : [{ key: 'note-no-given-seal', values: {} }];
  return { ...whole, faults: whole.faults.filter((fault) => !isOtherKey(fault)), notes: [...whole.notes, ...compared, ...unproven] };
}

/** The report of a pack with that of an earlier keeper's pack in it, whose paths are then told from the outside. */
function joined(outer: CheckReport, at: string, inner: CheckReport): CheckReport {
  const faults = inner.faults.map((fault) => {
    const path = fault.path === null ? at : `${at}!/${fault.path}`;
    return { ...fault, path, message: { key: fault.message.key, values: { ...fault.message.values, path } } };
  });
  const warnings = inner.warnings.map(({ key, values }) => ({ key, values: { ...values, path: `${at}!/${values['path'] ?? ''}` } }));
  const withheld = inner.withheld.map((one) => ({ ...one, path: one.path === undefined ? at : `${at}!/${one.path}` }));
  return { ...outer, faults: [...outer.faults, ...faults], warnings: [...outer.warnings, ...warnings], notes: [...outer.notes, ...inner.notes.flatMap((note) => noteOfEarlier(note, at))], withheld: [...outer.withheld, ...withheld] };
}

/** A note of a pack as it is said of one within another; what a given seal came to is told by comparing alone. */
function noteOfEarlier({ key, values }: Message, at: string): Message[] {
  const { path } = values;
  if (path !== undefined) return [{ key, values: { ...values, path: `${at}!/${path ?? ''}` } }];
  const said = OF_EARLIER[key];
  return said === undefined ? [] : [{ key: said, values: { ...values, path: at } }];
}
