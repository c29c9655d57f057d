import { sayDate } from '../../shared-core/result/words/say.ts';
import { amountText } from '../../shared-core/units/money.ts';
import type { BudgetLineView, BudgetView } from '../../shared-core/views/budget-view-schema.ts';

type Band = Pick<BudgetView['total'], 'lowMinor' | 'likelyMinor' | 'highMinor' | 'expectedMinor' | 'plannedMinor'>;

const KINDS: Readonly<Record<BudgetLineView['kind'], string>> = { item: 'care', obligation: 'obligations', visit: 'quoted visits', unplanned: 'unplanned repairs', extra: 'wishes' };

/** A budget ahead as text: the band, by car and kind, month by month with what is listed in it, what moves it most, what is missing, and what was taken for granted. */
export function budgetText(view: BudgetView): string {
  const money = (minor: number) => amountText(minor, view.currency);
  const band = ({ lowMinor, likelyMinor, highMinor, expectedMinor, plannedMinor }: Band) => `${money(lowMinor)} to ${money(highMinor)}, likely ${money(likelyMinor)}; on average ${money(expectedMinor)}, of it listed ${money(plannedMinor)}`;
  return [
    `Budget of ${view.car === null ? 'all cars' : view.car.name} from ${sayDate(view.today)} to ${sayDate(view.to)}, in ${view.currency}`,
    `  ${view.summary.text}`,
    `  ${band(view.total)}`,
    'By car',
    ...view.cars.map((one) => `  ${one.name ?? 'the household'}: ${band(one)}`),
    'By kind',
    ...view.kinds.map((one) => `  ${KINDS[one.kind]}: ${band(one)}`),
    'Month by month',
    ...view.months.flatMap((month, at) => [`  from ${sayDate(month.from)}: ${band(month)}`, ...view.lines.filter((line) => line.month === at).map((line) => `    ${lineText(line, money)}`)]),
    ...(view.drivers.length === 0 ? [] : ['What moves it most']),
    ...view.drivers.map((one) => `  ${Math.round(one.share * 100)} %  ${one.carName === null ? '' : `${one.carName}: `}${one.kind === 'unplanned' ? KINDS.unplanned : one.name}, on average ${money(one.expectedMinor)}`),
    ...(view.missing.length === 0 ? [] : ['Not in it']),
    ...view.missing.map((one) => `  ${one.carName}: ${one.name}. ${one.said.text}`),
    ...view.notes.map((one) => `! ${one.text}`),
  ].join('\n');
}

function lineText({ on, carName, name, amountMinor, why }: BudgetLineView, money: (minor: number) => string): string {
  return `${sayDate(on)} ${carName === null ? '' : `${carName}: `}${name}, ${money(amountMinor)}. ${why.text}`;
}
