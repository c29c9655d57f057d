import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { checkOfferSums } from './largest-sums.ts';
import { offers, offerSchema, offerSet, type Offer } from './offer.ts';
import { parts } from './part.ts';
import { allOf, known, newId, setWhole } from './set-whole.ts';
import { suppliers } from './supplier.ts';

const shape = offerSchema.shape;

/** States an offer: a pack of a part at a supplier's price. */
export const setOffer = setWhole(
  offerSet,
  z.strictObject({
    ...shape,
    id: newId,
    number: shape.number.default(null),
    taxAdded: shape.taxAdded.default(null),
    depositMinor: shape.depositMinor.default(0),
    most: shape.most.default(null),
    breaks: shape.breaks.default([]),
    withdrawnOn: shape.withdrawnOn.default(null),
  }),
  offerSchema,
  (facts, offer, moment) =>
    allOf(
      () => known(facts, suppliers, offer.supplier, 'supplier'),
      () => known(facts, parts, offer.part, 'part'),
      () => (offer.seenOn > moment.today ? refuse('date-in-future', { date: offer.seenOn }, ['seenOn']) : ok(null)),
      () => checkBreaks(offer),
      () => checkOfferSums(facts, offer),
    ),
);

/** A break is a step to a cheaper pack that can be reached. */
function checkBreaks({ id, breaks, most, priceMinor }: Offer): Result<unknown> {
  const steps = [...breaks].sort((a, b) => a.packs - b.packs);
  const twice = steps.find((step, at) => steps[at - 1]?.packs === step.packs);
  if (twice !== undefined) return refuse('break-twice', { offer: id, packs: twice.packs }, ['breaks']);
  const beyond = steps.find((step) => most !== null && step.packs > most);
  if (beyond !== undefined) return refuse('break-beyond-most', { packs: beyond.packs, most }, ['breaks']);
  const dearer = steps.find((step, at) => step.priceMinor > (steps[at - 1]?.priceMinor ?? priceMinor));
  return dearer === undefined ? ok(null) : refuse('break-dearer', { packs: dearer.packs }, ['breaks']);
}

/** Says that an offer is not to be had any more: it stays for what was bought by it, and no proposal takes it. */
export const withdrawOffer = change({
  request: z.strictObject({ id: idSchema, on: dateSchema.optional() }),
  reply: z.object({ set: offerSchema }),
  decide: (facts, request, moment) => {
    const offer = facts.get(offers, request.id);
    if (offer === null) return refuse('unknown-offer', { id: request.id }, ['id']);
    const withdrawn = { ...offer, withdrawnOn: request.on ?? moment.today };
    if (withdrawn.withdrawnOn > moment.today) return refuse('date-in-future', { date: withdrawn.withdrawnOn }, ['on']);
    return ok({ entries: [newEntry(offerSet, withdrawn)], reply: { set: withdrawn } });
  },
});

/** Says that an offer was seen again: on which day, and at which price where it is another. */
export const seeOffer = change({
  request: z.strictObject({ id: idSchema, on: dateSchema.optional(), priceMinor: shape.priceMinor.optional(), breaks: shape.breaks.optional(), most: shape.most.optional() }),
  reply: z.object({ set: offerSchema }),
  decide: (facts, { id, on, ...asked }, moment) => {
    const offer = facts.get(offers, id);
    if (offer === null) return refuse('unknown-offer', { id }, ['id']);
    const price = asked.priceMinor ?? offer.priceMinor;
    // What is no step to a cheaper pack any more goes, as in a price list.
    const breaks = asked.breaks ?? offer.breaks.filter((step) => step.priceMinor < price);
    const seen = offerSchema.parse({ ...offer, ...asked, breaks, seenOn: on ?? moment.today, withdrawnOn: null });
    if (seen.seenOn > moment.today) return refuse('date-in-future', { date: seen.seenOn }, ['on']);
    const sound = allOf(() => checkBreaks(seen), () => checkOfferSums(facts, seen));
    return sound.ok ? ok({ entries: [newEntry(offerSet, seen)], reply: { set: seen } }) : sound;
  },
});
