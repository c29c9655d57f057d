import type { Observation } from '../records/observation.ts';
import { sayDate } from '../result/words/say.ts';
import { heading, paragraph, table, type Block } from './document-value.ts';
import { openRecalls } from './history-duties.ts';
import { sayBlackedOut } from './handed-paper.ts';
import type { HistoryInput } from './history-input.ts';
import { sayLeftOut, sayReckonedWith } from './left-out.ts';
import { isWhole, sayPeriod } from './pack-period.ts';

const NOTHING_SAID = 'not entered';

/** The first page: what car this is, its photograph, what the pack shows of its history, and how far it can be relied upon. */
export function coverBlocks(input: HistoryInput, title: string): Block[] {
  const { car, today, period } = input;
  const rows: [string, string][] = [
    ['Car', [car.description, car.year === null ? null : String(car.year)].filter((part) => part !== null).join(', ') || car.name],
    ['First registered', car.firstRegistered === null ? NOTHING_SAID : sayDate(car.firstRegistered)],
    ['With the present keeper since', car.keptSince === null ? NOTHING_SAID : sayDate(car.keptSince)],
    ['Vehicle identification number', ofCar(input, 'vin')],
    ['Registration', ofCar(input, 'registration')],
    [`Odometer on ${sayDate(today)}`, odometerText(input)],
  ];
  const shown = sayPeriod(period);
  return [
    heading(1, title),
    ...(input.sample ? [notice('This is the history of an invented car from the sample household. It proves nothing.')] : []),
    ...(shown === null ? [] : [notice(`${shown} What happened on other days is left out, and counted under “What was withheld”.`)]),
    ...(input.cover === null ? [] : [{ kind: 'cover', caption: car.name, paper: input.cover } as const]),
    { kind: 'facts', rows },
    paragraph(`Made on ${sayDate(today)} from what its keeper wrote down. Each record says when it was written; what is missing is named as plainly as what is there; and the last page tells how anyone can check that nothing was altered afterwards.`),
    ...previousBlocks(input),
    { kind: 'new-page' },
  ];
}

/** Where readings are left out, the figure of today hangs on them all the same. */
function odometerText({ odometer, leftOut: { readings } }: HistoryInput): string {
  return `${odometer ?? 'no reading'}${odometer === null || readings === 0 ? '' : `; reckoned with ${sayLeftOut({ readings })} not shown`}`;
}

/** What is withheld, and what an earlier keeper withheld, is not the same as what nobody entered. */
function ofCar({ car, withheld, carWithheldBefore }: HistoryInput, field: 'vin' | 'registration'): string {
  if (withheld.has(field)) return 'withheld';
  return car[field] ?? (carWithheldBefore.includes(field) ? 'withheld by the earlier keeper' : NOTHING_SAID);
}

function previousBlocks({ previous }: HistoryInput): Block[] {
  if (previous.length === 0) return [];
  const rows = previous.map((one) => [one.name, sayDate(one.composedOn), String(one.rows), one.path ?? (one.within === null ? 'left out' : `within ${one.within}`)]);
  const left = previous.filter(isLeftOut).length;
  return [table(left === previous.length ? 'Histories of earlier keepers, left out of this pack' : left > 0 ? 'Histories of earlier keepers, some of them left out of this pack' : 'Histories of earlier keepers, in this pack as they were handed over', [['Name', 3], ['Made on', 2], ['Entries', 1, 'right'], ['In the pack', 4]], rows)];
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
  return { figures: figures(input), gaps: input.items.flatMap((one) => one.gaps.map((gap) => `${one.name}: ${gap}`)), open: openLines(input), withheld: withheldLines(input), earlier: previousLines(input) };
}

/** One page: what there is in figures, what is late or open, what was kept back. */
export function summaryBlocks(input: HistoryInput): Block[] {
  return [heading(2, 'Summary'), { kind: 'facts', rows: figures(input) }, ...openBlocks(input), ...withheldBlocks(input), { kind: 'new-page' }];
}

function figures({ records, readings, items, papers }: HistoryInput): [string, string][] {
  const dates = records.map((one) => one.record.date).sort();
  const written = (when: string) => records.filter((one) => one.written === when).length;
  const accepted = readings.filter((one) => one.standing === 'accepted').length;
  const gaps = items.filter((one) => one.gaps.length > 0).length;
  return [
    ['Work records', records.length === 0 ? 'none' : `${records.length}, from ${sayDate(dates[0] ?? '')} to ${sayDate(dates.at(-1) ?? '')}`],
    ['Written down', `${written('same-day')} on the day, ${written('within-a-week')} within a week, ${written('later')} later, ${written('reconstructed')} from memory`],
    ['With a paper', `${records.filter((one) => one.papers.length > 0).length} of ${records.length}`],
    ['Papers in this pack', `${papers.filter((one) => one.path !== null).length} of ${papers.length}`],
    ['Readings', `${accepted} accepted, ${readings.length - accepted} doubtful or dismissed`],
    ['Service items', `${items.length}: ${items.filter((one) => one.late).length} late, ${gaps} with something missing in their history`],
  ];
}

const SEVERITY: Readonly<Record<Observation['severity'], string>> = { watch: '', soon: ' (to be seen to soon)', unsafe: ' (unsafe: not to be driven like this)' };

function openLines({ items, obligations, recalls, observations, followUps }: HistoryInput): string[] {
  const [unsafe, others] = [true, false].map((is) => observations.filter((one) => one.closedOn === null && (one.severity === 'unsafe') === is).map(sayOpen));
  return [
    ...(unsafe ?? []),
    ...items.filter((one) => one.late).map((one) => `${one.name}: ${one.due}`),
    ...obligations.filter((one) => one.late).map((one) => `${one.name}: ran out on ${sayDate(one.lastValidDay)}`),
    ...openRecalls(recalls),
    ...(others ?? []),
    ...followUps.map((one) => `To be looked at again: ${one.text}. ${one.when}`),
  ];
}

function sayOpen({ date, severity, text, recheckOn }: Observation): string {
  return `Seen on ${sayDate(date)} and still open${SEVERITY[severity]}: ${text}${recheckOn === null ? '' : `; to be looked at again by ${sayDate(recheckOn)}`}`;
}

function openBlocks(input: HistoryInput): Block[] {
  const lines = openLines(input);
  const blocks: Block[] = [heading(2, 'Late and open')];
  return lines.length === 0 ? [...blocks, paragraph(isWhole(input.period) ? 'Nothing is late and nothing seen is open.' : 'Nothing is late, and nothing seen on the days shown is open.')] : [...blocks, { kind: 'list', items: lines }];
}

/** What the keeper kept back. That whole entries could be left out cannot be told by any list, and is said with how to check. */
function withheldLines(input: HistoryInput): string[] {
  const { withheldFields, papers } = input;
  const without = papers.filter((one) => one.path === null);
  const nameless = without.filter((one) => one.sha256 === null).length;
  return [
    ...(withheldFields.length === 0 ? [] : [`Of the entries: ${withheldFields.join(', ')}. Each stands in the rows by its digest.`]),
    ...(without.length === 0 ? [] : [`${without.length} of ${papers.length} papers, each named under Papers by its digest${nameless === 0 ? '' : `, but for ${nameless} of which parts are blacked out elsewhere`}.`]),
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
    ...previous.flatMap((one) => (one.period === undefined ? [] : `What an earlier keeper left out: ${sayPeriod(one.period, one.name) ?? ''}`)),
    ...(withheldBefore.length === 0 ? [] : [`Of what earlier keepers recorded: ${withheldBefore.join(', ')}, withheld by them.`]),
  ];
}

/** What is left out for its day, counted; what is shown whatever its day; and which figures hang on what is left out. */
function periodLines({ period, leftOut }: HistoryInput): string[] {
  if (isWhole(period)) return [];
  const [left, reckoned] = [sayLeftOut(leftOut), sayReckonedWith(leftOut)];
  return [
    `What happened on other days than those shown: ${left === '' ? 'there is nothing' : left}. ${sayPeriod(period) ?? ''} A thing goes by the day on which it happened, not by the day on which it was written down; one that was amended, by its latest day, with all its entries.`,
    'Not left out, whatever their day: the car itself, its items, limits, obligations, wheels and instruments, and recalls that are still to be seen to.',
    ...(reckoned === '' ? [] : [`Figures of today are reckoned with what is not shown as well (${reckoned}): the odometer, when items are due, what wear comes to, what is left of a warranty.`]),
  ];
}

/** What stands in the entries and cannot be read in the PDF. */
function unprintedLines({ unprinted }: HistoryInput): string[] {
  if (unprinted === 0) return [];
  return [`From the PDF alone: characters that its fonts do not have, in ${unprinted} ${unprinted === 1 ? 'place' : 'places'}, each marked with how many there are. They stand whole in data/history.json.`];
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
    ...(whole.length === 0 || !holdsBack ? [] : [`Nothing of what an earlier keeper handed over: that pack goes along whole and unaltered (${names(whole)}), and shows fields, papers and days that are withheld elsewhere in this pack.`]),
    ...(left.length === 0 ? [] : [`The packs of earlier keepers (${names(left)}). What earlier keepers recorded stands here as it was taken over, and cannot be proven from this pack.`]),
  ];
}

/** Which papers were blacked out in part, and by whom; that their digests are kept back is said with why. */
function blackedOutLines(papers: HistoryInput['papers']): string[] {
  const copies = papers.filter((one) => one.path !== null && one.blackedOut.length > 0);
  if (copies.length === 0) return [];
  return [
    ...copies.map((one) => `Parts of ${one.path ?? one.name}, blacked out by the keeper in a copy: ${sayBlackedOut(one.blackedOut)}.`),
    'Entries that name a paper of which parts are blacked out show that by a salted digest only, unless the keeper chose to name it: what is black cannot be found by trying, and the keeper can still show what the copy was made from.',
  ];
}

function withheldBlocks(input: HistoryInput): Block[] {
  const lines = withheldLines(input);
  return [heading(2, 'What was withheld'), lines.length === 0 ? paragraph('Nothing: every field of every entry of this car, and every paper of it, is in this pack.') : { kind: 'list', items: lines }];
}
