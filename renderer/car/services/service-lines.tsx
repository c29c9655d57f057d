import { Button, Checkbox, CloseButton, NativeSelect, TextInput } from '@mantine/core';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { choices } from '../../ui/form/choices.ts';
import { FieldGroup } from '../../ui/form/fields.tsx';
import type { FieldPlace } from '../../ui/form/use-entry.ts';
import { tell } from '../../ui/words/tell.ts';
import formStyles from '../forms/forms.module.css';
import { lineOf, withAllItems, type ServiceLine } from './service-draft.ts';

type Item = CarView['items'][number]['item'];

interface ServiceLinesProps {
  readonly place: (path: string) => FieldPlace;
  readonly group: FieldPlace;
  readonly items: readonly Item[];
  readonly lines: readonly ServiceLine[];
  readonly onChange: (lines: readonly ServiceLine[]) => void;
}

const WORKS = ['replace', 'check'] as const;

/** The lines of a service: the car's items to be ticked, and lines of one's own. */
export function ServiceLines({ place, group, items, lines, onChange }: ServiceLinesProps) {
  const replace = (at: number, change: Partial<ServiceLine>) => onChange(lines.map((line, index) => (index === at ? { ...line, ...change } : line)));
  const remove = (at: number) => onChange(lines.filter((_, index) => index !== at));
  const add = () => onChange([...lines, { item: null, name: '', work: 'check' }]);
  const allTicked = items.every((item) => lines.some((line) => line.item === item.id));
  return (
    <FieldGroup legend={tell('service-form.lines')} hint={tell('service-form.lines-what')} place={group}>
      {!allTicked && <Button className={formStyles.add ?? ''} variant="default" size="compact-md" onClick={() => onChange(withAllItems(lines, items))}>{tell('service-form.tick-all')}</Button>}
      {items.map((item) => {
        const at = lines.findIndex((line) => line.item === item.id);
        const line = lines[at];
        return (
          <div key={item.id} className={formStyles.line}>
            <Checkbox label={item.name} checked={line !== undefined} onChange={(event) => (event.currentTarget.checked ? onChange([...lines, lineOf(item)]) : remove(at))} />
            {line !== undefined && <NativeSelect size="xs" aria-label={tell('service-form.work-of', { line: item.name })} value={line.work} onChange={(event) => replace(at, { work: event.currentTarget.value as ServiceLine['work'] })} data={choices('services.work-', WORKS)} />}
          </div>
        );
      })}
      {lines.map((line, at) => line.item === null && <OwnLine key={at} at={at} line={line} place={place(`lines.${at}.name`)} onChange={(change) => replace(at, change)} onRemove={() => remove(at)} onNext={add} />)}
      <Button className={formStyles.add ?? ''} variant="default" size="compact-md" onClick={add}>{tell('service-form.own-add')}</Button>
    </FieldGroup>
  );
}

interface OwnLineProps {
  readonly at: number;
  readonly line: ServiceLine;
  readonly place: FieldPlace;
  readonly onChange: (change: Partial<ServiceLine>) => void;
  readonly onRemove: () => void;
  readonly onNext: () => void;
}

function OwnLine({ at, line, place, onChange, onRemove, onNext }: OwnLineProps) {
  return (
    <div className={formStyles.own}>
      <TextInput
        {...place}
        label={tell('service-form.own')}
        description={tell('service-form.own-keys')}
        inputWrapperOrder={['label', 'input', 'description', 'error']}
        value={line.name}
        autoFocus={line.name === ''}
        autoComplete="off"
        maxLength={120}
        onChange={(event) => onChange({ name: event.currentTarget.value })}
        onKeyDown={(event) => {
          if (event.key !== 'Enter' || line.name.trim() === '') return;
          event.preventDefault();
          onNext();
        }}
      />
      <NativeSelect label={tell('service-form.own-work')} value={line.work} onChange={(event) => onChange({ work: event.currentTarget.value as ServiceLine['work'] })} data={choices('services.work-', WORKS)} />
      <CloseButton size="lg" className={formStyles.remove ?? ''} aria-label={tell('service-form.own-remove', { n: at + 1 })} onClick={onRemove} />
    </div>
  );
}
