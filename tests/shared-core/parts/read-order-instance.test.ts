import { readFileSync, existsSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { hasWords, sayRefusal } from '../../../shared-core/result/words/say.ts';
import { readOrderInstance } from '../../../shared-core/parts/read-order-instance.ts';
import { written } from './order-written.ts';

const whole = written({
  suppliers: [{ deliveryMinor: 495, freeFromMinor: 5000, minimumMinor: 100 }],
  parts: [{ id: 'p1', meets: ['oil-A'], contains: [] }, { id: 'kit', contains: [{ part: 'p1', quantity: 2 }] }],
  offers: [{ part: 'p1', priceMinor: 3499, most: 3, breaks: [{ packs: 3, priceMinor: 3199 }] }],
  needs: [{ spec: 'oil-A', quantity: 4, mix: false, step: 1, rank: 0, laterMinor: 5 }],
  shelf: [{ part: 'p1', quantity: 1, expires: '2027-03-01' }],
});

/** The whole instance with one thing at a path replaced. */
function changed(path: readonly (string | number)[], value: unknown): unknown {
  const copy: unknown = structuredClone(whole);
  let at = copy as Record<string | number, unknown>;
  for (const step of path.slice(0, -1)) at = at[step] as Record<string | number, unknown>;
  at[path.at(-1) ?? ''] = value;
  return copy;
}

describe('readOrderInstance', () => {
  test('takes a whole instance as it is, and fills in what may be absent', () => {
    expect(readOrderInstance(whole)).toEqual({ ok: true, value: whole });
    const bare = { suppliers: [{ id: 's1', deliveryMinor: 0, leadDays: 1 }], parts: [{ id: 'p', meets: [] }], offers: [{ id: 'o', supplier: 's1', part: 'p', quantity: 1, priceMinor: 1 }], needs: [{ id: 'n', car: 'c', spec: 'x', quantity: 1, neededBy: '2027-01-16' }], shelf: [{ part: 'p', quantity: 0 }], orderOn: '2027-01-02' };
    expect(readOrderInstance(bare)).toMatchObject({
      ok: true,
      value: {
        suppliers: [{ freeFromMinor: null, minimumMinor: 0 }],
        parts: [{ contains: [] }],
        offers: [{ most: null, breaks: [] }],
        needs: [{ mix: true, step: null, rank: 1, laterMinor: null }],
        shelf: [{ expires: null }],
      },
    });
  });

  test.each([
    { case: 'no list of offers', path: ['offers'], value: undefined, code: 'not-understood' },
    { case: 'a field nobody knows', path: ['needs', 0, 'colour'], value: 'pink', code: 'unknown-field' },
    { case: 'a supplier that is not there', path: ['offers', 0, 'supplier'], value: 's9', code: 'unknown-supplier' },
    { case: 'a part that is not there', path: ['offers', 0, 'part'], value: 'p9', code: 'unknown-part' },
    { case: 'a part in a kit that is not there', path: ['parts', 1, 'contains', 0, 'part'], value: 'p9', code: 'unknown-part' },
    { case: 'a part on the shelf that is not there', path: ['shelf', 0, 'part'], value: 'p9', code: 'unknown-part' },
    { case: 'a kit in itself', path: ['parts', 1, 'contains', 0, 'part'], value: 'kit', code: 'kit-in-kit' },
    { case: 'an id twice', path: ['parts', 1, 'id'], value: 'p1', code: 'id-twice' },
    { case: 'an offer called shelf', path: ['offers', 0, 'id'], value: 'shelf', code: 'reserved-id' },
    { case: 'two prices from as many packs', path: ['offers', 0, 'breaks'], value: [{ packs: 3, priceMinor: 1 }, { packs: 3, priceMinor: 2 }], code: 'break-twice', at: ['offers', 0, 'breaks', 1, 'packs'] },
    { case: 'an empty id', path: ['needs', 0, 'id'], value: '', code: 'text-empty' },
    { case: 'no such day', path: ['needs', 0, 'neededBy'], value: '2027-02-29', code: 'not-a-date' },
    { case: 'a day that is no text', path: ['orderOn'], value: 20270102, code: 'not-a-date' },
    { case: 'a price with part of a minor unit', path: ['offers', 0, 'priceMinor'], value: 0.5, code: 'not-an-amount' },
    { case: 'a price below 0', path: ['offers', 0, 'priceMinor'], value: -1, code: 'not-an-amount' },
    { case: 'a price above all cars', path: ['offers', 0, 'priceMinor'], value: 1e13, code: 'not-an-amount' },
    { case: 'a pack of nothing', path: ['offers', 0, 'quantity'], value: 0, code: 'not-a-quantity' },
    { case: 'a quantity below 0', path: ['shelf', 0, 'quantity'], value: -1, code: 'not-a-quantity' },
    { case: 'a quantity that is no number', path: ['needs', 0, 'quantity'], value: '4', code: 'not-a-quantity' },
    { case: 'a third', path: ['needs', 0, 'quantity'], value: 1 / 3, code: 'order-quantity-too-fine' },
    { case: 'a quantity above a million', path: ['needs', 0, 'quantity'], value: 1_000_001, code: 'not-a-quantity' },
    { case: 'part of a pack', path: ['offers', 0, 'most'], value: 1.5, code: 'not-understood' },
    { case: 'a rank beyond wishes', path: ['needs', 0, 'rank'], value: 3, code: 'not-understood' },
    { case: 'goods that came yesterday', path: ['suppliers', 0, 'leadDays'], value: -1, code: 'not-understood' },
    { case: 'a step of 0', path: ['needs', 0, 'step'], value: 0, code: 'not-a-quantity' },
  ])('refuses $case by code, path and sentence', ({ path, value, code, at }) => {
    const read = readOrderInstance(changed(path, value));
    if (read.ok) throw new Error('not refused');
    expect(read.refusal).toMatchObject({ code, path: at ?? (code === 'unknown-field' ? path.slice(0, -1) : path) });
    expect(hasWords(code) && !sayRefusal(read.refusal).includes('{')).toBe(true);
  });

  test.each([undefined, null, [], 'text', 3])('refuses %s, which is no instance at all', (value) => {
    expect(readOrderInstance(value)).toMatchObject({ ok: false, refusal: { code: 'not-understood' } });
  });
});

const PUBLISHED = new URL('../../../../shared/cases/cap71.order.json', import.meta.url);
test.skipIf(!existsSync(PUBLISHED))('reads the published case (skipped where ../shared/cases is absent)', () => {
  expect(readOrderInstance(JSON.parse(readFileSync(PUBLISHED, 'utf8'))).ok).toBe(true);
});
