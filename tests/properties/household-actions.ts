import fc from 'fast-check';

/** One thing a keeper does, as chance gives it: what kind, and numbers from which its request is made. */
export interface Action {
  readonly kind: ActionKind;
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/** A call of the contract. */
export interface Call {
  readonly operation: string;
  readonly request: Readonly<Record<string, unknown>>;
}

/** What has been made so far and may be referred to: ids by family, and what each change answered as its undo token. */
export interface Made {
  readonly ids: Readonly<Record<Named, readonly string[]>>;
  readonly undo: readonly (readonly number[])[];
  /** Sessions as they were last kept or moved, and the cars of their tasks. */
  readonly kept: readonly Kept[];
  /** The sessions on which work was begun. */
  readonly begun: readonly string[];
  /** The car of each item. */
  readonly carOf: Readonly<Record<string, string>>;
}

/** A session that was kept. */
export interface Kept {
  readonly id: string;
  readonly place: string;
  readonly tasks: readonly { readonly kind: string; readonly id: string }[];
}

export type Named = 'car' | 'reading' | 'item' | 'obligation' | 'specification' | 'part' | 'supplier' | 'lot' | 'record' | 'observation' | 'paper' | 'session' | 'offer' | 'order' | 'return' | 'tool' | 'waste' | 'followUp' | 'value' | 'photo' | 'quote' | 'wish';

/** A day of the six years before 2026-11-25. */
const dayOf = (n: number) => new Date(Date.UTC(2020, 11, 1) + (n % 2180) * 86_400_000).toISOString().slice(0, 10);
/** A day of the two months after it. */
const aheadOf = (n: number) => new Date(Date.UTC(2026, 10, 25) + (n % 60) * 86_400_000).toISOString().slice(0, 10);
/** One of a list; an id of nothing where it is empty, which is refused. */
const one = (list: readonly string[], n: number) => list[n % list.length] ?? 'nothing';
/** The last of a list every second time, so that what needs two steps on one thing happens at all. */
const latest = (list: readonly string[], n: number) => (n % 2 === 0 ? (list.at(-1) ?? 'nothing') : one(list, n));
/** Some of a list: none, one or two. */
const some = (list: readonly string[], n: number) => [...new Set(list.length === 0 ? [] : [one(list, n), one(list, n * 7 + 1)])].slice(0, n % 3);
/** One of the sessions kept last; one on which work was begun, where there is any. */
const keptOne = ({ kept }: Made, n: number) => kept.at(-1 - (n % 3)) ?? NO_SESSION;
/** One of several tasks, where there is any. */
const largerOne = ({ kept }: Made, n: number) => kept.filter((each) => each.tasks.length > 1).at(-1 - (n % 3)) ?? NO_SESSION;
const begunOne = ({ kept, begun }: Made, n: number) => kept.find((each) => each.id === begun.at(-1 - (n % 2))) ?? NO_SESSION;
/** One at a garage, where there is any. */
const garageOne = ({ kept }: Made, n: number) => kept.filter((each) => each.place !== 'home').at(-1 - (n % 2)) ?? NO_SESSION;
const NO_SESSION: Kept = { id: 'nothing', place: 'home', tasks: [{ kind: 'item', id: 'nothing' }] };
/** A step of one of its tasks: the whole of it, or the first of its sheet. */
const stepOf = ({ tasks }: Kept, n: number) => ({ task: `item/${tasks[n % tasks.length]?.id ?? 'nothing'}`, step: n % 3 === 0 ? 'step-1' : 'whole' });
const carOf = ({ carOf: cars }: Made, { tasks }: Kept, n: number) => cars[tasks[n % tasks.length]?.id ?? ''] ?? 'nothing';
const id = (prefix: string, n: number) => `${prefix}-${n % 40}`;

/** How each kind of action becomes a call. */
const CALLS = {
  'change household': (_made, { a }) => ({ operation: 'household.change', request: { name: `House ${a % 9}`, hemisphere: a % 2 === 0 ? 'north' : 'south' } }),
  'add car': (_made, { a, b }) => ({ operation: 'car.add', request: { id: id('car', a), name: `Car ${a % 40}`, unit: b % 2 === 0 ? 'km' : 'mi', laidUpMonths: b % 3 === 0 ? [1, 2] : [] } }),
  'change car': ({ ids }, { a, b }) => ({ operation: 'car.change', request: { id: one(ids.car, a), description: `as of ${b}`, severeUse: b % 2 === 0 ? 1 : 0.5 } }),
  'record reading': ({ ids }, { a, b, c }) => ({ operation: 'reading.record', request: { id: id('reading', c), car: one(ids.car, a), value: (1000 + (b % 2180) * 30) * (c % 4 === 0 ? 10 : 1), date: dayOf(b), sure: c % 5 === 0 } }),
  'replace instrument': ({ ids }, { a, b }) => ({ operation: 'reading.record', request: { car: one(ids.car, a), value: b % 50, date: dayOf(b), replaced: b % 2 === 0 ? {} : { lastShown: { value: 50_000 + (b % 9000), unit: 'km' } }, sure: true } }),
  'settle reading': ({ ids }, { a, b }) => ({ operation: 'reading.settle', request: { reading: one(ids.reading, a), verdict: ['right', 'wrong', 'corrected', 'replaced', 'other-wrong'][b % 5], ...(b % 5 === 2 ? { value: 1000 + (b % 90_000) } : {}) } }),
  'set lay-up': ({ ids }, { a, b, c }) => ({ operation: 'lay-up.set', request: { id: `rest-${c % 3}`, car: one(ids.car, a), from: dayOf(b), to: c % 2 === 0 ? dayOf(b + 60) : null } }),
  'remove lay-up': (_made, { a }) => ({ operation: 'lay-up.remove', request: { id: `rest-${a % 3}` } }),
  'set use change': ({ ids }, { a, b, c }) => ({ operation: 'use-change.set', request: { id: `change-${c % 3}`, car: one(ids.car, a), date: dayOf(b), declaredAYear: b % 2 === 0 ? null : { value: 1000 + (b % 30_000), unit: 'mi' } } }),
  'remove use change': (_made, { a }) => ({ operation: 'use-change.remove', request: { id: `change-${a % 3}` } }),
  'add item': ({ ids }, { a, b, c }) => ({
    operation: 'item.add',
    request: { id: id('item', c), car: one(ids.car, a), name: `Item ${b % 9}`, interval: { repeat: { months: 6 + (b % 60), distance: b % 2 === 0 ? null : { value: 9000, unit: 'mi' } } }, history: ['never-done', 'unknown', 'from-purchase'][c % 3], needs: some(ids.specification, c).map((specification) => ({ specification, quantity: 1.5 })) },
  }),
  'change item': ({ ids }, { a, b }) => ({ operation: 'item.change', request: { id: one(ids.item, a), source: `page ${b % 99}`, confirmed: b % 2 === 0 } }),
  'measure an item': ({ ids }, { a, b }) => ({ operation: 'item.change', request: { id: one(ids.item, a), measure: b % 3 === 0 ? null : { kind: 'pad', name: null, places: b % 2 === 0 ? [] : ['front'], limit: { value: 3, unit: 'mm' }, way: null } } }),
  'add wheel': ({ ids }, { a, b, c }) => ({ operation: 'wheel.add', request: { id: `wheel-${c % 5}`, car: one(ids.car, a), name: `W ${c % 5}`, place: ['front-left', 'rear-left', 'spare', 'off'][b % 4], on: dayOf(b), dateCode: b % 2 === 0 ? '2612' : null } }),
  'move wheel': ({ ids }, { a, b, c }) => ({ operation: 'wheel.move', request: { car: one(ids.car, a), on: dayOf(b), moves: [{ wheel: `wheel-${c % 5}`, place: ['front-left', 'rear-left', 'spare', 'off'][b % 4] }], reading: b % 5 === 0 ? { value: 1000 + (b % 2180) * 30, unit: 'km' } : null } }),
  'measure': ({ ids }, { a, b, c }) => ({
    operation: 'measurement.add',
    request: { id: `measured-${c % 8}`, car: one(ids.car, a), what: b % 2 === 0 ? 'pad' : 'tread', place: ['front-left', 'rear-left'][c % 2], date: dayOf(b), value: 1 + (b % 90) / 10, unit: 'mm', fresh: b % 7 === 0, item: c % 3 === 0 ? one(ids.item, b) : null, paper: c % 4 === 0 ? one(ids.paper, b) : null, reading: c % 5 === 0 ? { value: 1000 + (b % 2180) * 30, unit: 'km' } : null },
  }),
  'correct measurement': (_made, { a, b }) => ({ operation: 'measurement.correct', request: { id: `measured-${a % 8}`, dismissed: b % 2 === 0, typed: { value: 1 + (b % 90) / 10, unit: 'mm' } } }),
  'set wear limit': ({ ids }, { a, b, c }) => ({ operation: 'wear-limit.set', request: { car: one(ids.car, a), what: 'tread', wheel: b % 2 === 0 ? `wheel-${c % 5}` : null, limit: b % 3 === 0 ? null : { value: 2, unit: '32nds' } } }),
  'add obligation': ({ ids }, { a, b, c }) => ({ operation: 'obligation.add', request: { id: id('obligation', c), car: one(ids.car, a), kind: 'insurance', lastValidDay: dayOf(b), keepsDate: c % 2 === 0 } }),
  'renew obligation': ({ ids }, { a, b, c }) => ({ operation: 'obligation.renew', request: { id: id('renewal', c), obligation: one(ids.obligation, a), on: dayOf(b), papers: some(ids.paper, c) } }),
  'change obligation': ({ ids }, { a, b }) => ({ operation: 'obligation.change', request: { id: one(ids.obligation, a), lastValidDay: dayOf(b), noticeDays: b % 60 } }),
  'add first test': ({ ids }, { a, b, c }) => ({ operation: 'first-test.add', request: { id: id('obligation', c), car: one(ids.car, a), years: 1 + (b % 10) } }),
  'register car': ({ ids }, { a, b }) => ({ operation: 'car.change', request: { id: one(ids.car, a), firstRegistered: dayOf(b) } }),
  'set recall': ({ ids }, { a, b, c }) => ({ operation: 'recall.set', request: { id: `recall-${c % 5}`, car: one(ids.car, a), number: `R-${b % 9}`, what: 'airbag', ...(b % 2 === 0 ? {} : { doneOn: dayOf(b), how: 'replaced' }), papers: some(ids.paper, c) } }),
  'set allowance': ({ ids }, { a, b, c }) => ({ operation: 'allowance.set', request: { id: `allowance-${c % 3}`, car: one(ids.car, a), kind: b % 2 === 0 ? 'insurance' : 'warranty', distance: { value: 1000 + (b % 20_000), unit: 'km' }, every: b % 3 === 0 ? 'term' : 'year', from: dayOf(b), to: b % 5 === 0 ? dayOf(b + 400) : null } }),
  'remove allowance': (_made, { a }) => ({ operation: 'allowance.remove', request: { id: `allowance-${a % 3}` } }),
  'set specification': (_made, { a, b }) => ({ operation: 'specification.set', request: { id: id('spec', a), name: `Spec ${b % 9}`, unit: 'litre' } }),
  'set part': ({ ids }, { a, b, c }) => ({ operation: 'part.set', request: { id: id('part', a), name: `Part ${b % 9}`, meets: some(ids.specification, c), contains: b % 4 === 0 ? some(ids.part, b).map((part) => ({ part, quantity: 2 })) : [] } }),
  'set supplier': (_made, { a, b }) => ({ operation: 'supplier.set', request: { id: id('supplier', a), name: `Supplier ${a % 40}`, leadDays: b % 30, deliveryMinor: b % 900 } }),
  'set offer': ({ ids }, { a, b, c }) => ({ operation: 'offer.set', request: { id: id('offer', a), supplier: one(ids.supplier, b), part: one(ids.part, c), quantity: 5, priceMinor: b % 9000, seenOn: dayOf(c) } }),
  'set lot': ({ ids }, { a, b, c }) => ({ operation: 'lot.set', request: { id: id('lot', a), part: one(ids.part, b), quantity: 1 + (c % 9), receivedOn: dayOf(c) } }),
  'set fluid': (_made, { a, b }) => ({ operation: 'specification.set', request: { id: id('spec', a), name: `Spec ${b % 9}`, unit: 'litre', mix: b % 2 === 0, fluid: { use: 'brake-fluid', base: [null, 'glycol', 'silicone'][b % 3] } } }),
  'never mix': ({ ids }, { a, b, c }) => ({ operation: 'never-mix.set', request: { id: `pair-${c % 3}`, between: [one(ids.specification, a), one(ids.specification, b)].map((specification) => ({ kind: 'specification', id: specification })), rule: b % 2 === 0 ? 'ask' : 'never', why: 'the handbook' } }),
  'mix again': (_made, { a }) => ({ operation: 'never-mix.remove', request: { id: `pair-${a % 3}` } }),
  'prefer': ({ ids }, { a, b }) => ({ operation: 'part-preference.set', request: { id: one(ids.specification, a), parts: [one(ids.part, b)] } }),
  'supersede': (_made, { a, b }) => ({ operation: 'number.supersede', request: { id: `number-${a % 2}`, old: `N ${a % 5}`, new: `N ${b % 5}` } }),
  'keep number': (_made, { a }) => ({ operation: 'number.keep', request: { id: `number-${a % 2}` } }),
  'see offer': ({ ids }, { a, b }) => ({ operation: 'offer.see', request: { id: one(ids.offer, a), priceMinor: b % 9000, on: dayOf(b) } }),
  'withdraw offer': ({ ids }, { a, b }) => ({ operation: 'offer.withdraw', request: { id: one(ids.offer, a), on: dayOf(b) } }),
  'set parts settings': (_made, { a }) => ({ operation: 'parts-settings.set', request: { staleAfterDays: 1 + (a % 400) } }),
  'open lot': ({ ids }, { a, b }) => ({ operation: 'lot.open', request: { lot: one(ids.lot, a), on: dayOf(b), keepsOpenedDays: b % 2 === 0 ? null : 30 } }),
  'move lot': ({ ids }, { a, b }) => ({ operation: 'lot.move', request: { lot: one(ids.lot, a), where: `place ${b % 4}` } }),
  'use lot': ({ ids }, { a, b, c }) => ({ operation: 'lot.use', request: { lot: latest(ids.lot, a), quantity: 0.25 + (c % 2), on: dayOf(b), car: c % 2 === 0 ? one(ids.car, c) : null, sure: b % 2 === 0 } }),
  'discard lot': ({ ids }, { a, b }) => ({ operation: 'lot.discard', request: { lot: one(ids.lot, a), where: 'drum', on: dayOf(b) } }),
  'take stock': ({ ids }, { a, b, c }) => ({ operation: 'stock.take', request: { on: dayOf(b), lines: [{ lot: one(ids.lot, a), counted: c % 5 }] } }),
  'place order': ({ ids }, { a, b, c }) => ({ operation: 'order.place', request: { id: id('order', c), supplier: one(ids.supplier, a), placedOn: dayOf(b), sure: true, lines: [{ part: one(ids.part, c), packs: 1 + (b % 4), quantity: 2, priceMinor: b % 5000, depositMinor: c % 3 === 0 ? 100 : 0, for: [] }] } }),
  'change order': ({ ids }, { a, b }) => ({ operation: 'order.change', request: { order: one(ids.order, a), expectedOn: aheadOf(b), ...(b % 2 === 0 ? { deliveryMinor: b % 900 } : {}) } }),
  'receive order': ({ ids }, { a, b, c }) => ({ operation: 'order.receive', request: { order: latest(ids.order, a), lines: c % 4 !== 0 ? null : [{ line: 'line-1', packs: 1, found: ['good', 'damaged', 'wrong', 'not-coming'][b % 4], again: c % 3 === 0 }], papers: some(ids.paper, b) } }),
  'cancel order': ({ ids }, { a }) => ({ operation: 'order.cancel', request: { order: one(ids.order, a) } }),
  'return order': ({ ids }, { a, b }) => ({ operation: 'order.return', request: { order: latest(ids.order, a), lines: [{ line: 'line-1', packs: 1, what: b % 4 === 0 ? 'deposit' : 'goods' }], sure: true } }),
  'refund': ({ ids }, { a, b }) => ({ operation: 'order.refund', request: { return: latest(ids.return, a), minor: 1 + (b % 900) } }),
  'set tool': (_made, { a, b }) => ({ operation: 'tool.set', request: { id: `tool-${a % 4}`, name: `Tool ${a % 4}`, state: b % 2 === 0 ? 'missing' : 'borrowed', ...(b % 2 === 0 ? {} : { lender: 'a neighbour', until: aheadOf(b) }) } }),
  'remove tool': (_made, { a }) => ({ operation: 'tool.remove', request: { id: `tool-${a % 4}` } }),
  'set task tools': ({ ids }, { a, b }) => ({ operation: 'task-tools.set', request: { item: one(ids.item, a), tools: some(ids.tool, b) } }),
  'start sheet': ({ ids }, { a, b }) => ({ operation: 'sheet.start', request: { item: one(ids.item, a), from: ['spark-plugs', 'engine-oil-and-filter', 'wiper-blades', 'brake-fluid'][b % 4], replace: b % 3 === 0 } }),
  'write sheet': ({ ids }, { a, b, c }) => ({ operation: 'sheet.set', request: { item: one(ids.item, a), steps: [{ text: `step ${b % 9}`, hazards: ['lifting'], ...(c % 2 === 0 ? { torques: [{ by: 'own', name: 'a bolt', typed: { value: 1 + (b % 90), unit: 'Nm' }, source: 'page 1' }] } : {}) }], followUps: c % 3 === 0 ? [{ text: 'look again', days: b % 30 }] : [] } }),
  'remove sheet': ({ ids }, { a }) => ({ operation: 'sheet.remove', request: { item: one(ids.item, a) } }),
  'add follow-up': ({ ids }, { a, b, c }) => ({ operation: 'follow-up.add', request: { id: `again-${c % 6}`, car: one(ids.car, a), text: `look at ${b % 9}`, madeOn: dayOf(b), ...(c % 3 === 0 ? {} : { days: b % 60 }), ...(c % 2 === 0 ? { after: { value: 50 + (b % 900), unit: 'mi' } } : {}), session: c % 5 === 0 && ids.session.length > 0 ? one(ids.session, b) : null, item: c % 4 === 0 && ids.item.length > 0 ? one(ids.item, b) : null } }),
  'do follow-up': ({ ids }, { a, b }) => ({ operation: 'follow-up.done', request: { followUp: latest(ids.followUp, a), note: b % 3 === 0 ? 'looked at' : '' } }),
  'drop follow-up': ({ ids }, { a }) => ({ operation: 'follow-up.drop', request: { followUp: latest(ids.followUp, a) } }),
  'keep waste': (_made, { a, b }) => ({ operation: 'waste.keep', request: { id: `waste-${a % 4}`, what: 'old oil', quantity: 1 + (b % 5), unit: 'litre', since: dayOf(b) } }),
  'dispose waste': ({ ids }, { a, b }) => ({ operation: 'waste.dispose', request: { waste: one(ids.waste, a), how: 'collecting point', paper: b % 3 === 0 ? one(ids.paper, b) : null } }),
  'keep paper': (_made, { a }) => ({ operation: 'paper.keep', request: { name: `paper ${a % 30}.txt`, base64: Buffer.from(`the paper ${a % 30}`).toString('base64') } }),
  'add record': ({ ids }, { a, b, c }) => ({
    operation: 'record.add',
    request: { id: id('record', c), car: one(ids.car, a), date: dayOf(b), lines: [{ name: `Work ${b % 9}`, item: c % 3 === 0 ? one(ids.item, b) : null }], papers: some(ids.paper, b), lotsUsed: b % 4 === 0 ? some(ids.lot, c).map((lot) => ({ lot, quantity: 0.5 })) : [], reading: c % 2 === 0 ? { value: 1000 + (b % 2180) * 30, unit: 'km' } : null },
  }),
  'amend record': ({ ids }, { a, b }) => ({ operation: 'record.amend', request: { id: one(ids.record, a), why: `reason ${b % 9}`, note: `amended ${b}`, papers: some(ids.paper, b) } }),
  'note observation': ({ ids }, { a, b, c }) => ({ operation: 'observation.note', request: { id: id('seen', c), car: one(ids.car, a), text: `seen ${b % 9}`, record: b % 3 === 0 ? one(ids.record, b) : null, papers: some(ids.paper, b) } }),
  'close observation': ({ ids }, { a, b }) => ({ operation: 'observation.close', request: { observation: one(ids.observation, a), record: one(ids.record, b) } }),
  'import readings': ({ ids }, { a, b }) => ({ operation: 'import.keep', request: { car: one(ids.car, a), text: `date,km\n${dayOf(b)},${1000 + (b % 2180) * 30}\n${dayOf(b + 40)},${1000 + ((b + 40) % 2180) * 30}\n` } }),
  'set place': (_made, { a, b, c }) => ({ operation: 'place.set', request: { id: a % 3 === 0 ? 'home' : `garage-${a % 3}`, name: `Place ${b % 4}`, kind: a % 3 === 0 ? 'home' : 'garage', openingMinor: b % 4000, closedWeekdays: c % 2 === 0 ? [7] : [] } }),
  'remove place': (_made, { a }) => ({ operation: 'place.remove', request: { id: `garage-${a % 3}` } }),
  'set place days': (_made, { a, b, c }) => ({ operation: 'place-days.set', request: { id: `days-${c % 3}`, place: a % 2 === 0 ? 'home' : `garage-${a % 3}`, from: aheadOf(b), to: aheadOf(b + (c % 5)), open: c % 2 === 0, reason: 'a holiday' } }),
  'remove place days': (_made, { a }) => ({ operation: 'place-days.remove', request: { id: `days-${a % 3}` } }),
  'set car days': ({ ids }, { a, b, c }) => ({ operation: 'car-days.set', request: { id: `needed-${c % 3}`, car: one(ids.car, a), from: aheadOf(b), why: c % 2 === 0 ? 'needed' : 'away' } }),
  'remove car days': (_made, { a }) => ({ operation: 'car-days.remove', request: { id: `needed-${a % 3}` } }),
  'set plan settings': (_made, { a, b }) => ({ operation: 'plan-settings.set', request: { horizonDays: 1 + (a % 366), lateMinorADay: { comfort: b % 50 } } }),
  'set access': ({ ids }, { a, b, c }) => ({ operation: 'access.set', request: { id: `access-${c % 3}`, car: one(ids.car, a), name: `Way ${b % 3}`, minutes: b % 90 } }),
  'remove access': (_made, { a }) => ({ operation: 'access.remove', request: { id: `access-${a % 3}` } }),
  'set pair': ({ ids }, { a, b }) => ({ operation: 'worth-while.set', request: { id: 'pair', when: { kind: 'item', id: one(ids.item, a) }, also: { kind: 'item', id: one(ids.item, b) } } }),
  'remove pair': () => ({ operation: 'worth-while.remove', request: { id: 'pair' } }),
  'keep session': ({ ids }, { a, b, c }) => ({ operation: 'session.keep', request: { sessions: [{ day: aheadOf(b), place: c % 3 === 0 ? 'garage-1' : 'home', tasks: [...new Set([one(ids.item, a), ...(c % 2 === 0 ? [one(ids.item, b)] : [])])].map((item) => ({ kind: 'item', id: item })) }] } }),
  'propose sessions': ({ ids }, { a, b, c }) => ({ operation: 'session.propose', request: { sessions: [...new Set([one(ids.item, a), one(ids.item, b)])].map((item, at) => ({ day: aheadOf(c + at), place: 'home', tasks: [{ kind: 'item', id: item }] })) } }),
  'move session': ({ ids }, { a, b, c }) => ({ operation: 'session.move', request: { session: one(ids.session, a), day: aheadOf(b), ...(c % 2 === 0 ? { place: 'home' } : {}) } }),
  'end session': ({ ids }, { a, b }) => ({ operation: 'session.end', request: { session: one(ids.session, a), as: b % 2 === 0 ? 'cancelled' : 'done' } }),
  'release tasks': (made, { a, b }) => ({ operation: 'session.release', request: { session: largerOne(made, a).id, tasks: [largerOne(made, a).tasks[b % largerOne(made, a).tasks.length]], sure: b % 3 !== 0 } }),
  'move tasks': (made, { a, b, c }) => ({ operation: 'session.move', request: { session: largerOne(made, a).id, day: aheadOf(b), tasks: [largerOne(made, a).tasks[c % largerOne(made, a).tasks.length]] } }),
  'begin work': (made, { a }) => ({ operation: 'work.begin', request: { session: keptOne(made, a).id } }),
  'tick': (made, { a, b, c }) => ({ operation: 'work.tick', request: { session: begunOne(made, a).id, of: [stepOf(begunOne(made, a), b)], ...(c % 4 === 0 ? { as: 'left-out', note: 'no time' } : {}) } }),
  'untick': (made, { a, b }) => ({ operation: 'work.untick', request: { session: begunOne(made, a).id, of: [stepOf(begunOne(made, a), b)] } }),
  'read at a step': (made, { a, b, c }) => ({ operation: 'work.read', request: { session: begunOne(made, a).id, at: stepOf(begunOne(made, a), b), read: c % 2 === 0 ? { kind: 'torque', name: 'a bolt', typed: { value: 1 + (b % 90), unit: 'Nm' } } : { kind: 'measured', what: 'pad', name: null, place: 'front-left', typed: { value: 1 + (b % 90) / 10, unit: 'mm' } } } }),
  'unread': (made, { a, b }) => ({ operation: 'work.unread', request: { session: begunOne(made, a).id, value: latest(made.ids.value, b) } }),
  'time': (made, { a, b, c }) => ({ operation: 'work.time', request: { session: begunOne(made, a).id, task: b % 4 === 0 ? null : stepOf(begunOne(made, a), b).task, run: c % 3 !== 0 } }),
  'find': (made, { a, b, c }) => ({ operation: 'work.find', request: { session: begunOne(made, a).id, at: stepOf(begunOne(made, a), b), severity: ['watch', 'soon', 'unsafe'][c % 3], papers: some(made.ids.paper, c) } }),
  'photograph': (made, { a, b, c }) => ({ operation: 'work.photo', request: { session: begunOne(made, a).id, car: carOf(made, begunOne(made, a), b), at: c % 2 === 0 ? null : stepOf(begunOne(made, a), b), paper: one(made.ids.paper, c) } }),
  'drop photograph': (made, { a, b }) => ({ operation: 'work.drop-photo', request: { session: begunOne(made, a).id, photo: latest(made.ids.photo, b) } }),
  'close session': (made, { a, b, c }) => {
    const kept = a % 2 === 0 ? begunOne(made, a) : keptOne(made, a);
    const cars = [...new Set(kept.tasks.map((task) => made.carOf[task.id] ?? 'nothing'))];
    const line = (item: string, at: number) => ({ item, outcome: (b + at) % 3 === 0 ? 'not-done' : 'done', minutes: (b + at) % 3 === 1 ? 1 + (c % 90) : null });
    return { operation: 'session.close', request: { session: kept.id, sure: c % 4 !== 0, cars: cars.map((car, at) => ({ car, lines: kept.tasks.filter((task) => task.kind === 'item' && (made.carOf[task.id] ?? 'nothing') === car).map((task, own) => line(task.id, own + at)), followUps: c % 3 === 0 ? [{ text: 'look again', days: b % 30, distance: null }] : [], papers: some(made.ids.paper, c) })), wastes: b % 2 === 0 ? [] : [{ what: 'old oil' }] } };
  },
  'ask a garage': (made, { a, b, c }) => {
    const kept = garageOne(made, a);
    return { operation: 'booking.ask', request: { session: kept.id, askedOn: c % 4 === 0 ? null : dayOf(2179), wanted: kept.tasks.map((task) => ({ id: `want-${task.id}`, car: made.carOf[task.id] ?? 'nothing', task, text: `do ${b % 9}` })), unwanted: c % 3 === 0 ? [{ car: carOf(made, kept, 0), text: 'no wash' }] : [] } };
  },
  'quote': (made, { a, b, c }) => ({ operation: 'booking.quote', request: { session: garageOne(made, a).id, quote: { on: dayOf(2179), by: c % 2 === 0 ? null : 'another', totalMinor: b % 90_000, paper: c % 5 === 0 ? one(made.ids.paper, b) : null } } }),
  'remove quote': (made, { a, b }) => ({ operation: 'booking.quote-remove', request: { session: garageOne(made, a).id, quote: latest(made.ids.quote, b) } }),
  'book': (made, { a, b, c }) => ({ operation: 'booking.book', request: { session: garageOne(made, a).id, day: aheadOf(b), moveSession: c % 4 !== 0, quote: c % 5 === 0 ? latest(made.ids.quote, b) : null } }),
  'came back': (made, { a, b, c }) => ({ operation: 'booking.came-back', request: { session: garageOne(made, a).id, doneOn: '2026-11-25', lines: c % 2 === 0 ? [] : [{ as: 'done-unasked', text: 'a bulb', chargedMinor: b % 900 }], chargedMinor: b % 90_000 } }),
  'drop booking': (made, { a, b }) => ({ operation: 'booking.drop', request: { session: garageOne(made, a).id, why: ['declined', 'cancelled'][b % 2] } }),
  'put off follow-up': ({ ids }, { a, b, c }) => ({ operation: 'follow-up.put-off', request: { followUp: latest(ids.followUp, a), dueOn: c % 3 === 0 ? null : aheadOf(1 + (b % 59)), after: c % 2 === 0 ? { value: 50 + (b % 2000), unit: 'km' } : null } }),
  'wish for': ({ ids }, { a, b, c }) => ({ operation: 'wish.set', request: { id: `wish-${c % 5}`, car: one(ids.car, a), name: `Wish ${b % 9}`, needs: some(ids.specification, b).map((specification) => ({ specification, quantity: 1 + (c % 3) })), place: b % 4 === 0 ? 'garage' : 'home', others: c % 3 === 0 ? [{ text: 'a loom', priceMinor: b % 2 === 0 ? null : b % 900 }] : [] } }),
  'rank wishes': ({ ids }, { a }) => ({ operation: 'wish.rank', request: { wishes: ids.wish.length === 0 ? ['nothing'] : ids.wish.map((_each, at) => one(ids.wish, at + a)) } }),
  'let a wish go': ({ ids }, { a }) => ({ operation: 'wish.let-go', request: { wish: one(ids.wish, a) } }),
  'want a wish again': ({ ids }, { a }) => ({ operation: 'wish.want-again', request: { wish: one(ids.wish, a) } }),
  'plan a wish': (made, { a, b }) => ({ operation: 'wish.plan', request: { wish: latest(made.ids.wish, a), session: b % 3 === 0 ? keptOne(made, a).id : null } }),
  'unplan a wish': ({ ids }, { a }) => ({ operation: 'wish.unplan', request: { wish: latest(ids.wish, a) } }),
  'remove a wish': ({ ids }, { a }) => ({ operation: 'wish.remove', request: { wish: one(ids.wish, a) } }),
  'put aside for a wish': ({ ids }, { a, b }) => ({ operation: 'wish.put-aside', request: { wish: one(ids.wish, a), lots: b % 3 === 0 ? [] : some(ids.lot, b) } }),
  'withdraw the last': ({ undo }) => ({ operation: 'entry.withdraw', request: { entries: undo.at(-1) ?? [0], why: 'a slip' } }),
  'withdraw': ({ undo }, { a, b }) => ({ operation: 'entry.withdraw', request: { entries: [...new Set([...(undo[a % undo.length] ?? [0]), ...(b % 4 === 0 ? (undo[b % undo.length] ?? []) : [])])] } }),
} as const satisfies Record<string, (made: Made, action: Action) => Call>;

export type ActionKind = keyof typeof CALLS;

/** The call that an action comes to, with what has been made so far. */
export function callOf(made: Made, action: Action): Call {
  return CALLS[action.kind](made, action);
}

/** What is done in sessions, and what that needs to happen at all, the commoner the more often. */
const AT_WORK = [
  'keep session', 'keep session', 'keep session', 'begin work', 'begin work', 'begin work', 'tick', 'tick', 'tick', 'untick', 'read at a step', 'read at a step', 'unread', 'time', 'time', 'time', 'find', 'find', 'photograph', 'photograph', 'drop photograph',
  'release tasks', 'move tasks', 'close session', 'ask a garage', 'ask a garage', 'quote', 'quote', 'remove quote', 'book', 'book', 'came back', 'drop booking', 'add follow-up', 'put off follow-up', 'put off follow-up', 'write sheet', 'withdraw the last',
] as const satisfies readonly ActionKind[];
const ONLY_AT_WORK: readonly ActionKind[] = ['begin work', 'tick', 'untick', 'read at a step', 'unread', 'time', 'find', 'photograph', 'drop photograph', 'release tasks', 'move tasks', 'close session', 'ask a garage', 'quote', 'remove quote', 'book', 'came back', 'drop booking', 'put off follow-up'];
/** What is done about wishes. */
const WISHING = ['wish for', 'wish for', 'rank wishes', 'let a wish go', 'want a wish again', 'plan a wish', 'plan a wish', 'unplan a wish', 'remove a wish', 'put aside for a wish', 'put aside for a wish'] as const satisfies readonly ActionKind[];
const KINDS = (Object.keys(CALLS) as readonly ActionKind[]).filter((kind) => !ONLY_AT_WORK.includes(kind) && !(WISHING as readonly ActionKind[]).includes(kind));
const number = fc.nat({ max: 1_000_000 });

/** A life of a household: a few things to stand upon, then anything in any order, with work in sessions and wishes in between. */
export function lives(longest: number): fc.Arbitrary<readonly Action[]> {
  const action = (kinds: readonly ActionKind[]) => fc.record({ kind: fc.constantFrom(...kinds), a: number, b: number, c: number });
  const start = (['add car', 'keep paper', 'set specification', 'set part', 'set supplier', 'add item', 'record reading'] as const).map((kind) => action([kind]));
  const rest = fc.array(action(KINDS), { minLength: longest / 2, maxLength: longest, size: 'max' });
  const work = fc.array(action(AT_WORK), { minLength: longest / 4, maxLength: longest / 2, size: 'max' });
  const wished = fc.array(action(WISHING), { minLength: Math.floor(longest / 10), maxLength: Math.floor(longest / 5), size: 'max' });
  return fc.tuple(fc.tuple(...start), rest, work, wished).map(([first, all, worked, wishing]) => [...first, ...WORK_BEGUN, ...between(between(all, worked), wishing)]);
}

/** A garage, a session at home on which work was begun, and one at the garage. */
const WORK_BEGUN: readonly Action[] = [
  { kind: 'set place', a: 1, b: 0, c: 1 }, { kind: 'add item', a: 0, b: 2, c: 0 }, { kind: 'add item', a: 0, b: 4, c: 1 },
  { kind: 'keep session', a: 0, b: 9, c: 3 }, { kind: 'keep session', a: 1, b: 9, c: 1 }, { kind: 'begin work', a: 0, b: 0, c: 0 },
];

/** The ones spread evenly over the others. */
function between(all: readonly Action[], others: readonly Action[]): readonly Action[] {
  const until = (at: number) => Math.round((at * others.length) / all.length);
  return all.flatMap((one, at) => [one, ...others.slice(until(at), until(at + 1))]);
}
