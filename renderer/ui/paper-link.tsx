import { paperAddress } from '../bridge/paper-address.ts';

/** Opens a kept paper beside the program. */
export function PaperLink({ paper, text }: { readonly paper: string; readonly text: string }) {
  return <a href={paperAddress(paper)} target="_blank" rel="noopener noreferrer">{text}</a>;
}
