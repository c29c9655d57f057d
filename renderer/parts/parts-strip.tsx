import { Link } from 'wouter';
import strip from '../ui/leaf-strip.module.css';
import { tell } from '../ui/words/tell.ts';
import { PARTS_LEAVES, partsLeafAddress, type PartsLeaf } from './parts-leaf.ts';

/** The leaves of the screen by name, each one press away. */
export function PartsStrip({ chosen }: { readonly chosen: PartsLeaf }) {
  return (
    <nav aria-label={tell('parts.leaves')} className={strip.strip}>
      <ul>
        {PARTS_LEAVES.map((leaf) => (
          <li key={leaf}><Link href={partsLeafAddress(leaf)} aria-current={leaf === chosen ? 'page' : undefined}>{tell(`parts-leaf.${leaf}`)}</Link></li>
        ))}
      </ul>
    </nav>
  );
}
