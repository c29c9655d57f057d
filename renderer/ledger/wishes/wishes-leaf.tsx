import { Button } from '@mantine/core';
import { useState } from 'react';
import type { WishesView, WishView } from '../../../shared-core/views/wishes-view-schema.ts';
import { Asked } from '../../ui/asked.tsx';
import { doChange } from '../../ui/do-change.ts';
import { useWords } from '../../ui/household.tsx';
import { inOwnMoney } from '../../ui/plan/plan-words.ts';
import { Section } from '../../ui/section.tsx';
import sectionStyles from '../../ui/section.module.css';
import { SideSheet } from '../../ui/side-sheet.tsx';
import { SmallButton } from '../../ui/small-button.tsx';
import { useAsk } from '../../ui/use-ask.ts';
import { placeOf } from '../../ui/sought.ts';
import { tell } from '../../ui/words/tell.ts';
import styles from '../ledger.module.css';
import { AsideForm } from './aside-form.tsx';
import { SavingForm } from './saving-form.tsx';
import { WishCard } from './wish-card.tsx';
import { WishForm } from './wish-form.tsx';

type Sheet = { readonly kind: 'wish' | 'aside' | 'saving'; readonly wish: string | null } | null;

/** Improvements that one is saving for, in the order in which they are wanted. */
export function WishesLeaf() {
  const answer = useAsk('wishes.show', {});
  return <Asked answer={answer}>{(view) => <Wishes view={view} />}</Asked>;
}

function Wishes({ view }: { readonly view: WishesView }) {
  const words = useWords();
  const [sheet, setSheet] = useState<Sheet>(null);
  const close = () => setSheet(null);
  const chosen = view.wishes.find((one) => one.wish.id === sheet?.wish) ?? null;
  const open = view.wishes.filter((one) => one.state === 'saving' || one.state === 'planned');
  const over = view.wishes.filter((one) => one.state === 'fulfilled' || one.state === 'let-go');
  const move = (at: number, by: -1 | 1) => {
    const ids = open.map((one) => one.wish.id);
    const [first, second] = [ids[at], ids[at + by]];
    if (first === undefined || second === undefined) return;
    void doChange('wish.rank', { wishes: ids.map((id, index) => (index === at ? second : index === at + by ? first : id)) }, tell('wishes.ranked', { wish: open[at]?.wish.name ?? '' }));
  };
  return (
    <div className={styles.leaf}>
      <div className={styles.lead}>{view.said.map((one) => <p key={one.text}>{inOwnMoney(one.text, words)}</p>)}</div>
      <div className={styles.bar}>
        <Button variant="default" onClick={() => setSheet({ kind: 'wish', wish: null })}>{tell('wishes.add')}</Button>
        <Button variant="default" onClick={() => setSheet({ kind: 'saving', wish: null })}>{tell('wishes.saving')}</Button>
      </div>
      {open.length === 0 && <p>{tell('wishes.none')}</p>}
      {open.map((one, at) => (
        <WishCard
          key={one.wish.id} view={one} place={{ at, of: open.length }} onMove={(by) => move(at, by)}
          onChange={() => setSheet({ kind: 'wish', wish: one.wish.id })} onAside={() => setSheet({ kind: 'aside', wish: one.wish.id })}
        />
      ))}
      {over.length > 0 && <Section title={tell('wishes.over')}><ul className={sectionStyles.list}>{over.map((one) => <OverRow key={one.wish.id} view={one} />)}</ul></Section>}
      <SideSheet title={titleOf(sheet, chosen)} opened={sheet !== null} onClose={close}>
        {sheet?.kind === 'wish' && <WishForm key={sheet.wish ?? ''} now={chosen?.wish ?? null} currency={view.currency} onClose={close} />}
        {sheet?.kind === 'aside' && chosen !== null && <AsideForm view={chosen} onClose={close} />}
        {sheet?.kind === 'saving' && <SavingForm saving={view.saving} today={view.today} currency={view.currency} onClose={close} />}
      </SideSheet>
    </div>
  );
}

function titleOf(sheet: Sheet, chosen: WishView | null): string {
  if (sheet?.kind === 'saving') return tell('wishes.saving');
  if (sheet?.kind === 'aside') return tell('wishes.put-aside');
  return chosen === null ? tell('wishes.add') : tell('wishes.change');
}

/** A wish that has come true, or was let go. */
function OverRow({ view }: { readonly view: WishView }) {
  const words = useWords();
  const { wish, carName, state, fulfilledOn, spentMinor } = view;
  const when = state === 'fulfilled' ? tell('wishes.fulfilled', { date: fulfilledOn === null ? '' : words.date(fulfilledOn), sum: words.money(spentMinor) }) : tell('wishes.let-go-on', { date: wish.letGoOn === null ? '' : words.date(wish.letGoOn) });
  return (
    <li {...placeOf('wish', wish.id)} className={styles.row}>
      <div className={styles.head}>
        <span><strong>{wish.name}</strong> <span className={sectionStyles.small}>{carName}. {when}</span></span>
        {state === 'let-go' && (
          <span className={styles.bar}>
            <SmallButton of={wish.name} onPress={() => void doChange('wish.want-again', { wish: wish.id }, tell('wishes.wanted-again', { wish: wish.name }), true)}>{tell('wishes.want-again')}</SmallButton>
            <SmallButton of={wish.name} onPress={() => void doChange('wish.remove', { wish: wish.id }, tell('wishes.removed', { wish: wish.name }), true)}>{tell('parts.remove')}</SmallButton>
          </span>
        )}
      </div>
    </li>
  );
}
