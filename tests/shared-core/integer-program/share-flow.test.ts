import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shareFlow, type FlowSink, type FlowSource } from '../../../shared-core/integer-program/share-flow.ts';

describe('shareFlow', () => {
  test.each([
    { case: 'nothing wanted', holds: [3], sinks: [], shares: [] },
    { case: 'one to one, the rest stays', holds: [5], sinks: [{ wants: 4, from: [0] }], shares: [[0, 0, 4]] },
    { case: 'too little', holds: [3], sinks: [{ wants: 4, from: [0] }], shares: null },
    { case: 'enough, but out of reach', holds: [9, 0], sinks: [{ wants: 1, from: [1] }], shares: null },
    {
      case: 'the first choice is taken back for the one that has no other: first come alone would fail',
      holds: [4, 4],
      sinks: [{ wants: 4, from: [0, 1] }, { wants: 4, from: [0] }],
      shares: [[1, 0, 4], [0, 1, 4]],
    },
    { case: 'the earlier source is emptied first', holds: [2, 5], sinks: [{ wants: 3, from: [1, 0] }], shares: [[0, 0, 2], [1, 0, 1]] },
  ])('$case', ({ holds, sinks, shares }) => {
    const shared = shareFlow(holds.map((each) => ({ holds: each })), sinks);
    expect(shared?.map((share) => [share.source, share.sink, share.amount]) ?? null).toEqual(shares);
  });

  test('shares exactly when Hall\'s condition holds for every set of sinks (source: Gale 1957, from memory)', () => {
    const problems = fc.record({
      sources: fc.array(fc.record({ holds: fc.nat(6) }), { minLength: 1, maxLength: 4 }),
      sinks: fc.array(fc.record({ wants: fc.nat(5), from: fc.uniqueArray(fc.nat(3), { maxLength: 4 }) }), { maxLength: 4 }),
    });
    fc.assert(
      fc.property(problems, ({ sources, sinks: anySinks }) => {
        const sinks = anySinks.map((sink) => ({ ...sink, from: sink.from.filter((at) => at < sources.length) }));
        const shares = shareFlow(sources, sinks);
        expect(shares !== null).toBe(hallHolds(sources, sinks));
        if (shares !== null) expectShared(sources, sinks, shares);
      }),
      { seed: 20261125, numRuns: 400 },
    );
  });
});

function hallHolds(sources: readonly FlowSource[], sinks: readonly FlowSink[]): boolean {
  for (let set = 0; set < 1 << sinks.length; set += 1) {
    const chosen = sinks.filter((_, at) => ((set >> at) & 1) === 1);
    const wanted = chosen.reduce((sum, sink) => sum + sink.wants, 0);
    const held = sources.reduce((sum, source, at) => sum + (chosen.some((sink) => sink.from.includes(at)) ? source.holds : 0), 0);
    if (wanted > held) return false;
  }
  return true;
}

function expectShared(sources: readonly FlowSource[], sinks: readonly FlowSink[], shares: NonNullable<ReturnType<typeof shareFlow>>): void {
  for (const share of shares) expect(sinks[share.sink]?.from.includes(share.source) && share.amount > 0).toBe(true);
  sources.forEach((source, at) => expect(total(shares.filter((share) => share.source === at))).toBeLessThanOrEqual(source.holds));
  sinks.forEach((sink, at) => expect(total(shares.filter((share) => share.sink === at))).toBe(sink.wants));
}

function total(shares: readonly { readonly amount: number }[]): number {
  return shares.reduce((sum, share) => sum + share.amount, 0);
}
