import { Button } from '@mantine/core';
import { Link } from 'wouter';
import type { WishView } from '../../../shared-core/views/wishes-view-schema.ts';
import { amountWords } from '../../ui/amount-words.ts';
import { doChange } from '../../ui/do-change.ts';
import { useWords } from '../../ui/household.tsx';
import { inOwnMoney } from '../../ui/plan/plan-words.ts';
import { Section } from '../../ui/section.tsx';
import sectionStyles from '../../ui/section.module.css';
import { SmallButton } from '../../ui/small-button.tsx';
import { tell } from '../../ui/words/tell.ts';
import styles from '../ledger.module.css';

interface WishCardProps {
  readonly view: WishView;
  /** Its place in the order of preference. */
  readonly place: { readonly at: number; readonly of: number };
  readonly onMove: (by: -1 | 1) => void;
  readonly onChange: () => void;
  readonly onAside: () => void;
}

/** A wish with what it costs yet, how far the savings reach, and what makes it cheaper. */
export function WishCard({ view, place, onMove, onChange, onAside }: WishCardProps) {
  const words = useWords();
  const { wish, carName, cost, needs, savedMinor, spentMinor, sessions, planned, said } = view;
  const title = tell('wishes.title', { n: place.at + 1, wish: wish.name, car: carName });
  const whole = cost === null || cost.likelyMinor <= 0 ? 0 : Math.min(100, Math.round((100 * savedMinor) / cost.likelyMinor));
  return (
    <Section title={title} place={['wish', wish.id]} {...(wish.note === '' ? {} : { hint: wish.note })}>
      {cost !== null && (cost.likelyMinor > 0 || cost.unpriced.length === 0 || cost.ownMinutes !== null || spentMinor > 0) && (
        <p>
          {(cost.likelyMinor > 0 || cost.unpriced.length === 0) && <strong>{words.money(cost.likelyMinor)}</strong>} {[
            ...(cost.likelyMinor > 0 || cost.unpriced.length === 0 ? [tell(cost.unpriced.length > 0 ? 'wishes.at-least' : cost.workMinor === 0 ? 'wishes.parts-alone' : 'wishes.made-of', { parts: words.money(cost.partsMinor), work: words.money(cost.workMinor) })] : []),
            ...(cost.ownMinutes === null ? [] : [tell('wishes.own-minutes', { n: cost.ownMinutes, sum: words.money(cost.ownTimeMinor ?? 0) })]),
            ...(spentMinor === 0 ? [] : [tell('wishes.spent', { sum: words.money(spentMinor) })]),
          ].join(' ')}
        </p>
      )}
      {cost !== null && cost.likelyMinor > 0 && cost.unpriced.length === 0 && (
        <div className={styles.saved} role="img" aria-label={tell('wishes.saved-of', { saved: words.money(savedMinor), of: words.money(cost.likelyMinor) })}>
          <div style={{ width: `${whole}%` }} />
        </div>
      )}
      {said.map((one) => <p key={one.text}>{inOwnMoney(one.text, words)}</p>)}
      {needs.length > 0 && <p className={sectionStyles.small}>{tell('wishes.takes', { needs: needs.map((need) => `${amountWords(need.quantity, need.unit)} ${need.name}${need.aside > 0 ? ` (${tell('wishes.aside', { amount: amountWords(need.aside, need.unit) })})` : ''}`).join(', ') })}</p>}
      {planned !== null && <p><Link href="/sessions">{tell(planned.kept ? 'wishes.in-session' : 'wishes.in-proposed', { date: words.date(planned.day), place: planned.placeName })}</Link></p>}
      {sessions.length > 0 && planned === null && (
        <ul className={sectionStyles.list}>
          {sessions.map((one) => (
            <li key={one.session} className={styles.row}>
              <div className={styles.head}>
                <span>{inOwnMoney(one.why.text, words)}</span>
                {one.fits && one.kept && <SmallButton of={`${wish.name}, ${words.date(one.day)}`} onPress={() => void doChange('wish.plan', { wish: wish.id, session: one.session }, tell('wishes.joined', { wish: wish.name, date: words.date(one.day) }))}>{tell('wishes.join')}</SmallButton>}
              </div>
            </li>
          ))}
        </ul>
      )}
      <div className={styles.bar}>
        {place.at > 0 && <SmallButton of={wish.name} onPress={() => onMove(-1)}>{tell('wishes.sooner')}</SmallButton>}
        {place.at < place.of - 1 && <SmallButton of={wish.name} onPress={() => onMove(1)}>{tell('wishes.later')}</SmallButton>}
        <SmallButton of={wish.name} onPress={onChange}>{tell('parts.change')}</SmallButton>
        {needs.length > 0 && <SmallButton of={wish.name} onPress={onAside}>{tell('wishes.put-aside')}</SmallButton>}
        {wish.item === null && <SmallButton of={wish.name} onPress={() => void doChange('wish.plan', { wish: wish.id }, tell('wishes.planned', { wish: wish.name }))}>{tell('wishes.plan')}</SmallButton>}
        {wish.item !== null && <SmallButton of={wish.name} onPress={() => void doChange('wish.unplan', { wish: wish.id }, tell('wishes.unplanned', { wish: wish.name }))}>{tell('wishes.unplan')}</SmallButton>}
        {wish.item === null && <Button size="compact-sm" variant="subtle" aria-label={`${tell('wishes.let-go')}: ${wish.name}`} onClick={() => void doChange('wish.let-go', { wish: wish.id }, tell('wishes.let-go-done', { wish: wish.name }), true)}>{tell('wishes.let-go')}</Button>}
      </div>
    </Section>
  );
}
