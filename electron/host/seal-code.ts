import type { GivenSeal } from '../../shared-core/views/seal-view.ts';

/**
 * The QR code of a seal's text: capital letters and digits without line breaks, so that its squares are few and large; error correction M.
 *
 * @example await sealCode(sealText(seal)) //=> { squares: 57, path: 'M0 0h7v1h-7z…' }
 */
export async function sealCode(text: string): Promise<GivenSeal['code']> {
  // Loaded only when a seal is given: every command passes here.
  const { create } = await import('qrcode');
  const { modules } = create(text.replaceAll(/[^0-9A-Z]/g, ''), { errorCorrectionLevel: 'M' });
  const rows = Array.from({ length: modules.size }, (_one, y) => [...modules.data.subarray(y * modules.size, (y + 1) * modules.size)].map((dark) => (dark === 0 ? ' ' : '#')).join(''));
  const path = rows.flatMap((row, y) => [...row.matchAll(/#+/g)].map((run) => `M${run.index} ${y}h${run[0].length}v1h-${run[0].length}z`)).join('');
  return { squares: modules.size, path };
}
