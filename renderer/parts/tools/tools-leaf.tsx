import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { Button } from '@mantine/core';
import { useWords } from '../../ui/household.tsx';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import { placeOf } from '../../ui/sought.ts';
import { tell } from '../../ui/words/tell.ts';
import { doChange } from '../../ui/do-change.ts';
import type { OpenPartsSheet } from '../parts-sheet.ts';
import { SmallButton } from '../../ui/small-button.tsx';
import { tasksByCar } from './tasks-by-car.ts';
import { useCars } from '../../ui/use-cars.ts';
import styles from '../parts.module.css';
import tones from '../../ui/tones.module.css';

type Tool = PartsView['tools'][number];

interface ToolsLeafProps {
  readonly view: PartsView;
  readonly open: OpenPartsSheet;
}

const STATES = ['missing', 'borrowed', 'owned'] as const;
const LOOK = { missing: tones.late, borrowed: tones.soon, owned: tones.later } as const;

/** The tools: what is missing first, then what is borrowed and must go back, then one's own; each with the tasks that take it. */
export function ToolsLeaf({ view, open }: ToolsLeafProps) {
  const { byName } = useWords();
  const count = (state: Tool['state']) => view.tools.filter((one) => one.state === state).length;
  const sentence = view.tools.length === 0 ? tell('tools.none') : tell('tools.sum', { owned: count('owned'), borrowed: count('borrowed'), missing: count('missing') });
  return (
    <div className={styles.leaf}>
      <p className={styles.lead}>{sentence}</p>
      <div className={styles.actions}>
        <Button variant="default" onClick={() => open({ kind: 'tool', tool: null })}>{tell('tools.add')}</Button>
        {view.tools.length > 0 && <Button variant="default" onClick={() => open({ kind: 'task-tools' })}>{tell('tools.tasks')}</Button>}
      </div>
      {STATES.map((state) => {
        const tools = view.tools.filter((one) => one.state === state).sort((a, b) => byName(a.name, b.name));
        return tools.length === 0 ? null : (
          <Section key={state} title={tell(`tools.state-${state}`)}>
            <ul className={sectionStyles.list}>{tools.map((tool) => <ToolRow key={tool.id} tool={tool} open={open} />)}</ul>
          </Section>
        );
      })}
    </div>
  );
}

function ToolRow({ tool, open }: { readonly tool: Tool; readonly open: OpenPartsSheet }) {
  const words = useWords();
  const cars = useCars();
  const about = [
    ...(tool.lender === null ? [] : [tell(tool.until === null ? 'tools.from' : 'tools.from-until', { lender: tool.lender, date: tool.until === null ? '' : words.date(tool.until) })]),
    ...(tool.where === null ? [] : [tool.where]),
    ...(tool.takenBy.length === 0 ? [] : [tell('tools.taken-by', { tasks: tasksByCar(tool.takenBy, cars) })]),
    ...(tool.paidMinor === undefined ? [] : [tool.spreadOver === undefined ? tell('tools.paid', { sum: words.money(tool.paidMinor) }) : tell('tools.paid-spread', { sum: words.money(tool.paidMinor), n: tool.spreadOver })]),
    ...(tool.note === '' ? [] : [tool.note]),
  ];
  return (
    <li {...placeOf('tool', tool.id)} className={styles.row}>
      <div className={styles.head}>
        <span><strong className={LOOK[tool.state]}>{tool.name}</strong>{tool.overdue && <strong className={tones.late}> {tell('tools.overdue')}</strong>}</span>
        <span className={styles.rowActions}>
          {tool.state !== 'owned' && <SmallButton of={tool.name} onPress={() => void doChange('tool.set', { id: tool.id, name: tool.name, state: tool.state === 'missing' ? 'owned' : 'missing', where: tool.where, note: tool.note, ...priceOf(tool) }, tell(tool.state === 'missing' ? 'tools.now-owned' : 'tools.given-back', { tool: tool.name }), true)}>{tell(tool.state === 'missing' ? 'tools.have' : 'tools.give-back')}</SmallButton>}
          <SmallButton of={tool.name} onPress={() => open({ kind: 'tool', tool: tool.id })}>{tell('parts.change')}</SmallButton>
          {tool.takenBy.length === 0 && <SmallButton of={tool.name} onPress={() => void doChange('tool.remove', { id: tool.id }, tell('tools.removed', { tool: tool.name }), true)}>{tell('parts.remove')}</SmallButton>}
        </span>
      </div>
      {about.length > 0 && <p className={sectionStyles.small}>{about.join(' · ')}</p>}
    </li>
  );
}

/** What was paid for it stays with it. */
function priceOf({ paidMinor, boughtOn, spreadOver }: Tool): Pick<Tool, 'paidMinor' | 'boughtOn' | 'spreadOver'> {
  return { ...(paidMinor === undefined ? {} : { paidMinor }), ...(boughtOn === undefined ? {} : { boughtOn }), ...(spreadOver === undefined ? {} : { spreadOver }) };
}
