import { say, sayDate } from '../../../shared-core/result/words/say.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import type { WishesView, WishView } from '../../../shared-core/views/wishes-view-schema.ts';
import { done, refused, wrongUse, type Command } from '../command.ts';

/** What is wished for, in the order of preference: what it costs, when it is paid for, and which sessions make it cheaper. */
export const wishesCommand: Command = {
  name: 'wishes',
  does: 'what is saved for: costs, the day it is paid for, and the sessions it could join',
  usage: ['wishes'],
  options: {},
  looks: true,
  run: async (input) => {
    if (input.words.length > 0) return wrongUse('wishes takes no further words.');
    const reply = await (await input.host()).call('wishes.show', {});
    return reply.ok ? done(reply.value, wishesText(reply.value)) : refused(reply.refusal);
  },
};

function wishesText(view: WishesView): string {
  if (view.wishes.length === 0) return 'Nothing is wished for.';
  const money = (minor: number) => `${amountText(minor, view.currency)} ${view.currency}`;
  return [...view.said.map((one) => one.text), ...view.wishes.flatMap((one) => ['', ...wishText(one, money)])].join('\n');
}

function wishText(one: WishView, money: (minor: number) => string): readonly string[] {
  const { wish, cost } = one;
  const state = say({ key: `wish-state-${one.state}`, values: {} });
  const spent = one.spentMinor === 0 ? [] : [`  spent and put aside so far: ${money(one.spentMinor)}`];
  if (cost === null) return [`${one.carName}: ${wish.name} (${state}${one.fulfilledOn === null ? '' : ` ${sayDate(one.fulfilledOn)}`})`, ...spent];
  const own = cost.ownMinutes === null ? '' : `, ${cost.ownMinutes} minutes of one's own${cost.ownTimeMinor === null || cost.ownTimeMinor === 0 ? '' : ` (${money(cost.ownTimeMinor)} at one's rate, in no sum)`}`;
  return [
    `${wish.rank}. ${one.carName}: ${wish.name} (${state})`,
    `  still costs ${cost.lowMinor === cost.likelyMinor ? '' : `${money(cost.lowMinor)} to `}${money(cost.likelyMinor)}: parts ${money(cost.partsMinor)}, work ${money(cost.workMinor)}${own}`,
    ...spent,
    ...one.said.map((said) => `  ${said.text}`),
    ...(one.planned === null ? [] : [`  planned for ${sayDate(one.planned.day)}, ${one.planned.placeName}${one.planned.kept ? '' : ' (proposed)'}`]),
    ...one.sessions.map((session) => `  ${sayDate(session.day)}, ${session.placeName}${session.kept ? '' : ' (proposed)'}: ${session.why.text}`),
  ];
}
