import type { z } from 'zod';
import type { hostOperations } from '../../shared-core/contract/host-operations.ts';
import type { Result } from '../../shared-core/result/result.ts';
import type { HostContext } from './host-context.ts';
import { makeBackup } from './serve/make-backup.ts';
import { examineHousehold } from './serve/examine-household.ts';
import { checkHanded, handPack, takeInHanded } from './serve/handed-pack.ts';
import { previewPack, previewPage } from './serve/preview-pack.ts';
import { checkHistoryPack } from './serve/check-history-pack.ts';
import { writeHistoryPack } from './serve/write-history-pack.ts';
import { keepImport, previewImport } from './serve/import-table.ts';
import { keepPaper } from './serve/keep-paper.ts';
import { showPaper, showPapers } from './serve/show-papers.ts';
import { redactPaper } from './serve/redact-paper.ts';
import { leaveSample } from './serve/leave-sample.ts';
import { showRecord } from './serve/show-record.ts';
import { takeBackRecord } from './serve/take-back-record.ts';
import { serveCalendar } from './serve/write-calendar.ts';
import { serveOrder } from './serve/propose-order.ts';
import { servePlan, serveStop } from './serve/propose-plan.ts';
import { keepPrices, previewPriceList } from './serve/price-list.ts';
import { giveSeal, showSeal } from './serve/give-seal.ts';
import { openSample } from './serve/open-sample.ts';
import { setLook } from './serve/set-look.ts';
import { standingImports } from './serve/standing-imports.ts';
import { searchHousehold } from './serve/search-household.ts';
import { stateHousehold } from './serve/state-household.ts';
import { takeInHistoryPack } from './serve/take-in-history-pack.ts';
import { withdrawImport } from './serve/withdraw-import.ts';
import { withdrawEntry } from './serve/withdraw-entry.ts';

type Served = typeof hostOperations;
type Servers = {
  readonly [Name in keyof Served]: (context: HostContext, request: z.output<Served[Name]['request']>) => Result<z.output<Served[Name]['reply']>> | Promise<Result<z.output<Served[Name]['reply']>>>;
};

/** What serves each operation that only the host can do; a missing one does not compile. */
export const servedOperations: Servers = {
  'household.state': stateHousehold,
  'household.search': searchHousehold,
  'look.set': setLook,
  'sample.open': openSample,
  'sample.leave': leaveSample,
  'paper.keep': keepPaper,
  'papers.show': showPapers,
  'paper.show': showPaper,
  'paper.redact': redactPaper,
  'entry.withdraw': withdrawEntry,
  'record.show': showRecord,
  'record.take-back': takeBackRecord,
  'order.propose': serveOrder,
  'plan.propose': servePlan,
  'job.stop': serveStop,
  'import.preview': previewImport,
  'import.keep': keepImport,
  'import.standing': standingImports,
  'import.withdraw': withdrawImport,
  'calendar.write': serveCalendar,
  'prices.preview': previewPriceList,
  'prices.keep': keepPrices,
  'seal.show': showSeal,
  'seal.give': giveSeal,
  'pack.preview': previewPack,
  'pack.preview-page': previewPage,
  'pack.write': writeHistoryPack,
  'pack.hand': handPack,
  'pack.check-handed': checkHanded,
  'pack.take-in-handed': takeInHanded,
  'pack.check': checkHistoryPack,
  'pack.take-in': takeInHistoryPack,
  'household.examine': examineHousehold,
  'backup.make': makeBackup,
};
