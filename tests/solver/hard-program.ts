import { draftProgram, type Program } from '../../shared-core/integer-program/program.ts';

/**
 * A market-split program: halve several lists at once, as nearly as can be. Small, yet far beyond any solver in seconds.
 * Source of the family: Cornuejols and Dawande 1998, from memory; the numbers come from a linear congruential generator.
 */
export function hardProgram(things = 40, lists = 4, seed = 7): Program {
  const next = numbersFrom(seed);
  const draft = draftProgram();
  const left = Array.from({ length: things }, () => draft.variable({ whole: true, upper: 1 }));
  for (let list = 0; list < lists; list += 1) {
    const sizes = left.map(() => Math.floor(next() * 100));
    const half = Math.floor(sizes.reduce((sum, size) => sum + size, 0) / 2);
    const over = draft.variable({ cost: 1 });
    const under = draft.variable({ cost: 1 });
    draft.row(half, [...left.map((at, i) => [at, sizes[i] ?? 0] as const), [over, 1], [under, -1]], half);
  }
  return draft.program();
}

function numbersFrom(seed: number): () => number {
  let state = seed;
  return () => (state = (state * 1_103_515_245 + 12_345) % 2_147_483_648) / 2_147_483_648;
}
