import { addRecord } from './add-record.ts';
import { amendObservation } from './amend-observation.ts';
import { amendRecord } from './amend-record.ts';
import { answerIntake } from './answer-intake.ts';
import { closeSession } from './close-session.ts';
import { disposeWaste, keepWaste } from './keep-waste.ts';
import { describePaper, setPapersAside } from './describe-paper.ts';
import { endWithWork, releaseWithWork } from './end-with-work.ts';
import { keepWithWork } from './keep-with-work.ts';
import { keepCar, leaveCar } from './leave-car.ts';
import { noteFind } from './note-find.ts';
import { closeObservation, noteObservation } from './note-observation.ts';
import { refundReturn } from './return-order-refund.ts';
import { returnOrder } from './return-order.ts';
import { setLot } from './set-lot.ts';
import { discardLot, useLot } from './take-from-shelf.ts';
import { takeStock } from './take-stock.ts';
import { tiePaper, untiePaper } from './tie-paper.ts';

/** What can be asked of the records by name, and of the shelf that they take from; keeping a paper's bytes is the host's. */
export const recordsOperations = {
  'record.add': addRecord,
  'record.amend': amendRecord,
  'intake.answer': answerIntake,
  'observation.note': noteObservation,
  'observation.amend': amendObservation,
  'observation.close': closeObservation,
  'car.leave': leaveCar,
  'car.keep': keepCar,
  'paper.tie': tiePaper,
  'paper.untie': untiePaper,
  'paper.describe': describePaper,
  'papers.set-aside': setPapersAside,
  'work.find': noteFind,
  'session.keep': keepWithWork,
  'session.close': closeSession,
  'session.release': releaseWithWork,
  'session.end': endWithWork,
  'lot.set': setLot,
  'lot.use': useLot,
  'lot.discard': discardLot,
  'stock.take': takeStock,
  'waste.keep': keepWaste,
  'waste.dispose': disposeWaste,
  'order.return': returnOrder,
  'order.refund': refundReturn,
} as const;
