import { z } from 'zod';
import { served } from '../journal/operation.ts';
import { paperSchema } from '../records/paper.ts';
import { redactPaperReply, redactPaperRequest } from '../records/redact-paper.ts';
import { idSchema, sha256Schema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { refusedBy } from '../result/refused-by.ts';
import { householdSchema } from '../fleet/household.ts';
import { LARGEST_HANDED_BYTES, LARGEST_PIECE_BASE64, MOST_PREVIEW_PAGES, packChoiceSchema, packPreviewSchema, takenInSchema } from '../handover/handover-schemas.ts';
import { keepImportRequest, keptImportSchema, previewImportRequest } from '../views/import/import-request.ts';
import { importViewSchema } from '../views/import/import-view.ts';
import { standingImportsSchema } from '../views/import/standing-imports.ts';
import { keepPricesRequest, keptPricesSchema, previewPricesRequest, priceViewSchema } from '../views/prices/price-view.ts';
import { papersRequestSchema, papersViewSchema, paperViewSchema } from '../views/papers-view.ts';
import { paperUseSchema } from '../views/paper-uses.ts';
import { givenSealSchema, sealViewSchema } from '../views/seal-view.ts';
import { recordViewSchema } from '../views/record-view.ts';
import { packCheckSchema } from '../views/pack-check-view.ts';
import { lookSchema } from './look.ts';
import { calendarRequestSchema } from '../views/calendar-schema.ts';
import { orderRequestSchema, orderViewSchema } from '../views/order-view-schema.ts';
import { planRequestSchema, planViewSchema } from '../views/plan-view-schema.ts';
import { searchRequestSchema, searchViewSchema } from '../views/search-view.ts';

/** The largest paper taken, in bytes. */
export const LARGEST_PAPER_BYTES = 25_000_000;
const LARGEST_BASE64 = Math.ceil(LARGEST_PAPER_BYTES / 3) * 4;

const faultSchema = z.object({ where: z.string(), what: z.string() });

/** What only the host can do, for it needs disk, solver or signer. */
export const hostOperations = {
  /** Where the program stands: with a household or without, which folder, and how it is to look. */
  'household.state': served('ask', z.strictObject({}), z.object({ household: householdSchema.nullable(), folder: z.string(), sample: z.boolean(), look: lookSchema })),
  /** Everything of the household that has all that was typed: in its name, its number, what is told of it, its days and amounts, or the text of its papers. */
  'household.search': served('ask', searchRequestSchema, searchViewSchema),
  /** How the screens are to look from here on, in every window; the sample looks as the household does. */
  'look.set': served('do', z.strictObject({ look: lookSchema }), z.object({ look: lookSchema })),
  /** Opens the sample household in a folder of its own; the present one stays as it is. Under a name it tells how far it is, and can be stopped: then nothing of it is left. */
  'sample.open': served('do', z.strictObject({ job: z.string().min(1).max(80).nullable().default(null) }), z.object({ household: householdSchema })),
  /** Leaves the sample and deletes its folder. */
  'sample.leave': served('do', z.strictObject({}), z.object({})),
  /** Keeps a paper's bytes by their digest. */
  'paper.keep': served(
    'do',
    z.strictObject({ name: plainText(120), base64: z.string().min(1, refusedBy('paper-empty')).max(LARGEST_BASE64, refusedBy('paper-too-large')) }),
    /** `known`: the same bytes were here already, under the name of `paper`; `uses` is what they belong to. */
    z.object({ paper: paperSchema, known: z.boolean(), uses: z.array(paperUseSchema) }),
  ),
  /** The papers: those that belong to nothing yet, those that do, those set aside, or all; a page of what is asked for. */
  'papers.show': served('ask', papersRequestSchema, papersViewSchema),
  /** One paper, with what it may belong to. */
  'paper.show': served('ask', z.strictObject({ paper: sha256Schema }), paperViewSchema),
  /** Marks the parts of a paper that are blacked out in what is handed over, in place of those marked before; none: nothing is blacked out. */
  'paper.redact': served('do', redactPaperRequest, redactPaperReply),
  /** Undoes entries by their numbers: those an operation answered as its undo token, or a whole import. */
  'entry.withdraw': served('do', z.strictObject({ entries: z.array(z.int().min(0)).min(1).max(200_000), why: z.string().max(500).default('') }), z.object({ withdrawn: z.int() })),
  /** All about one record: what it holds, what stands beside it, and every entry of it. */
  'record.show': served('ask', z.strictObject({ record: idSchema }), recordViewSchema),
  /** Takes a record back with what was written in the same steps, while nothing stands upon it and no seal has gone out over it. */
  'record.take-back': served('do', z.strictObject({ record: idSchema, why: plainText(300) }), z.object({ withdrawn: z.int(), /** What was written in the same step and stays all the same. */ stays: z.array(z.string()) })),
  /** Merges the needs of all cars into the cheapest orders. */
  'order.propose': served('long', orderRequestSchema, orderViewSchema),
  /** Proposes what to do together, when and where. It changes nothing: `session.propose` lays it on the yard, `session.keep` keeps it. */
  'plan.propose': served('long', planRequestSchema, planViewSchema),
  /** Stops long work by the name it was begun under; what it has found by then stands. */
  'job.stop': served('ask', z.strictObject({ job: z.string().min(1).max(80) }), z.object({ stopped: z.boolean() })),
  /** Shows what an imported table would come to, row by row, and what it leaves open; nothing is stored. */
  'import.preview': served('ask', previewImportRequest, importViewSchema),
  /** Stores an imported table; refused rows are left out, and the whole is undone in one step. */
  'import.keep': served('do', keepImportRequest, keptImportSchema),
  /** The imports that stand, each with what keeps it from being withdrawn. */
  'import.standing': served('ask', z.strictObject({}), standingImportsSchema),
  /** Withdraws a whole import by its id, while nothing stands upon what it brought. */
  'import.withdraw': served('do', z.strictObject({ id: idSchema, why: z.string().max(500).default('') }), z.object({ withdrawn: z.int() })),
  /** A calendar file (iCalendar) of what `calendar.show` shows. */
  'calendar.write': served('ask', calendarRequestSchema, z.object({ name: z.string(), text: z.string(), events: z.int() })),
  /** Shows what a price list would come to, row by row; nothing is stored. */
  'prices.preview': served('ask', previewPricesRequest, priceViewSchema),
  /** Stores the prices of a list; rows that are refused or known are left out, and the whole is undone in one step. */
  'prices.keep': served('do', keepPricesRequest, keptPricesSchema),
  /** The head of the journal, and the seals that were given so far; nothing is given by it. */
  'seal.show': served('ask', z.strictObject({}), sealViewSchema),
  /** Gives a seal over the journal as it stands: from then on none of its entries can be undone. The same head has one seal. */
  'seal.give': served('do', z.strictObject({}), givenSealSchema),
  /** Composes a car's history pack without writing it: what it will hold, and its document to be looked at page by page. */
  'pack.preview': served('long', packChoiceSchema, packPreviewSchema),
  /** A page of the document that was composed last under this name, counted from 1, as WebP. */
  'pack.preview-page': served('ask', z.strictObject({ preview: idSchema, page: z.int().min(1).max(MOST_PREVIEW_PAGES) }), z.object({ webp: z.string() })),
  /** Writes a car's history pack as a ZIP into a folder. */
  'pack.write': served(
    'long',
    packChoiceSchema.extend({
      /** The folder to write into; null: `packs` in the household's own folder. */
      out: z.string().min(1).max(4000).nullable().default(null),
    }),
    /** `notes`: what the packs of earlier keepers show all the same, or what is not proven without them. */
    z.object({ path: z.string(), name: z.string(), files: z.int(), bytes: z.int(), seal: z.string(), notes: z.array(z.string()) }),
  ),
  /** Takes a piece of a pack that a page hands over, in order from its first byte; one pack at a time, held apart from the household. */
  'pack.hand': served(
    'ask',
    z.strictObject({ handed: idSchema, from: z.int().min(0).max(LARGEST_HANDED_BYTES, refusedBy('handed-too-large')), base64: z.string().min(1, refusedBy('pack-empty')).max(LARGEST_PIECE_BASE64, refusedBy('handed-too-large')) }),
    z.object({ bytes: z.int() }),
  ),
  /** Checks the pack that a page handed over. */
  'pack.check-handed': served('long', z.strictObject({ handed: idSchema, seal: z.string().max(2000).nullable().default(null) }), packCheckSchema),
  /** Takes in the pack that a page handed over; it is checked again, as it is kept. */
  'pack.take-in-handed': served('long', z.strictObject({ handed: idSchema, seal: z.string().max(2000).nullable().default(null), sample: z.boolean().default(false) }), takenInSchema),
  /** Checks a history pack, against a seal given before where there is one. */
  'pack.check': served('long', z.strictObject({ pack: z.string().min(1).max(4000), seal: z.string().max(2000).nullable().default(null) }), packCheckSchema),
  /** Takes in the pack of an earlier keeper: the car with its history, the pack kept byte for byte. */
  'pack.take-in': served(
    'long',
    z.strictObject({
      pack: z.string().min(1).max(4000),
      seal: z.string().max(2000).nullable().default(null),
      /** A pack of the sample may come into a real household. */
      sample: z.boolean().default(false),
    }),
    takenInSchema,
  ),
  /** Checks database, papers and journal by replay. */
  'household.examine': served('long', z.strictObject({}), z.object({ entries: z.int(), papers: z.int(), head: z.string(), faults: z.array(faultSchema) })),
  /** Makes a checked copy of the household. */
  'backup.make': served('long', z.strictObject({}), z.object({ folder: z.string(), entries: z.int() })),
} as const;
