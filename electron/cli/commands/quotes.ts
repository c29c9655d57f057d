import { amountText } from '../../../shared-core/units/money.ts';
import { sayDate } from '../../../shared-core/result/words/say.ts';
import type { QuoteView } from '../../../shared-core/views/quotes-view.ts';
import { done, refused, wrongUse, type Command } from '../command.ts';

/** The prices that were named for work, held like for like against what was done at home. */
export const quotesCommand: Command = {
  name: 'quotes',
  does: 'prices that were named for work, like for like against doing it at home',
  usage: ['quotes', '', '"trunnion enter" keeps one: quote.set.'],
  looks: true,
  run: async (input) => {
    if (input.words.length > 0) return wrongUse('quotes takes no further words.');
    const reply = await (await input.host()).call('quotes.show', {});
    if (!reply.ok) return refused(reply.refusal);
    const { quotes, currency } = reply.value;
    return done(reply.value, quotes.length === 0 ? 'No price is kept. "trunnion enter" keeps one.' : quotes.flatMap((one) => quoteText(one, currency)).join('\n'));
  },
};

function quoteText({ quote, carName, groups, unquoted, said }: QuoteView, currency: string): readonly string[] {
  const money = (minor: number | null) => (minor === null ? 'not known' : `${amountText(minor, currency)} ${currency}`);
  return [
    `${carName}, ${quote.by}, ${sayDate(quote.on)}: ${said.text}`,
    ...groups.map((one) => `  ${one.quoted.join(', ') || '-'}: asked ${money(one.quotedMinor)}; at home ${one.done.join(', ') || '-'}: ${money(one.cost?.totalMinor ?? null)}. ${one.said.text}`),
    ...unquoted.map((one) => `  not quoted: ${one.things.join(', ')}: ${money(one.cost?.totalMinor ?? null)}`),
  ];
}
