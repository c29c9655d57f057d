import { useState } from 'react';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { tell } from '../../ui/words/tell.ts';
import { ConfirmForm } from './confirm-form.tsx';
import styles from './confirm.module.css';

interface ConfirmRunProps {
  readonly view: CarView;
  /** The items to go through, by id, in their order. */
  readonly items: readonly string[];
  readonly onClose: () => void;
}

/** Goes through items one after the other; the source given last is offered for the next. */
export function ConfirmRun({ view, items, onClose }: ConfirmRunProps) {
  const [at, setAt] = useState(0);
  const [source, setSource] = useState<string>(tell('confirm.source-first'));
  const item = view.items.find((one) => one.item.id === items[at])?.item;
  const goOn = () => (at + 1 < items.length ? setAt(at + 1) : onClose());
  if (item === undefined) return <p>{tell('confirm.none-left')}</p>;
  return (
    <>
      <p className={styles.at} role="status">{items.length > 1 && <>{tell('confirm.at', { n: at + 1, all: items.length })} </>}<strong>{item.name}</strong></p>
      <ConfirmForm
        key={item.id}
        item={item}
        unit={view.car.unit}
        source={source}
        follows={at > 0}
        onConfirmed={(given) => {
          setSource(given);
          goOn();
        }}
        onClose={onClose}
        {...(items.length > 1 ? { onLater: goOn } : {})}
      />
    </>
  );
}
