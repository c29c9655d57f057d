import { must } from '../../../shared-core/result/assert.ts';
import type { SamplePage } from '../sample-page.ts';
import type { Place, Press } from './place.ts';

/** What one may have put together for one long day: four cars, everything that a sheet can have. */
const LONG_DAY = ['pip-oil', 'pip-coolant', 'pip-brake-fluid', 'pip-pads', 'pip-plugs', 'heron-leisure-battery', 'wren-hoses', 'ember-wipers'];

const over = (address: string, forms: Readonly<Record<string, Press | readonly Press[]>>): Place[] =>
  Object.entries(forms).map(([name, press]) => ({ name, address, press: (Array.isArray(press) ? press : [press]) as Press[] }));

const YARD: readonly Place[] = [
  { name: 'yard', address: '/', wide: true },
  { name: 'yard-reading', address: '/', press: ['Enter a reading for Pip (key R)'], wide: true, overlaid: true },
  { name: 'yard-unfolded', address: '/', press: ['Unfold all lanes'], wide: true },
  { name: 'yard-post', address: '/', press: [/^Sat 5 Dec, the drive/], wide: true },
];

const CAR: readonly Place[] = [
  ...['', '/intake', '/services', '/card', '/distance', '/wear'].map((leaf) => ({ name: `car${leaf.replace('/', '-')}`, address: `/car/pip${leaf}` })),
  ...['wren', 'ember', 'heron', 'alder'].flatMap((car) => [{ name: `car-${car}`, address: `/car/${car}` }, { name: `car-${car}-distance`, address: `/car/${car}/distance` }]),
  { name: 'car-record-page', address: '/car/pip/record/pip-tyres-3' },
  { name: 'car-record-amend', address: '/car/pip/record/pip-tyres-3', press: ['Amend it'] },
  { name: 'car-task-sheet', address: '/car/pip/sheet/pip-brake-fluid' },
  { name: 'car-task-step', address: '/car/pip/sheet/pip-brake-fluid', press: ['Change step 2'] },
  { name: 'car-unknown', address: '/car/nobody' },
  ...over('/car/pip', {
    'form-add-car': 'Add a car',
    'form-record': 'Record work',
    'form-reading': 'Enter a reading',
    'form-car': 'Change the car',
    'form-pack': 'Write its history pack',
    'form-confirm': /^Confirm \d+ intervals/,
    'form-set': 'Add from a set',
    'form-item': 'Add an item',
  }),
  ...over('/car/pip/wear', { 'form-measure': 'Enter measurements', 'form-limit': /^Limit of tread/ }),
  ...over('/car/pip/distance', { 'form-lay-up': 'Lay it up', 'form-use-change': 'Its use changed', 'form-allowance': 'Add an allowance' }),
  ...over('/car/pip/card', { 'form-figure': 'Change Coolant specification' }),
  ...over('/car/pip/services', { 'form-service': 'Change this service' }),
];

const PARTS: readonly Place[] = [
  ...['', '/order', '/placed', '/shelf', '/tools', '/offers', '/prices'].map((leaf) => ({ name: `parts${leaf.replace('/', '-') || '-needed'}`, address: `/parts${leaf}` })),
  ...over('/parts', { 'form-need': [/tasks, .* without parts/, /^Change: Alder:/] }),
  ...over('/parts/placed', { 'form-order-by-hand': 'Enter an order placed by hand', 'form-receive': /^Take in what came: Copper Lane/, 'form-order-sheet': /^Order sheet: Copper Lane Parts, 22 Nov/, 'form-send-back': /^Send back or claim/ }),
  ...over('/parts/shelf', { 'form-count': 'Count the shelf', 'form-lot': 'Put something on it', 'form-use': /^Use: Fern/ }),
  ...over('/parts/tools', { 'form-tool': 'Add a tool', 'form-task-tools': 'What a task takes' }),
  ...over('/parts/offers', { 'form-offer': 'Add an offer', 'form-seen': /^Seen again: Air filter A1/ }),
];

const REST: readonly Place[] = [
  { name: 'papers', address: '/papers' },
  { name: 'papers-all', address: '/papers', press: [/^All \(/] },
  { name: 'import', address: '/import' },
  { name: 'handover', address: '/handover' },
  { name: 'handover-check', address: '/handover/check' },
  { name: 'handover-leave', address: '/handover/leave' },
  { name: 'handover-leave-car', address: '/handover/leave/pip' },
  { name: 'handover-seal', address: '/handover/seal' },
  { name: 'ledger', address: '/ledger' },
  { name: 'ledger-ahead', address: '/ledger/ahead' },
  { name: 'ledger-quotes', address: '/ledger/quotes' },
  { name: 'ledger-wishes', address: '/ledger/wishes' },
  ...over('/ledger', { 'form-fuel': 'Enter fuel of a year', 'form-hour': 'What an hour of mine counts' }),
  ...over('/ledger/quotes', { 'form-quote': 'Keep a quote' }),
  ...over('/ledger/wishes', { 'form-wish': 'Add a wish' }),
  { name: 'settings', address: '/settings' },
  { name: 'planning', address: '/settings/planning' },
  ...over('/settings/planning', { 'form-garage': 'Add a garage' }),
  { name: 'lost', address: '/nowhere-at-all' },
];

/** Every screen, leaf, main form and state of the sample; a long session is kept and begun for it. */
export async function samplePlaces({ must: ask }: Pick<SamplePage, 'must'>): Promise<readonly Place[]> {
  const kept = await ask('session.keep', { sessions: [{ day: '2026-11-28' as never, place: 'home', tasks: LONG_DAY.map((id) => ({ kind: 'item', id })) }] });
  const session = must(kept.sessions[0], 'the session that was kept').id;
  await ask('work.begin', { session });
  const { papers } = await ask('papers.show', { show: 'all' });
  const paper = (part: string) => must(papers.find((one) => one.media.includes(part)), `a paper of ${part}`).id;
  return [
    ...YARD,
    ...CAR,
    { name: 'sessions', address: '/sessions' },
    ...over('/sessions', { 'sessions-move': /^Move it: Sat 5 Dec/ }),
    { name: 'booking', address: '/sessions/heron-winter/booking' },
    { name: 'job-sheet', address: `/sessions/${session}/sheet` },
    { name: 'at-work', address: `/sessions/${session}/work` },
    { name: 'closing', address: `/sessions/${session}/close` },
    ...PARTS,
    { name: 'paper-pdf', address: `/paper/${paper('pdf')}` },
    { name: 'paper-photograph', address: `/paper/${paper('image')}` },
    { name: 'paper-black-out', address: `/paper/${paper('image')}`, press: ['Black parts out'] },
    ...REST,
  ];
}
