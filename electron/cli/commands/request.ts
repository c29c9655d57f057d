import type { ReplyOf } from '../../../shared-core/contract/contract.ts';
import { sayDate } from '../../../shared-core/result/words/say.ts';
import { done, refused, wrongUse, type Command, type CommandAnswer, type CommandInput } from '../command.ts';

/** Writes what is asked of a garage for a session, for each car. */
export const requestCommand: Command = {
  name: 'request',
  does: 'writes the request sheet of a session at a garage; alone, lists such sessions',
  usage: ['request', 'request SESSION', '', 'The sheet is the same text that the screen copies for a mail: what is wanted, what is not, the parts we bring.'],
  looks: true,
  run: async (input) => {
    const [session, ...more] = input.words;
    if (more.length > 0) return wrongUse('request takes one session.');
    return session === undefined ? listed(input) : written(input, session);
  },
};

async function listed(input: CommandInput): Promise<CommandAnswer> {
  const reply = await (await input.host()).call('sessions.show', {});
  if (!reply.ok) return refused(reply.refusal);
  const { sessions, bookings }: ReplyOf<'sessions.show'> = reply.value;
  const atGarages = sessions.flatMap(({ id, day, place, placeName, cars, booking }) => (booking === null ? [] : [{ session: id, day, place, placeName, cars, booking }]));
  const lines = [
    ...atGarages.map((one) => `${one.session}  ${sayDate(one.day)}, ${one.placeName}: ${one.booking.said.text}`),
    ...bookings.map((one) => `${one.session}  ${sayDate(one.day)}, ${one.placeName}: ${one.said.text}`),
  ];
  return done({ sessions: atGarages, bookings }, lines.length === 0 ? 'No session stands at a garage.' : lines.join('\n'));
}

async function written(input: CommandInput, session: string): Promise<CommandAnswer> {
  const reply = await (await input.host()).call('booking.show', { session });
  if (!reply.ok) return refused(reply.refusal);
  const view: ReplyOf<'booking.show'> = reply.value;
  return done(view, view.cars.map((car) => car.text).join('\n\n'));
}
