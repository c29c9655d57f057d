import { Link, Route, Switch } from 'wouter';
import { CarScreen } from '../car/car-screen.tsx';
import { leafNamed, leafOfPlace } from '../car/leaf.ts';
import { RecordScreen } from '../car/record/record-screen.tsx';
import { SheetEditorScreen } from '../car/sheet/sheet-editor-screen.tsx';
import { handoverLeafNamed } from '../handover/handover-leaf.ts';
import { HandoverScreen } from '../handover/handover-screen.tsx';
import { ledgerLeafNamed } from '../ledger/ledger-leaf.ts';
import { LedgerScreen } from '../ledger/ledger-screen.tsx';
import { ImportScreen } from '../settings/import/import-screen.tsx';
import { partsPlaceNamed } from '../parts/parts-leaf.ts';
import { PartsScreen } from '../parts/parts-screen.tsx';
import { PaperScreen } from '../papers/paper-screen.tsx';
import { PapersScreen } from '../papers/papers-screen.tsx';
import { BookingScreen } from '../sessions/booking/booking-screen.tsx';
import { ClosingScreen } from '../sessions/closing/closing-screen.tsx';
import { DoingScreen } from '../sessions/doing/doing-screen.tsx';
import { SheetScreen } from '../sessions/sheet/sheet-screen.tsx';
import { SessionsScreen } from '../sessions/sessions-screen.tsx';
import { PlanningScreen } from '../settings/planning/planning-screen.tsx';
import { SettingsScreen } from '../settings/settings-screen.tsx';
import { Asked } from '../ui/asked.tsx';
import { HouseholdProvider } from '../ui/household.tsx';
import { ScreenTitle } from '../ui/screen-title.tsx';
import { useAsk } from '../ui/use-ask.ts';
import { tell } from '../ui/words/tell.ts';
import { YardScreen } from '../yard/yard-screen.tsx';
import { FirstStart } from './first-start.tsx';
import { Frame } from './frame.tsx';

/** The whole page: a first start, or the frame with one screen in it. */
export function App() {
  const state = useAsk('household.state', {});
  return (
    <Asked answer={state}>
      {({ household, folder, sample }) =>
        household === null ? (
          <FirstStart folder={folder} />
        ) : (
          <HouseholdProvider household={household}>
            <Frame sample={sample}>
              <Screens folder={folder} sample={sample} />
            </Frame>
          </HouseholdProvider>
        )
      }
    </Asked>
  );
}

interface ScreensProps {
  readonly folder: string;
  readonly sample: boolean;
}

function Screens({ folder, sample }: ScreensProps) {
  return (
    <Switch>
      <Route path="/"><YardScreen /></Route>
      <Route path="/car"><CarScreen car={null} leaf="care" place={null} /></Route>
      <Route path="/car/:car">{({ car }) => <CarScreen car={car} leaf="care" place={null} />}</Route>
      <Route path="/car/:car/import">{({ car }) => <ImportScreen key={car} car={car} />}</Route>
      <Route path="/import"><ImportScreen key="" car={null} /></Route>
      <Route path="/car/:car/:leaf">{({ car, leaf }) => <CarScreen car={car} leaf={leafNamed(leaf)} place={null} />}</Route>
      <Route path="/car/:car/record/:record">{({ car, record }) => <RecordScreen key={record} car={car} record={record} />}</Route>
      <Route path="/car/:car/sheet/:item">{({ car, item }) => <SheetEditorScreen key={item} car={car} item={item} />}</Route>
      <Route path="/car/:car/:kind/:id">{({ car, kind, id }) => <CarScreen car={car} leaf={leafOfPlace(kind)} place={`${kind}-${id}`} />}</Route>
      <Route path="/sessions"><SessionsScreen /></Route>
      <Route path="/sessions/:session/booking">{({ session }) => <BookingScreen key={session} session={session} />}</Route>
      <Route path="/sessions/:session/sheet">{({ session }) => <SheetScreen key={session} session={session} />}</Route>
      <Route path="/sessions/:session/close">{({ session }) => <ClosingScreen key={session} session={session} />}</Route>
      <Route path="/sessions/:session/work">{({ session }) => <DoingScreen key={session} session={session} />}</Route>
      <Route path="/parts"><PartsScreen leaf="needed" /></Route>
      <Route path="/parts/:leaf">{({ leaf }) => <PartsScreen leaf={partsPlaceNamed(leaf)} />}</Route>
      <Route path="/papers"><PapersScreen /></Route>
      <Route path="/paper/:paper">{({ paper }) => <PaperScreen key={paper} paper={paper} />}</Route>
      <Route path="/handover"><HandoverScreen leaf="write" car={null} /></Route>
      <Route path="/handover/:leaf">{({ leaf }) => <HandoverScreen leaf={handoverLeafNamed(leaf)} car={null} />}</Route>
      <Route path="/handover/:leaf/:car">{({ leaf, car }) => <HandoverScreen key={car} leaf={handoverLeafNamed(leaf)} car={car} />}</Route>
      <Route path="/ledger"><LedgerScreen leaf="costs" /></Route>
      <Route path="/ledger/:leaf">{({ leaf }) => <LedgerScreen leaf={ledgerLeafNamed(leaf)} />}</Route>
      <Route path="/settings/planning"><PlanningScreen /></Route>
      <Route path="/settings"><SettingsScreen folder={folder} sample={sample} /></Route>
      <Route>
        <ScreenTitle>{tell('screen.lost')}</ScreenTitle>
        <p>{tell('screen.lost-what')} <Link href="/">{tell('screen.to-yard')}</Link></p>
      </Route>
    </Switch>
  );
}
