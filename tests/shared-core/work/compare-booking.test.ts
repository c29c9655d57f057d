import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Booking, CameBackLine, Quote, QuoteLine } from '../../../shared-core/work/booking.ts';
import { chargedInAll, compareBooking } from '../../../shared-core/work/compare-booking.ts';
import { quoteGroups } from '../../../shared-core/work/quote-groups.ts';
import { quoteSum } from '../../../shared-core/work/quote-sum.ts';

type Covered = readonly [covers: string, amount: number | null];

function quoteOf(lines: readonly Covered[], totalMinor: number | null = null): Quote {
  return { id: 'quote-1', by: null, on: '2026-11-25' as never, validUntil: null, totalMinor, paper: null, note: '', lines: lines.map(([covers, amountMinor]): QuoteLine => ({ text: covers, covers: covers.split('').filter((one) => one !== '-'), amountMinor })) };
}

/** 'a100' done for 100, 'b' done with no charge said, '!c' not done, '+50' done unasked for 50, '~5' not wanted and done for 5. */
function backOf(words: string, chargedMinor: number | null = null): NonNullable<Booking['cameBack']> {
  const lines = words.split(' ').filter((one) => one !== '').map((word): CameBackLine => {
    const amount = /\d+$/.exec(word)?.[0];
    const common = { unwanted: null, wanted: null, text: word, note: '', chargedMinor: amount === undefined ? null : Number(amount) };
    if (word.startsWith('+')) return { ...common, as: 'done-unasked' };
    if (word.startsWith('~')) return { ...common, as: 'not-wanted-done', unwanted: 'u' };
    return word.startsWith('!') ? { ...common, as: 'not-done', wanted: word.slice(1, 2) } : { ...common, as: 'done', wanted: word.slice(0, 1) };
  });
  return { doneOn: '2026-11-25' as never, lines, chargedMinor, paper: null, note: '' };
}

describe('a quote adds up', () => {
  test.each([
    { case: 'its lines', lines: [['a', 7000], ['b', 250]], total: null, sum: { totalMinor: 7250, linesMinor: 7250, differs: false } },
    { case: 'a sum as it was named, though its lines make another: 7000 + 250 = 7250, not 7200', lines: [['a', 7000], ['b', 250]], total: 7200, sum: { totalMinor: 7200, linesMinor: 7250, differs: true } },
    { case: 'a line without an amount leaves the sum unknown', lines: [['a', 7000], ['b', null]], total: null, sum: { totalMinor: null, linesMinor: null, differs: false } },
    { case: 'a sum alone', lines: [], total: 5, sum: { totalMinor: 5, linesMinor: null, differs: false } },
  ] as const)('$case', ({ lines, total, sum }) => {
    expect(quoteSum(quoteOf(lines, total))).toEqual(sum);
  });
});

describe('groups of a quote share no line', () => {
  test.each([
    { case: 'one price for each', lines: [['a', 10], ['b', 20]], total: null, groups: [['a', 10], ['b', 20]] },
    { case: 'one price over two', lines: [['ab', 30], ['c', 5]], total: null, groups: [['ab', 30], ['c', 5]] },
    { case: 'labour and parts of one line: 80 + 12', lines: [['a', 80], ['b', 7], ['a', 12]], total: null, groups: [['a', 92], ['b', 7]] },
    { case: 'a chain: ab and bc hang together by b', lines: [['ab', 30], ['bc', 5]], total: null, groups: [['abc', 35]] },
    { case: 'a part without a price leaves its group unknown', lines: [['a', 80], ['a', null], ['b', 7]], total: null, groups: [['a', null], ['b', 7]] },
    { case: 'a sum for lines without a price is for all', lines: [['a', 80], ['b', null]], total: 100, groups: [['ab', 100]] },
    { case: 'a sum that the lines do not make is for all', lines: [['a', 80], ['b', 10]], total: 108, groups: [['ab', 108]] },
    { case: 'what was not asked stands alone', lines: [['-', 9], ['a', 1]], total: null, groups: [['', 9], ['a', 1]] },
  ] as const)('$case', ({ lines, total, groups }) => {
    expect(quoteGroups(quoteOf(lines, total)).map((one) => [one.covers.join(''), one.minor])).toEqual(groups);
  });
});

describe('what came back is held against a quote', () => {
  test.each([
    { case: 'all done, line by line: 110 for 100', lines: [['a', 60], ['b', 40]], back: 'a70 b40', charged: null, same: true, like: [100, 110], why: [null, null] },
    { case: 'two for one price, the charge printed as one sum', lines: [['ab', 100]], back: 'a b', charged: 90, same: true, like: [100, 90], why: [null] },
    { case: 'less was done, so less is no saving', lines: [['ab', 100]], back: 'a60 !b', charged: 60, same: false, like: null, why: ['not-done'] },
    { case: 'of two prices the one for what was done is compared: 60 against 70', lines: [['a', 60], ['b', 40]], back: 'a70 !b', charged: 70, same: false, like: [60, 70], why: [null, 'not-done'] },
    { case: 'unasked work is on one side only', lines: [['a', 60]], back: 'a60 +50', charged: 110, same: false, like: [60, 60], why: [null] },
    { case: 'unasked for nothing changes nothing', lines: [['a', 60]], back: 'a +0', charged: 55, same: true, like: [60, 55], why: [null] },
    { case: 'done against our wish, charged: not the same work', lines: [['a', 60]], back: 'a60 ~5', charged: null, same: false, like: [60, 60], why: [null] },
    { case: 'a line of which nobody said anything', lines: [['ab', 60]], back: 'a60', charged: null, same: false, like: null, why: ['not-said'] },
    { case: 'no charge known', lines: [['a', 60], ['b', 40]], back: 'a b40', charged: null, same: true, like: [40, 40], why: ['no-charge', null] },
    { case: 'charges that do not make the printed sum are held against nothing: 60 + 40 is not 95', lines: [['a', 60], ['b', 40]], back: 'a60 b40', charged: 95, same: true, like: null, why: ['no-charge', 'no-charge'] },
    { case: 'a price for what nobody asked', lines: [['-', 9], ['a', 60]], back: 'a60', charged: 60, same: false, like: [60, 60], why: ['not-asked', null] },
    { case: 'no price of its own', lines: [['a', null], ['b', 40]], back: 'a60 b40', charged: null, same: true, like: [40, 40], why: ['no-price', null] },
  ] as const)('$case', ({ lines, back, charged, same, like, why }) => {
    const compared = compareBooking(quoteOf(lines), backOf(back, charged));
    expect(compared.groups.map((one) => one.why)).toEqual(why);
    expect(compared.sameWork).toBe(same);
    expect(compared.like === null ? null : [compared.like.quotedMinor, compared.like.chargedMinor]).toEqual(like);
  });

  test('charged in all: as printed, else the charges of what was done, else not known', () => {
    expect(chargedInAll(backOf('a10 !b', 12))).toBe(12);
    expect(chargedInAll(backOf('a10 !b +5'))).toBe(15);
    expect(chargedInAll(backOf('a10 b'))).toBeNull();
    expect(chargedInAll(backOf(''))).toBeNull();
  });
});

const anyLines = fc.array(fc.tuple(fc.uniqueArray(fc.constantFrom('a', 'b', 'c', 'd'), { maxLength: 3 }).map((all) => all.join('')), fc.option(fc.nat(900), { nil: null })), { minLength: 1, maxLength: 6 });
const anyBack = fc.tuple(fc.subarray(['a', 'b', 'c', 'd']), fc.array(fc.nat(900), { minLength: 4, maxLength: 4 }), fc.subarray(['a', 'b', 'c', 'd']), fc.option(fc.nat(900), { nil: null })).map(
  ([done, charges, not, total]) => backOf([...done.map((one, at) => `${one}${charges[at]}`), ...not.filter((one) => !done.includes(one)).map((one) => `!${one}`)].join(' '), total),
);

test('no price is held against a charge unless all that it covers was done, no line counts twice, and the order of lines does not matter', () => {
  fc.assert(fc.property(anyLines, anyBack, (lines, back) => {
    const compared = compareBooking(quoteOf(lines), back);
    const done = new Set(back.lines.filter((one) => one.as === 'done').map((one) => one.wanted));
    for (const group of compared.groups) if (group.why === null) expect(group.covers.every((id) => done.has(id))).toBe(true);
    const covered = compared.groups.flatMap((one) => one.covers);
    expect(covered.length).toBe(new Set(covered).size);
    expect(compared.groups.flatMap((one) => one.lines).sort()).toEqual(lines.map((_, at) => at).sort());
    expect(compareBooking(quoteOf([...lines].reverse()), back).like).toEqual(compared.like);
  }));
});
