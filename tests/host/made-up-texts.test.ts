import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import type { MenuItemConstructorOptions } from 'electron';
import { readEntries } from '../../electron/store/journal-table.ts';
import { storeFacts } from '../../electron/store/fact-table.ts';
import { menuTemplate } from '../../electron/shell/menu.ts';
import { cars } from '../../shared-core/fleet/car.ts';
import { historyDocument } from '../../shared-core/handover/history-document.ts';
import { historySummary } from '../../shared-core/handover/history-summary.ts';
import { WHOLE_HISTORY } from '../../shared-core/handover/pack-period.ts';
import { must } from '../../shared-core/result/assert.ts';
import { formsOf } from '../../shared-core/result/words/phrase.ts';
import { EN } from '../../shared-core/result/words/en.ts';
import { say } from '../../shared-core/result/words/say.ts';
import { speakAs } from '../../shared-core/result/words/speaking.ts';
import { historyOfCar } from '../../shared-core/views/history-of-car.ts';
import { laySample } from '../sample-build.ts';
import { leftOutside, ownTexts, type LeftOutside } from '../browser/made-up/left-outside.ts';
import { day, openTestHost, temporaryFolder, type TestHost } from './open-test-host.ts';

/** What the host composes for people, in the locale made up from the keys: letters left in it were told past the words. */
let left: LeftOutside;
let host: TestHost;

const CARS = ['pip', 'wren', 'ember', 'heron', 'alder'];

async function sampleInMadeUp(): Promise<TestHost> {
  const folder = join(temporaryFolder(), 'household');
  mkdirSync(folder);
  await laySample(folder);
  const opened = openTestHost({ folder });
  left = leftOutside([...readEntries(opened.composed.context.household().store)].flatMap((entry) => ownTexts(entry.values)));
  await opened.must('household.change', { locale: 'en-XA' });
  return opened;
}

/** Texts for people in an answer: by the names of their fields. */
function proseIn(value: unknown, field = ''): string[] {
  if (typeof value === 'string') return ['text', 'texts', 'said', 'mail', 'counter', 'subject', 'title', 'proves', 'provesNot', 'notes', 'summary', 'description', 'label', 'when'].includes(field) ? [value] : [];
  if (Array.isArray(value)) return value.flatMap((one) => proseIn(one, field));
  return typeof value === 'object' && value !== null ? Object.entries(value).flatMap(([name, one]) => proseIn(one, name)) : [];
}

const strange = (texts: readonly string[]) => [...new Set(texts.map((text) => left(text)).filter((text) => text !== ''))];

describe('in the made-up locale, nothing is told past the words', () => {
  test('by a history pack’s document and its summary, car by car, whole and of some days', async () => {
    host = await sampleInMadeUp();
    const facts = storeFacts(host.composed.context.household().store);
    const found = CARS.flatMap((id) =>
      [WHOLE_HISTORY, { from: day('2024-01-01'), to: null }, { from: null, to: day('2025-06-30') }].flatMap((period) => {
        const input = historyOfCar(facts, must(facts.get(cars, id), 'car'), {
          period, today: day('2026-11-25'), sample: true, currency: 'GBP', withheld: new Set(period.from === null ? [] : ['vin', 'doneBy', 'reference', 'why', 'text']), cover: null, previous: [], papersLeftOut: false, amendments: new Map(), paperPaths: new Map(),
          marked: new Map(), treeSize: 9, root: '0'.repeat(64), keyFingerprint: '0'.repeat(64),
        });
        const { figures, ...lists } = historySummary(input);
        const blocks = historyDocument(input);
        expect(JSON.stringify(blocks).length).toBeGreaterThan(4000);
        return [...strings(blocks.blocks), blocks.title, blocks.foot, ...figures.flat(), ...Object.values(lists).flat()];
      }),
    );
    expect(found.length).toBeGreaterThan(2000);
    expect(strange(found)).toEqual([]);
  });

  test('by the answers to whatever can be asked of the household and of each car', async () => {
    host = await sampleInMadeUp();
    const [ofHousehold, ofCars]: [string[], string[]] = [[], []];
    for (const name of ['due.show', 'yard.show', 'sessions.show', 'parts.show', 'needs.show', 'order.propose', 'ledger.show', 'reminders.show', 'budget.show', 'wishes.show', 'quotes.show', 'seal.show', 'planning.show', 'papers.show', 'calendar.show'] as const) {
      const reply = await host.composed.call(name as never, {} as never);
      expect([name, reply.ok]).toEqual([name, true]);
      ofHousehold.push(...proseIn(reply));
    }
    for (const car of CARS) for (const name of ['car.show', 'intake.show', 'card.show', 'coverage.show'] as const) ofCars.push(...proseIn(await host.composed.call(name as never, { car } as never)));
    expect([ofHousehold.length > 60, ofCars.length > 300]).toEqual([true, true]);
    expect(strange([...ofHousehold, ...ofCars])).toEqual([]);
  });

  test('by a calendar file', async () => {
    host = await sampleInMadeUp();
    const reply = await host.must('calendar.write', {});
    const lines = JSON.stringify(reply).replaceAll('\\r\\n ', '').split(/\\r\\n|\\n/).filter((line) => /^(SUMMARY|DESCRIPTION|LOCATION|X-WR-CALNAME)/.test(line)).map((line) => line.replace(/^[A-Z-]+(;[^:]*)?:/, '').replaceAll('\\\\', '').replaceAll('\\,', ','));
    expect(lines.length).toBeGreaterThan(20);
    expect(strange(lines)).toEqual([]);
  });

  test('by the menu', () => {
    speakAs('en-XA');
    left = leftOutside([]);
    const act = () => undefined;
    const labels = (items: readonly MenuItemConstructorOptions[]): string[] => items.flatMap((one) => [...(one.label === undefined ? [] : [one.label]), ...labels(Array.isArray(one.submenu) ? one.submenu : [])]);
    const all = labels(menuTemplate({ openOther: act, showFolder: act, print: act, quit: act, about: act, licences: act }, { platform: 'linux', packaged: false }));
    expect(all.length).toBeGreaterThan(15);
    expect(strange(all)).toEqual([]);
    speakAs(null);
  });

  test('by any sentence at all, its places left empty', () => {
    speakAs('en-XA');
    left = leftOutside([]);
    expect(strange(Object.keys(EN).map((key) => say({ key, values: {} })))).toEqual([]);
    expect(Object.values(EN).flatMap(formsOf).length).toBeGreaterThan(1200);
    speakAs(null);
  });
});

/** Every text of a document: kinds of blocks and digests are none. */
function strings(value: unknown, field = ''): string[] {
  if (typeof value === 'string') return ['kind', 'sha256', 'paper', 'path', 'date', 'align', 'unit'].includes(field) || value === 'right' ? [] : [value];
  if (Array.isArray(value)) return value.flatMap((one) => strings(one, field));
  return typeof value === 'object' && value !== null ? Object.entries(value).flatMap(([name, one]) => strings(one, name)) : [];
}

beforeAll(() => speakAs(null));
