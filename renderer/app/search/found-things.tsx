import { Button } from '@mantine/core';
import { useEffect, useState } from 'react';
import type { SearchView } from '../../../shared-core/views/search-view.ts';
import { Asked } from '../../ui/asked.tsx';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';
import { FoundLink } from './found-link.tsx';
import styles from './search.module.css';

/** As many of one kind as are ever listed. */
const MOST = 100;

interface FoundThingsProps {
  readonly query: string;
  readonly onGo: (href: string) => void;
  /** Says how many there are, once it is known. */
  readonly onSaid: (said: string) => void;
}

/** What was found, by kind; the answer before stands until the next one has come. */
export function FoundThings({ query, onGo, onSaid }: FoundThingsProps) {
  const answer = useAsk('household.search', { query }, { hold: true });
  const said = answer.state === 'answered' && answer.value.query === query ? saidOf(answer.value) : null;
  useEffect(() => {
    if (said !== null) onSaid(said);
  }, [said, onSaid]);
  return (
    <Asked answer={answer}>
      {(view) => (
        <>
          {view.near.map(({ typed, words }) => <p key={typed} className={styles.said}>{tell('search.near', { typed, words: words.join(', ') })}</p>)}
          {view.total === 0 && <p className={styles.said}><strong>{saidOf(view)}</strong> {tell('search.try')}</p>}
          {view.groups.map((group) => <Group key={`${group.kind} ${view.query}`} group={group} query={view.query} onGo={onGo} />)}
        </>
      )}
    </Asked>
  );
}

function saidOf({ total, near, nowhere }: SearchView): string {
  if (total === 0) return nowhere.length > 0 ? tell('search.nowhere', { words: nowhere.join(', ') }) : tell('search.not-together');
  return [tell('search.found', { n: total }), ...near.map(({ typed, words }) => tell('search.near', { typed, words: words.join(', ') }))].join(' ');
}

interface GroupProps {
  readonly group: SearchView['groups'][number];
  readonly query: string;
  readonly onGo: (href: string) => void;
}

/** The things of one kind: the first few, and all of them when asked. */
function Group({ group, query, onGo }: GroupProps) {
  const [all, setAll] = useState(false);
  const { kind, total, hits } = group;
  const name = tell('search.group', { kind: tell(`search-kind.${kind}`), n: total });
  return (
    <section aria-label={name}>
      <h3 className={styles.kind}>{name}</h3>
      {all ? <WholeGroup group={group} query={query} onGo={onGo} /> : <Hits hits={hits} onGo={onGo} />}
      {!all && total > hits.length && <Button size="compact-sm" variant="subtle" data-found aria-label={`${tell('search.all', { n: total })}: ${tell(`search-kind.${kind}`)}`} onClick={() => setAll(true)}>{tell('search.all', { n: total })}</Button>}
    </section>
  );
}

function WholeGroup({ group: { kind, hits }, query, onGo }: GroupProps) {
  const answer = useAsk('household.search', { query, kind, most: MOST });
  if (answer.state === 'asking') return <Hits hits={hits} onGo={onGo} />;
  return (
    <Asked answer={answer}>
      {({ groups: [whole] }) => (
        <>
          <Hits hits={whole?.hits ?? []} onGo={onGo} />
          {whole !== undefined && whole.total > whole.hits.length && <p className={styles.said}>{tell('search.first', { n: whole.hits.length })}</p>}
        </>
      )}
    </Asked>
  );
}

function Hits({ hits, onGo }: { readonly hits: GroupProps['group']['hits']; readonly onGo: (href: string) => void }) {
  return <ul className={styles.hits}>{hits.map((hit) => <li key={hit.id}><FoundLink hit={hit} onGo={onGo} /></li>)}</ul>;
}
