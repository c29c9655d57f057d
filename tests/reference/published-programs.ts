import { draftProgram, type Program } from '../../shared-core/integer-program/program.ts';
import published from './published-programs.json' with { type: 'json' };

/** A published problem written as a program, with the optimum its source gives. */
export interface PublishedProgram {
  readonly case: string;
  readonly source: string;
  readonly program: Program;
  readonly optimum: number;
}

const choice = { whole: true, upper: 1 };

/** The problems of published-programs.json as programs. */
export const publishedPrograms: readonly PublishedProgram[] = [
  { case: 'warehouses with capacities', ...published.warehouses, program: warehouses() },
  { case: 'lot sizes over twelve months', ...published.lotSizes, program: lotSizes() },
  { case: 'knapsack of ten things', ...published.knapsack, optimum: -published.knapsack.optimum, program: knapsack() },
  { case: 'set cover that greedy choice misses', ...published.setCover, program: setCover() },
  { case: 'transport without whole variables', ...published.transport, program: transport() },
];

function warehouses(): Program {
  const { fixed, capacity, cost } = published.warehouses;
  const draft = draftProgram();
  const open = capacity.map(() => draft.variable({ ...choice, cost: fixed }));
  const serves = cost.map((row) => row.map((each) => draft.variable({ ...choice, cost: each })));
  for (const row of serves) draft.row(1, row.map((at) => [at, 1]), 1);
  capacity.forEach((most, warehouse) => {
    draft.row(-Infinity, [...serves.map((row) => [row[warehouse] ?? 0, 1] as const), [open[warehouse] ?? 0, -most]], 0);
  });
  return draft.program();
}

function lotSizes(): Program {
  const { demand, setup, holding } = published.lotSizes;
  const draft = draftProgram();
  const total = demand.reduce((sum, each) => sum + each, 0);
  let before: number | null = null;
  demand.forEach((wanted, month) => {
    const made = draft.variable({});
    const ordered = draft.variable({ ...choice, cost: setup[month] ?? 0 });
    const kept = draft.variable({ cost: holding });
    draft.row(-Infinity, [[made, 1], [ordered, -total]], 0);
    draft.row(wanted, [[made, 1], [kept, -1], ...(before === null ? [] : [[before, 1] as const])], wanted);
    before = kept;
  });
  return draft.program();
}

function knapsack(): Program {
  const { capacity, weight, profit } = published.knapsack;
  const draft = draftProgram();
  const taken = profit.map((each) => draft.variable({ ...choice, cost: -each }));
  draft.row(-Infinity, taken.map((at, i) => [at, weight[i] ?? 0]), capacity);
  return draft.program();
}

function setCover(): Program {
  const { elements, sets } = published.setCover;
  const draft = draftProgram();
  const taken = sets.map(() => draft.variable({ ...choice, cost: 1 }));
  for (let element = 1; element <= elements; element += 1) {
    draft.row(1, taken.filter((_, i) => sets[i]?.includes(element)).map((at) => [at, 1]), Infinity);
  }
  return draft.program();
}

function transport(): Program {
  const { supply, demand, cost } = published.transport;
  const draft = draftProgram();
  const sent = cost.map((row) => row.map((each) => draft.variable({ cost: each })));
  sent.forEach((row, from) => draft.row(-Infinity, row.map((at) => [at, 1]), supply[from] ?? 0));
  demand.forEach((wanted, to) => draft.row(wanted, sent.map((row) => [row[to] ?? 0, 1]), Infinity));
  return draft.program();
}
