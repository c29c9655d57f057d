import { NativeSelect, TextInput } from '@mantine/core';
import { useState } from 'react';
import { speakAs } from '../../shared-core/result/words/speaking.ts';
import { change } from '../ui/change.ts';
import { bindText } from '../ui/form/bind.ts';
import { EntryForm } from '../ui/form/entry-form.tsx';
import { FieldRow } from '../ui/form/fields.tsx';
import { useEntry } from '../ui/form/use-entry.ts';
import { hemisphereChoices, localeChoices, unitChoices } from '../ui/household-choices.ts';
import { OpenSample } from '../ui/open-sample.tsx';
import { focusHeading } from '../ui/screen-title.tsx';
import { showTour } from '../ui/tour-store.ts';
import { tell } from '../ui/words/tell.ts';
import styles from './first-start.module.css';
import { StartPicture } from './start-picture.tsx';
import { queries } from './queries.ts';

/** What one meets in a folder without a household: an invented one to look at, or an empty one of one's own. */
export function FirstStart({ folder }: { readonly folder: string }) {
  const [locale, setLocale] = useState(localeHere);
  speakAs(locale);
  return (
    <main className={styles.start}>
      <h1>{tell('start.title')}</h1>
      <p className={styles.lead}>{tell('start.lead')}</p>
      <div className={styles.ways}>
        <SampleWay />
        <OwnWay onLocale={setLocale} />
      </div>
      <p className={styles.kept}>{tell('start.kept', { folder })}</p>
    </main>
  );
}

function SampleWay() {
  return (
    <section className={styles.way} aria-labelledby="way-sample">
      <StartPicture />
      <h2 id="way-sample">{tell('start.sample')}</h2>
      <p>{tell('start.sample-what')}</p>
      <OpenSample variant="filled" onOpened={lookAround} />
    </section>
  );
}

const START = { name: '', currency: 'GBP', unit: 'mi', hemisphere: 'north', locale: 'en-GB' };
type Start = typeof START;

/** Shows the household that is there now, with the focus on the heading of its first screen. */
async function goIn(): Promise<void> {
  focusHeading();
  await queries.invalidateQueries();
}

/** The sample begins with the look around, which one press leaves. */
async function lookAround(): Promise<void> {
  await goIn();
  showTour(0);
}

/** What one's own browser is set to is a fair guess; each of it can be changed before it is sent. */
function guessed(): Start {
  const [, region = ''] = navigator.language.split('-');
  const miles = region === 'GB' || region === 'US';
  const south = ['AU', 'NZ', 'ZA', 'AR', 'CL', 'UY'].includes(region);
  const currency = region === 'US' ? 'USD' : region === 'AU' ? 'AUD' : region === 'NZ' ? 'NZD' : region === 'GB' || region === '' ? 'GBP' : 'EUR';
  return { ...START, currency, unit: miles ? 'mi' : 'km', hemisphere: south ? 'south' : 'north', locale: localeHere() };
}

function OwnWay({ onLocale }: { readonly onLocale: (locale: string) => void }) {
  const entry = useEntry({
    key: 'household.start',
    start: guessed(),
    send: (draft: Start) =>
      change('household.start', {
        name: draft.name,
        currency: draft.currency.trim().toUpperCase(),
        unit: draft.unit as 'km' | 'mi',
        hemisphere: draft.hemisphere as 'north' | 'south' | 'none',
        locale: draft.locale,
      }),
    onDone: () => void goIn(),
  });
  return (
    <section className={styles.way} aria-labelledby="way-own">
      <h2 id="way-own">{tell('start.empty')}</h2>
      <p>{tell('start.empty-what')}</p>
      <EntryForm entry={entry} submit={tell('start.empty-open')}>
        <TextInput {...bindText(entry, 'name')} label={tell('household.name')} placeholder={tell('household.name-example')} autoComplete="off" />
        <FieldRow>
          <TextInput {...bindText(entry, 'currency')} label={tell('household.currency')} description={tell('household.currency-what')} maxLength={3} autoComplete="off" />
          <NativeSelect {...bindText(entry, 'unit')} label={tell('household.unit')} description={tell('household.unit-what')} data={unitChoices()} />
        </FieldRow>
        <NativeSelect {...bindText(entry, 'hemisphere')} label={tell('household.hemisphere')} description={tell('household.hemisphere-what')} data={hemisphereChoices()} />
        <NativeSelect
          {...bindText(entry, 'locale')}
          label={tell('household.locale')}
          data={localeChoices(entry.draft.locale)}
          onChange={({ currentTarget: { value } }) => {
            entry.set({ locale: value });
            onLocale(value);
          }}
        />
      </EntryForm>
    </section>
  );
}

/** Of the English ways of speaking and of writing dates, that of the browser. */
function localeHere(): string {
  return /^en-[A-Z]{2}$/.test(navigator.language) ? navigator.language : 'en-GB';
}
