import { Button } from '@mantine/core';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { change } from '../../ui/change.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import sectionStyles from '../../ui/section.module.css';
import carStyles from '../car.module.css';
import type { OpenDistanceSheet } from './distance-sheet.ts';
import styles from './distance.module.css';

type Allowance = CarView['allowances'][number];

interface AllowancesSectionProps {
  readonly view: CarView;
  readonly open: OpenDistanceSheet;
}

/** How much distance an insurance, a lease or a warranty allows, how much of it is used, and when it will be passed. */
export function AllowancesSection({ view, open }: AllowancesSectionProps) {
  const allowances = [...view.allowances].sort((a, b) => Number(a.state === 'ended') - Number(b.state === 'ended'));
  return (
    <Section title={tell('allowances.title')} add={{ label: tell('allowances.add'), onAdd: () => open({ kind: 'allowance', allowance: null }) }}>
      {allowances.length === 0 && <p className={sectionStyles.soft}>{tell('allowances.none')}</p>}
      {allowances.length > 0 && (
        <ul className={sectionStyles.list}>
          {allowances.map((one) => <AllowanceRow key={one.id} one={one} today={view.today} onChange={() => open({ kind: 'allowance', allowance: one.id })} />)}
        </ul>
      )}
    </Section>
  );
}

interface AllowanceRowProps {
  readonly one: Allowance;
  readonly today: CarView['today'];
  readonly onChange: () => void;
}

function AllowanceRow({ one, today, onChange }: AllowanceRowProps) {
  const words = useWords();
  const { id, kind, name, allowed, used, left, unit, from, to, allowance, text, estimated, arrangeFrom, state } = one;
  const every = tell(`allowances.${allowance.every}`, { distance: words.distance(allowed, unit) });
  const period = to === null ? tell('lay-ups.from', { from: words.date(from) }) : tell('lay-ups.from-to', { from: words.date(from), to: words.date(to) });
  return (
    <li id={`allowance-${id}`} tabIndex={-1} data-place className={styles.plainRow}>
      <div className={carStyles.rowWords}>
        <strong>{name}</strong>
        <p className={sectionStyles.small}>{[every, period].join(' · ')}</p>
      </div>
      <div className={styles.rowButtons}>
        <Button size="compact-sm" variant="default" aria-label={tell('allowances.change-for', { name })} onClick={onChange}>{tell('rest.change')}</Button>
        <Button size="compact-sm" variant="default" aria-label={tell('allowances.remove-for', { name })} onClick={() => void remove(one)}>{tell('rest.remove')}</Button>
      </div>
      <div className={styles.body}>
        {used !== null && (
          <>
            <div className={styles.meter} aria-hidden="true"><span data-tone={toneOf(one)} style={{ width: `${Math.min(100, (used / allowed) * 100)}%` }} /></div>
            <p>{tell('allowances.used', { used: words.distance(used, unit), left: words.distance(left ?? 0, unit) })}{estimated && ` ${tell('allowances.estimated')}`}</p>
          </>
        )}
        <p>{text}</p>
        {arrangeFrom !== null && (state === 'will-pass' || state === 'may-pass') && <p className={sectionStyles.small}>{tell(`allowances.arrange-${kind}`, { when: arrangeFrom <= today ? tell('allowances.when-now') : tell('allowances.when-from', { date: words.date(arrangeFrom) }) })}</p>}
      </div>
    </li>
  );
}

function toneOf({ state }: Allowance): 'late' | 'soon' | 'later' {
  if (state === 'passed') return 'late';
  return state === 'probably-passed' || state === 'will-pass' || state === 'may-pass' ? 'soon' : 'later';
}

async function remove({ id, name }: Allowance): Promise<void> {
  const result = await change('allowance.remove', { id });
  if (result.ok) note(tell('allowances.removed', { name }), result.value.undo);
  else note(sayFault(result.refusal));
}
