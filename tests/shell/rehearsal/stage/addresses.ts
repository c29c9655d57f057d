/** Chromium alone knows no schemes but the web's: on the stage, one of the program's own stands under a name of this machine, where the stage serves it. */
const ENDING = '.localhost';

/** Addresses as the program has them and as the stage shows them. */
export interface Addresses {
  /** @example onStage('trunnion://app/car/pip') //=> 'http://app.trunnion.localhost:4000/car/pip' */
  onStage(address: string): string;
  /** The program's own address for what the stage shows, also within a blob's. @example asProgram('http://app.trunnion.localhost:4000/') //=> 'trunnion://app/' */
  asProgram(address: string): string;
}

export function addressesAt(port: number): Addresses {
  const shown = new RegExp(`^(blob:)?http://([^/.]+)\\.([a-z]+)\\${ENDING}:${port}(?=/|$)`);
  return {
    onStage(address) {
      const { protocol, host } = new URL(address);
      return isOfTheWeb(protocol) ? address : address.replace(`${protocol}//${host}`, `http://${host}.${protocol.slice(0, -1)}${ENDING}:${port}`);
    },
    asProgram: (address) => address.replace(shown, '$1$3://$2'),
  };
}

function isOfTheWeb(protocol: string): boolean {
  return ['http:', 'https:', 'data:', 'blob:', 'about:', 'file:', 'ws:', 'wss:'].includes(protocol);
}
