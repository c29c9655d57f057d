import { cancelOrder, changeOrder } from './change-order.ts';
import { moveLot, openLot } from './open-lot.ts';
import { placeOrder } from './place-order.ts';
import { receiveOrder } from './receive-order.ts';
import { seeOffer, setOffer, withdrawOffer } from './set-offer.ts';
import { setPart } from './set-part.ts';
import { removeNeverMix, removePreference, setNeverMix, setPartsSettings, setPreference, setSupplier } from './set-parts.ts';
import { setSpecification } from './set-specification.ts';
import { removeTool, setTaskTools, setTool } from './set-tools.ts';
import { removeSuperseded, supersedeNumber } from './supersede-number.ts';

/** What can be asked of the parts by name. */
export const partsOperations = {
  'specification.set': setSpecification,
  'part.set': setPart,
  'part-preference.set': setPreference,
  'part-preference.remove': removePreference,
  'never-mix.set': setNeverMix,
  'never-mix.remove': removeNeverMix,
  'number.supersede': supersedeNumber,
  'number.keep': removeSuperseded,
  'supplier.set': setSupplier,
  'offer.set': setOffer,
  'offer.see': seeOffer,
  'offer.withdraw': withdrawOffer,
  'parts-settings.set': setPartsSettings,
  'lot.open': openLot,
  'lot.move': moveLot,
  'order.place': placeOrder,
  'order.change': changeOrder,
  'order.receive': receiveOrder,
  'order.cancel': cancelOrder,
  'tool.set': setTool,
  'tool.remove': removeTool,
  'task-tools.set': setTaskTools,
} as const;
