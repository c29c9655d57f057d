import { localDate } from '../../../shared-core/calendar/local-date.ts';
import type { LeavingView } from '../../../shared-core/views/leaving-view.ts';
import { sayDate } from '../../../shared-core/result/words/say.ts';
import { done, refused, wrongUse, type Command } from '../command.ts';

/** The car leaves: says what is to be seen to, and notes it. */
export const leaveCommand: Command = {
  name: 'leave',
  does: 'notes that a car was sold or scrapped, and lists what is to be cancelled or refunded',
  usage: ['leave CAR --sold | --scrapped [--date DATE] [--sure]', 'leave CAR --look', '', '--look lists what is to be seen to and notes nothing. --sure: although work on it is begun, or a garage counts on it. `enter car.keep` takes a departure back.'],
  options: { sold: { type: 'boolean' }, scrapped: { type: 'boolean' }, look: { type: 'boolean' }, sure: { type: 'boolean' }, date: { type: 'string' } },
  looks: true,
  run: async (input) => {
    const [car] = input.words;
    const { sold, scrapped, look, sure, date } = input.options;
    if (car === undefined || input.words.length !== 1) return wrongUse('leave takes one car.');
    if ([sold, scrapped, look].filter((one) => one === true).length !== 1) return wrongUse('leave needs one of --sold, --scrapped, --look.');
    const host = await input.host();
    const view = await host.call('car.leaving', { car });
    if (!view.ok) return refused(view.refusal);
    if (look === true) return done(view.value, leavingText(view.value));
    const on = typeof date === 'string' ? localDate(date) : null;
    if (on?.ok === false) return refused(on.refusal);
    const left = await host.call('car.leave', { car, how: sold === true ? 'sold' : 'scrapped', sure: sure === true, ...(on === null ? {} : { on: on.value }) });
    if (!left.ok) return refused(left.refusal);
    const { departure, sessions } = left.value;
    const freed = `Sessions that go on without it: ${sessions.changed}; cancelled: ${sessions.cancelled}.`;
    return done({ ...left.value, toSee: view.value }, `${view.value.car.name} left on ${sayDate(departure.on)}. ${freed}\n${leavingText(view.value)}`);
  },
};

function leavingText(view: LeavingView): string {
  const lines = [
    ...view.obligations.map((one) => `${one.name}: runs until ${sayDate(one.lastValidDay)}. Cancel it, and ask what is refunded.`),
    ...view.bookings.map((one) => `${one.place}: ${one.day === null ? 'asked' : `booked for ${sayDate(one.day)}`}${one.reference === '' ? '' : `, ${one.reference}`}. Tell them.`),
    ...view.orders.map((one) => `${one.supplier}: ${one.parts.join(', ')} on the way. Cancel them or send them back${one.returnBy === null ? '' : ` by ${sayDate(one.returnBy)}`}.`),
    ...view.shelf.map((one) => `On the shelf, and of no use for another car here: ${one.part} (${one.left}).`),
  ];
  return lines.length === 0 ? 'Nothing is left to be cancelled or sent back.' : lines.map((line) => `  ${line}`).join('\n');
}
