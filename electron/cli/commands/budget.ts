import { budgetText } from '../budget-text.ts';
import { done, refused, wrongUse, type Command } from '../command.ts';

/** What the cars will cost in the months ahead. */
export const budgetCommand: Command = {
  name: 'budget',
  does: 'what the cars will cost in the months ahead: low, likely and high',
  usage: ['budget [--months N] [--car CAR] [--wishes]', '', '--wishes: with the wishes, each in the month in which it is paid for.'],
  options: { months: { type: 'string' }, car: { type: 'string' }, wishes: { type: 'boolean' } },
  looks: true,
  run: async (input) => {
    if (input.words.length > 0) return wrongUse('budget takes no further words.');
    const { months, car } = input.options;
    if (months !== undefined && !/^\d{1,4}$/.test(String(months))) return wrongUse('--months is a whole number of months.');
    const reply = await (await input.host()).call('budget.show', { ...(months === undefined ? {} : { months: Number(months) }), ...(typeof car === 'string' ? { car } : {}), wishes: input.options['wishes'] === true });
    return reply.ok ? done(reply.value, budgetText(reply.value)) : refused(reply.refusal);
  },
};
