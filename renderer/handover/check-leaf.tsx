import { Button, Textarea } from '@mantine/core';
import { useRef, useState } from 'react';
import { Link } from 'wouter';
import type { ReplyOf } from '../../shared-core/contract/contract.ts';
import type { Result } from '../../shared-core/result/result.ts';
import { FilePlace } from '../ui/file-place.tsx';
import { sayFault } from '../ui/form/say-fault.ts';
import { runLong } from '../ui/run-long.ts';
import { Section } from '../ui/section.tsx';
import { isWordKey, tell } from '../ui/words/tell.ts';
import { handFile } from './hand-file.ts';
import styles from './handover.module.css';

type Report = ReplyOf<'pack.check-handed'>;
type Taken = ReplyOf<'pack.take-in-handed'>;

/** Checks a pack that somebody gave, names each fault, and takes a sound one in. */
export function CheckLeaf() {
  const input = useRef<HTMLInputElement>(null);
  const [file, setFile] = useState<File | null>(null);
  const [seal, setSeal] = useState('');
  const [said, setSaid] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const [checked, setChecked] = useState<{ readonly handed: string; readonly report: Report } | null>(null);
  const [taken, setTaken] = useState<Taken | null>(null);
  const givenSeal = seal.trim() === '' ? null : seal;
  const clear = () => {
    setChecked(null);
    setTaken(null);
    setFault(null);
  };
  const choose = (given: File | null) => {
    setFile(given);
    clear();
  };
  const heard = <Value,>(result: Result<Value>): Value | null => {
    setSaid('');
    setFault(result.ok ? null : sayFault(result.refusal));
    return result.ok ? result.value : null;
  };
  const check = async () => {
    if (said !== '') return;
    clear();
    if (file === null) return setFault(tell('handover.no-file'));
    setSaid(tell('handover.handing', { share: 0 }));
    const handed = await handFile(file, (share) => setSaid(tell('handover.handing', { share: Math.round(share * 100) })));
    if (!handed.ok) return void heard(handed);
    setSaid(tell('handover.checking'));
    const report = heard(await runLong('pack.check-handed', { handed: handed.value, seal: givenSeal }));
    if (report !== null) setChecked({ handed: handed.value, report });
  };
  const takeIn = async (handed: string) => {
    if (said !== '') return;
    setSaid(tell('handover.taking'));
    const reply = heard(await runLong('pack.take-in-handed', { handed, seal: givenSeal }));
    if (reply === null) return;
    setTaken(reply);
  };
  return (
    <>
      <Section title={tell('handover.check-title')} hint={tell('handover.check-what')}>
        <input ref={input} type="file" accept=".zip,application/zip" hidden aria-hidden="true" tabIndex={-1} onChange={(event) => {
          choose(event.currentTarget.files?.[0] ?? null);
        }} />
        <FilePlace onFiles={([dropped = null]) => choose(dropped)}>
          <div className={styles.buttons}>
            <Button variant="default" onClick={() => input.current?.click()}>{tell('handover.choose-file')}</Button>
            <span className={styles.path}>{file === null ? tell('handover.none-chosen') : file.name}</span>
          </div>
        </FilePlace>
        <Textarea className={styles.wide} label={tell('handover.seal-field')} description={tell('handover.seal-field-what')} autosize minRows={2} maxRows={9} value={seal} onChange={(event) => {
          setSeal(event.currentTarget.value.slice(0, 2000));
          clear();
        }} />
        <Button aria-disabled={said !== ''} onClick={() => void check()}>{tell('handover.check-submit')}</Button>
        <p role="status" className={said === '' ? 'only-said' : styles.strong}>{said}</p>
        <p role="alert" className={fault === null ? 'only-said' : styles.fault}>{fault ?? ''}</p>
      </Section>
      {checked !== null && <Found report={checked.report} />}
      {checked?.report.sound === true && taken === null && (
        <Section title={tell('handover.take-in-title')} hint={tell('handover.take-in-what')}>
          <Button aria-disabled={said !== ''} onClick={() => void takeIn(checked.handed)}>{tell('handover.take-in')}</Button>
        </Section>
      )}
      {taken !== null && <TakenIn taken={taken} />}
    </>
  );
}

function Found({ report }: { readonly report: Report }) {
  const { sound, faults, warnings, notes, name, rows } = report;
  const withheld = report.withheldIn.map(({ path, fields }) => {
    const said = fields.map(fieldName).join(', ');
    return path === null ? tell('handover.fields-withheld', { fields: said }) : tell('handover.fields-withheld-earlier', { path, fields: said });
  });
  return (
    <Section title={tell(sound ? 'handover.sound' : 'handover.not-sound', { n: faults.length })} {...(name !== null && { hint: tell('handover.pack-named', { name, n: rows }) })}>
      {faults.length > 0 && (
        <div className={styles.table} role="region" aria-label={tell('handover.faults')} tabIndex={0}>
          <table>
            <caption className="only-said">{tell('handover.faults')}</caption>
            <thead><tr><th scope="col">{tell('handover.fault-place')}</th><th scope="col">{tell('handover.fault-what')}</th></tr></thead>
            <tbody>{faults.map((fault, at) => <tr key={at}><td className={styles.path}>{fault.path ?? name ?? tell('handover.whole-pack')}</td><td>{fault.text}</td></tr>)}</tbody>
          </table>
        </div>
      )}
      <ul className={styles.notes}>
        {[...warnings, ...notes, ...withheld].map((line, at) => <li key={at}>{line}</li>)}
      </ul>
    </Section>
  );
}

/** What a field of the journal holds, in words; one that no keeper here can withhold by its name. */
function fieldName(field: string): string {
  const key = `handover-field.${field}`;
  return isWordKey(key) ? tell(key) : field;
}

function TakenIn({ taken }: { readonly taken: Taken }) {
  return (
    <Section title={tell('handover.taken-title', { car: taken.car.name })}>
      <p role="status">{tell('handover.taken', { records: taken.records, readings: taken.readings })}{taken.left === 0 ? '' : ` ${tell('handover.taken-left', { n: taken.left })}`}</p>
      <p><Link href={`/car/${taken.car.id}`}>{tell('handover.to-car', { car: taken.car.name })}</Link></p>
    </Section>
  );
}
