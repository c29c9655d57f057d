import type { Observation } from '../records/observation.ts';
import { sayDate, sayOf } from '../result/words/say.ts';
import { heading, paragraph, table, type Block } from './document-value.ts';
import { openRecalls } from './history-duties.ts';
import { sayBlackedOut } from './handed-paper.ts';
import type { HistoryInput } from './history-input.ts';
import { sayLeftOut, sayReckonedWith } from './left-out.ts';
import { isWhole, sayPeriod } from './pack-period.ts';

/** The first page: what car this is, its photograph, what the pack shows of its history, and how far it can be relied upon. */
export function coverBlocks(input: HistoryInput, title: string): Block[] {
  const { car, today, period } = input;
  const rows: [string, string][] = [
    [sayOf('history-car'), [car.description, car.year === null ? null : String(car.year)].filter((part) => part !== null).join(', ') || car.name],
    [sayOf('history-first-registered'), car.firstRegistered === null ? sayOf('history-not-entered') : sayDate(car.firstRegistered)],
    [sayOf('history-kept-since'), car.keptSince === null ? sayOf('history-not-entered') : sayDate(car.keptSince)],
    [sayOf('history-vin'), ofCar(input, 'vin')],
    [sayOf('history-registration'), ofCar(input, 'registration')],
    [sayOf('history-odometer-on', { date: today }), odometerText(input)],
  ];
  const shown = sayPeriod(period);
  return [
    heading(1, title),
    ...(input.sample ? [notice(sayOf('history-sample'))] : []),
    ...(shown === null ? [] : [notice(sayOf('history-period-cover', { shown }))]),
    ...(input.cover === null ? [] : [{ kind: 'cover', caption: car.name, paper: input.cover } as const]),
    { kind: 'facts', rows },
    paragraph(sayOf('history-made', { date: today })),
    ...previousBlocks(input),
    { kind: 'new-page' },
  ];
}

/** Where readings are left out, the figure of today hangs on them all the same. */
function odometerText({ odometer, leftOut: { readings } }: HistoryInput): string {
  if (odometer === null) return sayOf('history-no-reading');
  return readings === 0 ? odometer : sayOf('history-odometer-reckoned', { odometer, readings: sayLeftOut({ readings }) });
}

/** What is withheld, and what an earlier keeper withheld, is not the same as what nobody entered. */
function ofCar({ car, withheld, carWithheldBefore }: HistoryInput, field: 'vin' | 'registration'): string {
  if (withheld.has(field)) return sayOf('history-withheld');
  return car[field] ?? (carWithheldBefore.includes(field) ? sayOf('history-withheld-before') : sayOf('history-not-entered'));
}

function previousBlocks({ previous }: HistoryInput): Block[] {
  if (previous.length === 0) return [];
  const rows = previous.map((one) => [one.name, sayDate(one.composedOn), String(one.rows), one.path ?? (one.within === null ? sayOf('history-left-out') : sayOf('history-within', { pack: one.within }))]);
  const left = previous.filter(isLeftOut).length;
  return [table(sayOf(left === previous.length ? 'history-previous-none' : left > 0 ? 'history-previous-some' : 'history-previous'), [[sayOf('history-name'), 3], [sayOf('history-made-on'), 2], [sayOf('history-entries'), 1, 'right'], [sayOf('history-in-pack'), 4]], rows)];
}

function notice(text: string): Block {
  return { kind: 'notice', text };
}

/** What a pack shows and what it leaves open, in words: as its page of summary has it. */
export interface HistorySummary {
  readonly figures: readonly (readonly [string, string])[];
  readonly gaps: readonly string[];
  readonly open: readonly string[];
  readonly withheld: readonly string[];
  /** Of what is withheld, what is said of the packs of earlier keepers. */
  readonly earlier: readonly string[];
}

/** The summary of a history in words, with each gap by its item. */
export function historySummary(input: HistoryInput): HistorySummary {
  return { figures: figures(input), gaps: input.items.flatMap((one) => one.gaps.map((gap) => sayOf('history-gap-of', { item: one.name, gap }))), open: openLines(input), withheld: withheldLines(input), earlier: previousLines(input) };
}

/** One page: what there is in figures, what is late or open, what was kept back. */
export function summaryBlocks(input: HistoryInput): Block[] {
  return [heading(2, sayOf('history-summary')), { kind: 'facts', rows: figures(input) }, ...openBlocks(input), ...withheldBlocks(input), { kind: 'new-page' }];
}

function figures({ records, readings, items, papers }: HistoryInput): [string, string][] {
  const dates = records.map((one) => one.record.date).sort();
  const written = (when: string) => records.filter((one) => one.written === when).length;
  const accepted = readings.filter((one) => one.standing === 'accepted').length;
  const gaps = items.filter((one) => one.gaps.length > 0).length;
  return [
    [sayOf('history-work-records'), records.length === 0 ? sayOf('history-none') : sayOf('history-records-span', { n: records.length, from: dates[0] ?? '', to: dates.at(-1) ?? '' })],
    [sayOf('history-written-down'), sayOf('history-written-counts', { day: written('same-day'), week: written('within-a-week'), later: written('later'), memory: written('reconstructed') })],
    [sayOf('history-with-paper'), sayOf('history-of', { n: records.filter((one) => one.papers.length > 0).length, of: records.length })],
    [sayOf('history-papers-in-pack'), sayOf('history-of', { n: papers.filter((one) => one.path !== null).length, of: papers.length })],
    [sayOf('history-readings'), sayOf('history-readings-counts', { accepted, others: readings.length - accepted })],
    [sayOf('history-service-items'), sayOf('history-items-counts', { n: items.length, late: items.filter((one) => one.late).length, gaps })],
  ];
}

function openLines({ items, obligations, recalls, observations, followUps }: HistoryInput): string[] {
  const [unsafe, others] = [true, false].map((is) => observations.filter((one) => one.closedOn === null && (one.severity === 'unsafe') === is).map(sayOpen));
  return [
    ...(unsafe ?? []),
    ...items.filter((one) => one.late).map((one) => sayOf('history-item-late', { item: one.name, late: one.due })),
    ...obligations.filter((one) => one.late).map((one) => sayOf('history-duty-late', { name: one.name, date: one.lastValidDay })),
    ...openRecalls(recalls),
    ...(others ?? []),
    ...followUps.map((one) => sayOf('history-look-again', { text: one.text, when: one.when })),
  ];
}

function sayOpen({ date, severity, text, recheckOn }: Observation): string {
  const open = sayOf(`history-open-${severity}`, { date, text });
  return recheckOn === null ? open : sayOf('history-open-until', { open, date: recheckOn });
}

function openBlocks(input: HistoryInput): Block[] {
  const lines = openLines(input);
  const blocks: Block[] = [heading(2, sayOf('history-late-and-open'))];
  return lines.length === 0 ? [...blocks, paragraph(sayOf(isWhole(input.period) ? 'history-nothing-open' : 'history-nothing-open-days'))] : [...blocks, { kind: 'list', items: lines }];
}

/** What the keeper kept back. That whole entries could be left out cannot be told by any list, and is said with how to check. */
function withheldLines(input: HistoryInput): string[] {
  const { withheldFields, papers } = input;
  const without = papers.filter((one) => one.path === null);
  const nameless = without.filter((one) => one.sha256 === null).length;
  return [
    ...(withheldFields.length === 0 ? [] : [sayOf('history-of-entries', { fields: withheldFields.join(', ') })]),
    ...(without.length === 0 ? [] : [sayOf(nameless === 0 ? 'history-papers-without' : 'history-papers-without-but', { n: without.length, of: papers.length, nameless })]),
    ...blackedOutLines(papers),
    ...periodLines(input),
    ...unprintedLines(input),
    ...previousLines(input),
    ...earlierLines(input),
  ];
}

/** What earlier keepers kept back stays so, and is nothing that this keeper could show. */
function earlierLines({ previous, withheldBefore }: HistoryInput): string[] {
  return [
    ...previous.flatMap((one) => (one.period === undefined ? [] : sayOf('history-earlier-period', { shown: sayPeriod(one.period, one.name) ?? '' }))),
    ...(withheldBefore.length === 0 ? [] : [sayOf('history-earlier-withheld', { fields: withheldBefore.join(', ') })]),
  ];
}

/** What is left out for its day, counted; what is shown whatever its day; and which figures hang on what is left out. */
function periodLines({ period, leftOut }: HistoryInput): string[] {
  if (isWhole(period)) return [];
  const [left, reckoned] = [sayLeftOut(leftOut), sayReckonedWith(leftOut)];
  return [
    sayOf('history-other-days', { left: left === '' ? sayOf('history-nothing-left') : left, shown: sayPeriod(period) ?? '' }),
    sayOf('history-whatever-day'),
    ...(reckoned === '' ? [] : [sayOf('history-figures-reckoned', { reckoned })]),
  ];
}

/** What stands in the entries and cannot be read in the PDF. */
function unprintedLines({ unprinted }: HistoryInput): string[] {
  if (unprinted === 0) return [];
  return [sayOf('history-unprinted', { n: unprinted, file: 'data/history.json' })];
}

function isLeftOut({ path, within }: HistoryInput['previous'][number]): boolean {
  return path === null && within === null;
}

/** What the packs of earlier keepers hand over all the same, or what is not proven without them. */
function previousLines({ previous, withheld, period, papersLeftOut }: HistoryInput): string[] {
  const names = (packs: HistoryInput['previous']) => packs.map((one) => one.name).join(', ');
  const [whole, left] = [previous.filter((one) => one.path !== null), previous.filter(isLeftOut)];
  const holdsBack = withheld.size > 0 || papersLeftOut || !isWhole(period);
  return [
    ...(whole.length === 0 || !holdsBack ? [] : [sayOf('history-previous-whole', { packs: names(whole) })]),
    ...(left.length === 0 ? [] : [sayOf('history-previous-left', { packs: names(left) })]),
  ];
}

/** Which papers were blacked out in part, and by whom; that their digests are kept back is said with why. */
function blackedOutLines(papers: HistoryInput['papers']): string[] {
  const copies = papers.filter((one) => one.path !== null && one.blackedOut.length > 0);
  if (copies.length === 0) return [];
  return [
    ...copies.map((one) => sayOf('history-blacked-out', { paper: one.path ?? one.name, parts: sayBlackedOut(one.blackedOut) })),
    sayOf('history-blacked-digests'),
  ];
}

function withheldBlocks(input: HistoryInput): Block[] {
  const lines = withheldLines(input);
  return [heading(2, sayOf('history-what-withheld')), lines.length === 0 ? paragraph(sayOf('history-nothing-withheld')) : { kind: 'list', items: lines }];
}
