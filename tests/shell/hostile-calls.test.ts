import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Result } from '../../shared-core/result/result.ts';
import { hasWords } from '../../shared-core/result/words/say.ts';
import { mustAsk } from '../browser/ask-host.ts';
import { chromiumHere } from '../browser/launch-chromium.ts';
import { databaseState, type DatabaseState } from '../loopback/database-state.ts';
import { hostileCall } from '../loopback/hostile-requests.ts';
import { diceOf, type Dice } from '../shared-core/parts/order-seeds.ts';
import { EXOTIC_VALUES, exoticValue } from './exotic-values.ts';
import { launchStage } from './rehearsal/launch-stage.ts';
import { rehearse, type Rehearsal } from './rehearsal/rehearse.ts';

const CALLS = Number(process.env['STORM_CALLS'] ?? 500);
const SEED = Number(process.env['STORM_SEED'] ?? 20_261_130);

/** A call as a page might make it: a text that is JSON or not, and perhaps a value that none can hold, as the request or in one of its fields. */
interface WindowCall {
  readonly operation: string;
  readonly body: string;
  readonly exotic: number | null;
  readonly field: number | null;
}

function windowCall(dice: Dice): WindowCall {
  const exotic = dice.chance(20) ? dice.whole(0, EXOTIC_VALUES - 1) : null;
  return { ...hostileCall(dice), exotic, field: dice.chance(70) ? dice.whole(0, 9) : null };
}

/** What came of it: the host's answer, or that the value could not even leave the page. */
type Came = { readonly kind: 'answered'; readonly result: Result<unknown> } | { readonly kind: 'not-sent'; readonly why: string };

describe.skipIf(chromiumHere === null)('hostile calls from a window', () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'storm-window-'));
  const household = path.join(folder, 'household');
  let browser: Browser;
  let rehearsal: Rehearsal;
  let page: Page;
  let state: DatabaseState;

  beforeAll(async () => {
    browser = await launchStage();
    rehearsal = rehearse({ browser, args: ['--household', household] });
    page = await rehearsal.page();
    await mustAsk(page, 'household.start', { name: 'Storm', unit: 'mi' });
    await mustAsk(page, 'car.add', { id: 'pip', name: 'Pip', firstRegistered: '2022-11-25' as never, keptSince: '2022-11-25' as never });
    await mustAsk(page, 'reading.record', { id: 'r1', car: 'pip', value: 9000, date: '2024-01-10' as never });
    state = databaseState(path.join(household, 'household.sqlite'));
    await page.evaluate((source) => void Object.assign(window, { exoticValue: Reflect.apply(Reflect.get(window, 'eval') as (text: string) => unknown, null, [`(${source})`]) }), exoticValue.toString());
  });
  afterAll(async () => {
    state.close();
    await rehearsal.stop();
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  });

  const call = (given: WindowCall): Promise<Came> =>
    page.evaluate(async ({ operation, body, exotic, field }) => {
      const revive = (): unknown => {
        try {
          return JSON.parse(body) as unknown;
        } catch {
          return body;
        }
      };
      let request = revive();
      try {
        if (exotic !== null) {
          const value = (Reflect.get(window, 'exoticValue') as (at: number) => unknown)(exotic);
          const names = typeof request === 'object' && request !== null ? Object.keys(request) : [];
          const name = field === null ? undefined : names[field % names.length];
          if (name === undefined) request = value;
          else Reflect.set(request as object, name, value);
        }
        const result = await window.trunnion?.operations[operation]?.(request);
        return { kind: 'answered' as const, result: result ?? { ok: false, refusal: { code: 'nothing', values: {} } } };
      } catch (error) {
        return { kind: 'not-sent' as const, why: error instanceof Error ? `${error.name}: ${error.message}` : String(error) };
      }
    }, given) as Promise<Came>;

  test(`${CALLS} from seed ${SEED}: each answered in good form, none that is refused changes anything`, { timeout: 3_000_000 }, async () => {
    const dice = diceOf(SEED);
    const counts = { ok: 0, refused: 0, notSent: 0 };
    for (let at = 0; at < CALLS; at += 1) {
      const given = windowCall(dice);
      const before = state.digest();
      const came = await call(given);
      const told = `call ${at} of seed ${SEED}: ${JSON.stringify({ ...given, body: given.body.slice(0, 300) })} -> ${JSON.stringify(came).slice(0, 400)}`;
      if (came.kind === 'not-sent') {
        expect(given.exotic, told).not.toBeNull();
        expect(came.why, told).toMatch(/could not be cloned|DataCloneError|Cannot stringify|^Error: read$/);
        expect(state.digest(), told).toBe(before);
        counts.notSent += 1;
        continue;
      }
      expect(JSON.stringify(came.result), told).not.toMatch(/\\n\s+at |node:internal|\.(ts|js):\d/);
      if (came.result.ok) {
        counts.ok += 1;
        continue;
      }
      expect(came.result.refusal.code, told).not.toBe('internal');
      expect(hasWords(came.result.refusal.code), told).toBe(true);
      expect(state.digest(), told).toBe(before);
      counts.refused += 1;
    }
    console.log(`${CALLS} hostile calls from a window, seed ${SEED}: ${counts.ok} done, ${counts.refused} refused, ${counts.notSent} that could not be sent`);
    expect(counts.ok).toBeGreaterThan(CALLS / 100);
    expect(counts.refused).toBeGreaterThan(CALLS / 2);
    expect(await mustAsk(page, 'household.examine', {})).toMatchObject({ faults: [] });
    expect(rehearsal.said()).toBe('');
  });
});
