import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkPackAt } from '../../electron/pack/check-pack.ts';
import type { CheckReport } from '../../shared-core/handover/check-report.ts';
import { packCheckView } from '../../shared-core/views/pack-check-view.ts';
import { sealText } from '../../shared-core/journal/seal-text.ts';
import { must } from '../../shared-core/result/assert.ts';
import { diceOf } from '../shared-core/parts/order-seeds.ts';
import { PACK_FAULTS, type BrokenPack } from '../storm/pack-faults.ts';
import { seededPack } from '../storm/seeded-pack.ts';
import { zipOf } from './unpack.ts';

// Source: own count, of what a pack must survive; the codes are those that `check` names. The storm runs 500 faults on as many packs.
const FAULTS = Number(process.env['STORM_PACK_FAULTS'] ?? 25);
const UNTOUCHED = Number(process.env['STORM_PACKS'] ?? 3);
const SEED = Number(process.env['STORM_SEED'] ?? 20_261_125);
const NAMES = Object.keys(PACK_FAULTS);
const CODES = ['missing', 'added', 'changed', 'renamed', 'reordered', 'truncated', 'container', 'wrong-root', 'wrong-proof', 'bad-signature', 'wrong-date', 'not-a-pack'];

let folder = '';
const seen = new Set<string>();
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'trunnion-faults-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

async function checked(zip: Uint8Array, seal: string | null = null): Promise<CheckReport> {
  const path = join(folder, 'pack.zip');
  writeFileSync(path, zip);
  const report = await checkPackAt(path, seal);
  if (!report.ok) throw new Error(report.refusal.code);
  return report.value;
}

const named = (report: CheckReport) => report.faults.map(({ code, path, row }) => `${code} ${path ?? '-'}${row === null ? '' : ` row ${row}`}`);

async function judge({ zip, expected }: BrokenPack): Promise<void> {
  const report = await checked(zip);
  if (expected.kind === 'by-seal') return judgeBySeal(zip, report, sealText(expected.seal));
  report.faults.forEach((fault) => seen.add(fault.code));
  if (expected.kind === 'exactly') expect(named(report).sort()).toEqual([...expected.named].sort());
  else {
    expect(report.faults.map((fault) => fault.code)).toContain(expected.code);
    expect([...new Set(report.faults.map((fault) => fault.path))]).toEqual([expected.path]);
  }
}

/** Without a seal nothing is amiss, and the check says that it cannot tell; with one it is found. */
async function judgeBySeal(zip: Uint8Array, report: CheckReport, seal: string): Promise<void> {
  const { notes } = packCheckView(report);
  expect(named(report)).toEqual([]);
  expect(notes).toContain('A pack that was rebuilt whole with a new key cannot be told from this one. Only a seal given to you earlier can: check again with it.');
  const withSeal = await checked(zip, seal);
  withSeal.faults.forEach((fault) => seen.add(fault.code));
  expect(packCheckView(withSeal).faults.map(({ code, path, text }) => [code, path, text])).toEqual([['bad-signature', 'data/journal/seal.json', 'The seal you gave was made with another key. This pack was rebuilt with a new key, or it is of another household.']]);
}

describe('a pack with one fault, from a seed', () => {
  for (let run = 0; run < FAULTS; run += 1) {
    const name = must(NAMES[run % NAMES.length], 'kind of fault');
    test(`${run}: ${name}`, async () => {
      const dice = diceOf(SEED + run);
      const seeded = await seededPack(dice, name === 'the pack of the keeper before' || dice.chance(20));
      await judge(await must(PACK_FAULTS[name], name)(seeded, dice));
    });
  }

  test('every code was met', () => {
    expect([...seen].sort()).toEqual([...CODES].sort());
  });
});

test(`${UNTOUCHED} untouched packs have no fault, with and without their seal`, async () => {
  for (let run = 0; run < UNTOUCHED; run += 1) {
    const { pack, seal } = await seededPack(diceOf(SEED + 10_000 + run), run % 2 === 0);
    const zip = await zipOf(pack.name, pack.files);
    expect([run, named(await checked(zip)), named(await checked(zip, sealText(seal)))]).toEqual([run, [], []]);
  }
});
