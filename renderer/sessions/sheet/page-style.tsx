import { styleNonce } from '../../app/style-nonce.ts';
import { tell } from '../../ui/words/tell.ts';
import type { SheetPaper } from './sheet-choices.ts';

interface PageStyleProps {
  readonly paper: SheetPaper;
  /** The session, at the head of every page. */
  readonly session: string;
  /** The cars in their order: each has pages of its own, with its name at their head. */
  readonly cars: readonly string[];
}

/** The paper, and the head and foot of each printed page: they name the session, the car and the page. */
export function PageStyle({ paper, session, cars }: PageStyleProps) {
  return <style nonce={styleNonce()}>{pageRules({ paper, session, cars })}</style>;
}

function pageRules({ paper, session, cars }: PageStyleProps): string {
  const type = "font: 600 12pt 'Source Sans 3', sans-serif; color: #000;";
  const head = `${type} padding-bottom: 2mm; border-bottom: 0.4mm solid #000; margin-bottom: 4mm; vertical-align: bottom;`;
  const named = cars.map((car, at) => `
@page job-car-${at} {
  @top-left { content: ${quoted(car)}; ${head} text-align: left; }
  @top-center { content: ''; ${head} }
  @top-right { content: ${quoted(session)}; ${head} text-align: right; }
  @bottom-right { content: ${quoted(`${tell('job.page')} `)} counter(page) ${quoted(` ${tell('job.page-of')} `)} counter(pages); ${type} vertical-align: top; padding-top: 2mm; }
}
@media print { [data-job-car='${at}'] { page: job-car-${at}; } }`);
  return [`@page { size: ${paper}; margin: 16mm 14mm 13mm; }`, ...named].join('\n');
}

/** Text as a string of CSS: whatever is not plain goes in by its number. */
function quoted(text: string): string {
  return `"${text.replace(/["\\<>\p{Cc}]/gu, (sign) => `\\${sign.codePointAt(0)?.toString(16) ?? ''} `)}"`;
}
