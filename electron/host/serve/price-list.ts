import { hexText } from '../../../shared-core/journal/hex-text.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import type { z } from 'zod';
import { LARGEST_TABLE_BYTES } from '../../../shared-core/views/import/import-request.ts';
import { keptFileName } from '../../../shared-core/views/import/show-import.ts';
import { previewPrices, type DecidedPrices } from '../../../shared-core/views/prices/preview-prices.ts';
import type { keptPricesSchema, KeepPricesRequest, PriceView } from '../../../shared-core/views/prices/price-view.ts';
import { decodeTable } from '../decode-table.ts';
import { momentOf, type HostContext } from '../host-context.ts';
import { sha256 } from '../node-digests.ts';
import { writeDecision } from '../run-change.ts';

type PreviewRequest = Omit<KeepPricesRequest, 'digest' | 'outcome'>;
type KeptPrices = z.infer<typeof keptPricesSchema>;

const BASE64 = /^[A-Za-z0-9+/]*={0,2}$/;

/** Shows what a price list would come to; nothing is stored. */
export function previewPriceList(context: HostContext, request: PreviewRequest): Result<PriceView> {
  const decided = decide(context, request);
  return decided.ok ? ok(decided.value.view) : decided;
}

/** Stores the prices of a list in one transaction; nothing where something is open or has changed since the preview. */
export function keepPrices(context: HostContext, request: KeepPricesRequest): Result<KeptPrices> {
  return writeDecision(context, () => {
    const decided = decide(context, request);
    if (!decided.ok) return decided;
    const { entries, view } = decided.value;
    if (request.digest !== null && request.digest !== view.digest) return refuse('import-file-changed');
    const [question] = view.questions;
    if (question !== undefined) return refuse('prices-questions-open', { why: question.text });
    if (request.outcome !== null && request.outcome !== view.outcome) return refuse('import-outcome-changed');
    return entries.length === 0 ? refuse('prices-nothing-new') : ok({ entries, reply: { ...view, stored: entries.length } });
  }) as Result<KeptPrices>;
}

function decide(context: HostContext, { base64, text, name, ...choices }: PreviewRequest): Result<DecidedPrices> {
  if ((base64 === null) === (text === null)) return refuse('import-text-or-bytes');
  if (base64 !== null && !BASE64.test(base64)) return refuse('paper-not-base64', {}, ['base64']);
  const bytes = base64 === null ? Buffer.from(text ?? '', 'utf8') : Buffer.from(base64, 'base64');
  if (bytes.length > LARGEST_TABLE_BYTES) return refuse('import-file-large', {});
  const decoded = decodeTable(bytes);
  if (!decoded.ok) return decoded;
  return previewPrices(context.household().facts, decoded.value.text, choices, { name: keptFileName(name), digest: hexText(sha256(bytes)) }, momentOf(context.world), sha256);
}
