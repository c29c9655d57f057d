import { Link, Redirect } from 'wouter';
import { Asked } from '../../ui/asked.tsx';
import { ScreenTitle } from '../../ui/screen-title.tsx';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';
import { SheetEditor } from './sheet-editor.tsx';
import styles from './editor.module.css';

/** How one service item is done, step by step: shown and changed. */
export function SheetEditorScreen({ car, item }: { readonly car: string; readonly item: string }) {
  const editing = useAsk('sheet.editing', { item });
  const shown = useAsk('sheet.show', { item });
  const card = useAsk('card.show', { car });
  const name = editing.state === 'answered' ? editing.value.carName : card.state === 'answered' ? card.value.car.name : null;
  const back = name === null ? <Link href="/car">{tell('screen.car')}</Link> : <Link href={`/car/${car}`}>{tell('sheet-edit.back', { car: name })}</Link>;
  // A sheet stands under its own car.
  if (editing.state === 'answered' && editing.value.car !== car) return <Redirect to={`/car/${editing.value.car}/sheet/${item}`} replace />;
  return (
    <div className={styles.screen}>
      <div className={styles.top}>
        <p>{back}</p>
        <ScreenTitle>{editing.state === 'answered' ? tell('sheet-edit.title', { task: editing.value.itemName, car: editing.value.carName }) : tell('sheet-edit.title-bare')}</ScreenTitle>
      </div>
      <Asked answer={editing} onward={back}>
        {(sheet) => <Asked answer={shown}>{(view) => <Asked answer={card}>{(figures) => <SheetEditor editing={sheet} shown={view} card={figures} />}</Asked>}</Asked>}
      </Asked>
    </div>
  );
}
