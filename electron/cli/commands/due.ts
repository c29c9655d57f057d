import type { AllowanceView } from '../../../shared-core/views/allowance-view.ts';
import type { CarDue, WindowView } from '../../../shared-core/views/due-view.ts';
import type { RecallView } from '../../../shared-core/views/recall-view.ts';
import { bySoonest } from '../../../shared-core/views/soonest-first.ts';
import { say, sayDate, sayNumber } from '../../../shared-core/result/words/say.ts';
import { done, refused, wrongUse, type Command } from '../command.ts';
import { roughly } from '../../../shared-core/views/allowance-words.ts';
import { sayLateBy, sayWindow } from '../../../shared-core/views/say-window.ts';

/** Due windows of all cars, soonest first. */
export const dueCommand: Command = {
  name: 'due',
  does: 'due windows of all cars, soonest first',
  usage: ['due [--json]'],
  looks: true,
  run: async (input) => {
    if (input.words.length > 0) return wrongUse('due takes no further words.');
    const reply = await (await input.host()).call('due.show', {});
    if (!reply.ok) return refused(reply.refusal);
    return done(reply.value, dueText(reply.value.cars, reply.value.today));
  },
};

function dueText(cars: readonly CarDue[], today: string): string {
  if (cars.length === 0) return 'There is no car yet. "trunnion enter" adds one.';
  const windows = cars.flatMap((car) => car.windows.map((window) => ({ car, window }))).sort((a, b) => bySoonest(a.window, b.window));
  return [
    `Due on ${sayDate(today)}, soonest first`,
    ...windows.map(({ car, window }) => windowLine(car, window)),
    ...cars.flatMap((car) => car.obligations.map((one) => `  ${one.late ? 'late' : 'by'.padEnd(4)}  ${car.name}: ${one.name}, ${sayDate(one.on)}; arrange from ${sayDate(one.from)}`)),
    ...cars.flatMap((car) => car.recalls.map((one) => recallLine(car, one))),
    ...cars.flatMap((car) => car.followUps.map((one) => `  ${say({ key: `follow-up-state-${one.state}`, values: {} }).padEnd(7)} ${car.name}: look again, ${one.followUp.text}. ${one.text}`)),
    ...cars.flatMap((car) => car.measured.map((one) => `  ${one.verdict === 'past-limit' ? 'late' : '?   '}  ${car.name}: ${one.subject}. ${one.text}`)),
    ...cars.flatMap((car) => car.allowances.map((one) => allowanceLine(car, one))),
    ...cars.flatMap((car) => car.doubtful.map((one) => `  ?     ${car.name}: the reading of ${sayNumber(one.value)} ${one.unit} on ${sayDate(one.date)} is set aside. ${[one.text, one.against?.text, one.next?.text].filter((text) => text !== undefined).join(' ')}`)),
    ...cars.map(odometerLine),
  ].join('\n');
}

function windowLine(car: CarDue, window: WindowView): string {
  const state = say({ key: `state-${window.state}`, values: {} });
  const when = window.lateBy === null ? sayWindow(window) : sayLateBy(window.lateBy);
  return `  ${state.padEnd(13)} ${car.name}: ${window.name}${when === '' ? '' : `, ${when}`}. ${window.reason.text}`;
}

function recallLine(car: CarDue, { recall, state, late, arrangeFrom, text }: RecallView): string {
  const mark = late ? 'late' : state === 'open' ? 'open' : 'by';
  return `  ${mark.padEnd(4)}  ${car.name}: ${recall.what}. ${text}${arrangeFrom === null ? '' : ` Arrange from ${sayDate(arrangeFrom)}.`}`;
}

const ALLOWANCE_MARKS: Readonly<Partial<Record<AllowanceView['state'], string>>> = { passed: 'over', 'probably-passed': '?', unknown: '?', 'will-pass': 'by' };

function allowanceLine(car: CarDue, { name, state, text, used, left, allowed, unit, arrangeFrom }: AllowanceView): string {
  const stands = used === null || left === null ? '' : ` Used about ${sayNumber(roughly(used))} of ${sayNumber(allowed)} ${unit}, left about ${sayNumber(roughly(left))} ${unit}.`;
  return `  ${(ALLOWANCE_MARKS[state] ?? '').padEnd(4)}  ${car.name}: ${name}. ${text}${stands}${arrangeFrom === null ? '' : ` Arrange from ${sayDate(arrangeFrom)}.`}`;
}

function odometerLine(car: CarDue): string {
  if (car.odometer === null) return `  ${car.name} has no reading yet.`;
  const { low, high, unit } = car.odometer;
  return `  ${car.name} stands at ${sayNumber(low)} to ${sayNumber(high)} ${unit}.`;
}
