import type { PartsView, PlacedOrderView } from '../../../shared-core/views/parts-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import { PaperLink } from '../../ui/paper-link.tsx';
import { tell } from '../../ui/words/tell.ts';
import type { OpenPartsSheet } from '../parts-sheet.ts';
import { SmallButton } from '../../ui/small-button.tsx';
import styles from '../parts.module.css';

interface PlacedMoneyProps {
  readonly order: PlacedOrderView;
  readonly view: PartsView;
  readonly open: OpenPartsSheet;
}

/** What an order cost and on whom it falls, what of deposits and refunds is open, and the papers of its deliveries. */
export function PlacedMoney({ order, view, open }: PlacedMoneyProps) {
  const words = useWords();
  const { order: placed, shares, returns, deliveries } = order;
  const costs = [
    tell('placed.goods', { amount: words.money(order.goodsMinor) }),
    tell('placed.delivery', { amount: words.money(placed.deliveryMinor) }),
    ...(placed.discountMinor === 0 ? [] : [tell('placed.discount', { amount: words.money(placed.discountMinor) })]),
    tell('placed.paid', { amount: words.money(order.paidMinor) }),
  ];
  const papers = deliveries.flatMap((one) => one.papers.map((paper) => ({ paper, on: one.on })));
  return (
    <>
      <p>{costs.join(' · ')}{shares.length > 0 && <>. {tell('placed.shares', { shares: shares.map((one) => tell('placed.share', { car: one.carName ?? tell('order-cost.shelf'), amount: words.money(one.minor) })).join(', ') })}</>}</p>
      {order.depositsMinor > 0 && <p>{tell(order.depositsOpenMinor > 0 ? 'placed.deposits-open' : 'placed.deposits', { amount: words.money(order.depositsMinor), open: words.money(order.depositsOpenMinor) })}</p>}
      {returns.map((back) => {
        const came = back.refunds.reduce((sum, one) => sum + one.minor, 0);
        const what = tell('placed.return', { date: words.nearDate(back.on, view.today), expected: words.money(back.refundExpectedMinor), came: words.money(came) });
        return (
          <div key={back.id} className={styles.head}>
            <span>{what}</span>
            {came < back.refundExpectedMinor && <SmallButton of={what} onPress={() => open({ kind: 'refund', order: placed.id, back: back.id })}>{tell('placed.refund')}</SmallButton>}
          </div>
        );
      })}
      {papers.length > 0 && <p>{tell('placed.papers')} {papers.map(({ paper, on }, at) => <span key={`${paper} ${at}`}><PaperLink paper={paper} text={tell('placed.paper', { date: words.nearDate(on, view.today) })} /> </span>)}</p>}
    </>
  );
}
