import { describe, expect, test } from 'vitest';
import { draftProgram, type Program } from '../../../shared-core/integer-program/program.ts';
import { solveInPieces } from '../../../shared-core/parts/order-pieces.ts';
import { diceOf } from './order-seeds.ts';
import { testSolver } from './order-written.ts';

/** Wants covered by whole packs; each group of wants has packs of its own, some of them sold only where a choice that costs is made. */
function coverProgram(seed: number): { readonly program: Program; readonly links: ReadonlySet<number> } {
  const dice = diceOf(seed);
  const draft = draftProgram();
  const links = Array.from({ length: dice.whole(1, 3) }, () => draft.variable({ upper: 1, whole: true, cost: dice.whole(0, 12) }));
  for (let group = 0; group < dice.whole(2, 4); group += 1) {
    const packs = Array.from({ length: dice.whole(1, 4) }, () => {
      const pack = draft.variable({ upper: 9, whole: true, cost: dice.whole(3, 30) });
      if (dice.chance(70)) draft.row(-Infinity, [[pack, 1], [dice.one(links), -9]], 0);
      return pack;
    });
    for (let want = 0; want < dice.whole(1, 3); want += 1) draft.row(dice.whole(1, 15), packs.map((pack) => [pack, dice.whole(1, 7)]), Infinity);
  }
  return { program: draft.program(), links: new Set(links) };
}

/** Two wants, each with a pack of its own, both sold behind one door. */
function oneDoor(): { readonly program: Program; readonly links: ReadonlySet<number> } {
  const draft = draftProgram();
  const door = draft.variable({ upper: 1, whole: true, cost: 5 });
  for (const pack of [draft.variable({ upper: 9, whole: true, cost: 3 }), draft.variable({ upper: 9, whole: true, cost: 3 })]) {
    draft.row(1, [[pack, 1]], Infinity);
    draft.row(-Infinity, [[pack, 1], [door, -9]], 0);
  }
  return { program: draft.program(), links: new Set([door]) };
}

describe('a program solved in pieces', () => {
  // Source: own property: pieces are only a way to get there.
  test.each(Array.from({ length: 60 }, (_, at) => at + 1))('costs what it costs whole: seed %i', async (seed) => {
    const { program, links } = coverProgram(seed);
    const [whole, pieces] = [await testSolver.solve(program), await solveInPieces(program, links, testSolver, { absoluteGap: 0.9 })];
    expect(pieces.status).toBe(whole.status);
    if (whole.status !== 'optimal' || pieces.status !== 'optimal') return;
    expect(Math.round(pieces.objective)).toBe(Math.round(whole.objective));
    expect(pieces.bound).toBeLessThanOrEqual(pieces.objective + 1e-6);
  });

  test('a piece that cannot be solved is told of the whole', async () => {
    const draft = draftProgram();
    const [a, b] = [draft.variable({ upper: 1, whole: true, cost: 1 }), draft.variable({ upper: 1, whole: true, cost: 1 })];
    draft.row(1, [[a, 1]], Infinity);
    draft.row(2, [[b, 1]], Infinity);
    expect(await solveInPieces(draft.program(), new Set(), testSolver, {})).toEqual({ status: 'infeasible' });
  });

  test('stopped after the pieces, it keeps what they came to', async () => {
    const { program, links } = oneDoor();
    const solver: typeof testSolver = { solve: async (asked, options) => (asked.variables.length === program.variables.length ? { status: 'stopped', reason: 'time', best: null, bound: null, nodes: 0 } : testSolver.solve(asked, options)) };
    // By hand: two packs at 3 and the door at 5.
    expect(await solveInPieces(program, links, solver, {})).toMatchObject({ status: 'stopped', best: { objective: 11 } });
    expect(await solveInPieces(program, links, testSolver, {})).toMatchObject({ status: 'optimal', objective: 11 });
  });

  test('stopped before, it asks no further', async () => {
    const { program, links } = oneDoor();
    let asked = 0;
    const stop = { get stopped() { return asked > 0; }, onStop: () => () => undefined };
    const answer = await solveInPieces(program, links, { solve: () => ((asked += 1), Promise.resolve({ status: 'stopped', reason: 'asked', best: null, bound: null, nodes: 0 })) }, { stop });
    expect([answer, asked]).toEqual([{ status: 'stopped', reason: 'asked', best: null, bound: null, nodes: 0 }, 1]);
  });
});
