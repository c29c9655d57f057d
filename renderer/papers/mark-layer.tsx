import { useRef, useState, type KeyboardEvent, type PointerEvent } from 'react';
import { tell } from '../ui/words/tell.ts';
import { arrowStep, markBetween, movedMark, sizedMark, type Mark, type Spot } from './mark-shape.ts';
import styles from './redact.module.css';

interface MarkLayerProps {
  readonly page: number;
  /** The marks of all pages; a mark is spoken of by its place among them. */
  readonly marks: readonly Mark[];
  readonly add: (mark: Mark) => void;
  readonly put: (at: number, mark: Mark) => void;
  readonly remove: (at: number) => void;
}

type Drag =
  | { readonly kind: 'draw'; readonly from: Spot; readonly to: Spot }
  | { readonly kind: 'move' | 'size'; readonly at: number; readonly from: Spot; readonly mark: Mark };

/** The marks of a page over its picture: drawn, moved and sized by the pointer or by keys. */
export function MarkLayer({ page, marks, add, put, remove }: MarkLayerProps) {
  const layer = useRef<HTMLDivElement>(null);
  const [drag, setDrag] = useState<Drag | null>(null);
  const spotOf = ({ clientX, clientY }: PointerEvent): Spot => {
    const box = layer.current?.getBoundingClientRect() ?? new DOMRect(0, 0, 1, 1);
    return { x: (clientX - box.left) / box.width, y: (clientY - box.top) / box.height };
  };
  const begin = (event: PointerEvent, start: (spot: Spot) => Drag) => {
    if (event.button !== 0) return;
    event.stopPropagation();
    layer.current?.setPointerCapture(event.pointerId);
    setDrag(start(spotOf(event)));
  };
  const go = (event: PointerEvent) => {
    if (drag === null) return;
    const spot = spotOf(event);
    if (drag.kind === 'draw') return setDrag({ ...drag, to: spot });
    const by = { x: spot.x - drag.from.x, y: spot.y - drag.from.y };
    put(drag.at, drag.kind === 'move' ? movedMark(drag.mark, by) : sizedMark(drag.mark, by));
  };
  const end = () => {
    const drawn = drag?.kind === 'draw' ? markBetween(page, drag.from, drag.to) : null;
    setDrag(null);
    if (drawn !== null) add(drawn);
  };
  const onKey = (event: KeyboardEvent, at: number, mark: Mark) => {
    const step = event.ctrlKey || event.altKey || event.metaKey ? null : arrowStep(event.key);
    if (step === null && event.key !== 'Delete' && event.key !== 'Backspace') return;
    event.preventDefault();
    if (step === null) remove(at);
    else put(at, event.shiftKey ? sizedMark(mark, step) : movedMark(mark, step));
  };
  const drawing = drag?.kind === 'draw' ? markBetween(page, drag.from, drag.to) : null;
  return (
    <div ref={layer} className={styles.layer} onPointerDown={(event) => begin(event, (spot) => ({ kind: 'draw', from: spot, to: spot }))} onPointerMove={go} onPointerUp={end} onPointerCancel={() => setDrag(null)}>
      {marks.map((mark, at) => mark.page === page && (
        <button
          key={at}
          type="button"
          className={styles.mark}
          data-mark={at}
          style={boxOf(mark)}
          aria-label={nameOf(mark, numberOn(marks, at))}
          onPointerDown={(event) => {
            event.currentTarget.focus();
            begin(event, (from) => ({ kind: 'move', at, from, mark }));
          }}
          onKeyDown={(event) => onKey(event, at, mark)}
        >
          <span className={styles.number} aria-hidden="true">{numberOn(marks, at)}</span>
          <span className={styles.corner} aria-hidden="true" onPointerDown={(event) => begin(event, (from) => ({ kind: 'size', at, from, mark }))} />
        </button>
      ))}
      {drawing !== null && <div className={styles.drawing} style={boxOf(drawing)} />}
    </div>
  );
}

/** Which mark of its page one is, counted from 1. */
export function numberOn(marks: readonly Mark[], at: number): number {
  return marks.slice(0, at + 1).filter((one) => one.page === marks[at]?.page).length;
}

function boxOf({ left, top, width, height }: Mark): Record<'left' | 'top' | 'width' | 'height', string> {
  return { left: `${left * 100}%`, top: `${top * 100}%`, width: `${width * 100}%`, height: `${height * 100}%` };
}

function nameOf({ page, left, top, width, height }: Mark, number: number): string {
  const percent = (value: number) => Math.round(value * 100);
  return tell('redact.part', { number, page, left: percent(left), top: percent(top), width: percent(width), height: percent(height) });
}
