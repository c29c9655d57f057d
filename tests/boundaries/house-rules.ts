import { brandCasts } from './brand-casts.ts';
import { dataIsJson, fileSize, noBarrel } from './file-shape.ts';
import { importDirection } from './import-direction.ts';
import { fileNames, folders } from './names.ts';
import { noCycle } from './no-cycle.ts';
import { oneDoor, sqlInStore } from './one-door.ts';
import { pureCore } from './pure-core.ts';
import { shutHatches } from './shut-hatches.ts';
import type { Rule } from './source.ts';
import { verifiersApart } from './verifiers-apart.ts';

/** Every rule of the house by what it says. */
export const HOUSE_RULES = {
  'imports go one way': importDirection,
  'no round of imports': noCycle,
  'the core has no clock and no chance': pureCore,
  'units and dates are made at their door': brandCasts,
  'no code file over 400 lines': fileSize,
  'data is JSON': dataIsJson,
  'no barrels': noBarrel,
  'files are named by the domain': fileNames,
  'no folder outside the plan': folders,
  'one door to the page, the database and the solver': oneDoor,
  'SQL only in the store': sqlInStore,
  'no way round the window’s guards': shutHatches,
  'a verifier shares no code with its solver': verifiersApart,
} as const satisfies Record<string, Rule>;
