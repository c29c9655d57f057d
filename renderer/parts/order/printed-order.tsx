import type { OrderSheet } from '../../../shared-core/views/order-sheets.ts';
import { useHousehold, useWords } from '../../ui/household.tsx';
import { tell } from '../../ui/words/tell.ts';
import styles from './printed-order.module.css';

/** The sheet of an order as it is printed: what to send, what it costs, for which car each is. */
export function PrintedOrder({ sheet }: { readonly sheet: OrderSheet }) {
  const words = useWords();
  const household = useHousehold();
  const sums = [
    [tell('sum.goods'), sheet.goodsMinor],
    [tell('sum.delivery'), sheet.deliveryMinor],
    ...(sheet.discountMinor === 0 ? [] : [[tell('sum.discount'), -sheet.discountMinor] as const]),
    [tell('sum.together'), sheet.paidMinor],
    ...(sheet.depositsMinor === 0 ? [] : [[tell('sum.deposits'), sheet.depositsMinor] as const]),
  ] as const;
  return (
    <div className={styles.printed} aria-hidden="true" data-order-sheet>
      <p className={styles.title}>{tell('printed.title', { supplier: sheet.supplierName })}</p>
      <p className={styles.about}>{tell('printed.about', { household: household.name, date: words.longDate(sheet.on) })}</p>
      <table className={styles.table}>
        <thead>
          <tr><th>{tell('printed.got')}</th><th>{tell('line.number')}</th><th>{tell('line.part')}</th><th>{tell('line.packs')}</th><th>{tell('printed.pack')}</th><th>{tell('line.price')}</th><th>{tell('line.sum')}</th><th>{tell('line.for')}</th></tr>
        </thead>
        <tbody>
          {sheet.rows.map((row, at) => (
            <tr key={at}><td className={styles.box} /><td>{row.number}</td><td>{row.part}</td><td>{row.packs}</td><td>{row.pack}</td><td>{words.money(row.priceMinor)}</td><td>{words.money(row.totalMinor)}</td><td>{row.for}</td></tr>
          ))}
        </tbody>
      </table>
      <table className={styles.sums}><tbody>{sums.map(([name, minor]) => <tr key={name}><th>{name}</th><td>{words.money(minor)}</td></tr>)}</tbody></table>
    </div>
  );
}
