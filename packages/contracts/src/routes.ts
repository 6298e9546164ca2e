import { meterOperations } from './customers/meter-operations.ts';
import { customerOperations } from './customers/operations.ts';
import { ownerOperations } from './customers/owner-operations.ts';
import { readingsOperations } from './customers/readings-operations.ts';
import { directiveOperations } from './directives/operations.ts';
import { arrivalOperations } from './due-dates/arrival-operations.ts';
import { fleetOperations } from './due-dates/fleet-operations.ts';
import { dueDateOperations } from './due-dates/operations.ts';
import { fieldBalanceOperations } from './field-balance/operations.ts';
import { fieldReviewOperations } from './field-balance/review-operations.ts';
import { fileOperations } from './files/operations.ts';
import { findingOperations } from './findings/operations.ts';
import { setOperations } from './findings/set-operations.ts';
import { benchLinkOperations } from './governor-tests/link-operations.ts';
import { governorOperations } from './governor-tests/operations.ts';
import { fleetTableOperations } from './imports/fleet-operations.ts';
import { importOperations } from './imports/operations.ts';
import { countOperations } from './inventory/count-operations.ts';
import { freezerOperations } from './inventory/freezer-operations.ts';
import { givingBackOperations } from './inventory/giving-back-operations.ts';
import { handlingOperations } from './inventory/handling-operations.ts';
import { inventoryOperations } from './inventory/operations.ts';
import { partOperations } from './inventory/part-operations.ts';
import { valueOperations } from './inventory/value-operations.ts';
import { allocationOperations } from './kits/allocation-operations.ts';
import { destroyOperations } from './kits/destroy-operations.ts';
import { expectedOperations } from './kits/expected-operations.ts';
import { holdOperations } from './kits/hold-operations.ts';
import { kitsOperations } from './kits/operations.ts';
import { promiseOperations } from './kits/promise-operations.ts';
import { trayOperations } from './kits/tray-operations.ts';
import { documentOperations } from './manuals/document-operations.ts';
import { kitListOperations } from './manuals/kit-list-operations.ts';
import { manualOperations } from './manuals/operations.ts';
import type { Operation } from './operation.ts';
import { mediaOperations } from './peening/media-operations.ts';
import { peeningOperations } from './peening/operations.ts';
import { peeningPaperOperations } from './peening/paper-operations.ts';
import { accessOperations } from './people/access-operations.ts';
import { peopleOperations } from './people/operations.ts';
import { trainingOperations } from './people/training-operations.ts';
import { workingTimeOperations } from './people/working-time-operations.ts';
import { equipmentOperations } from './processes/equipment-operations.ts';
import { processOperations } from './processes/operations.ts';
import { studyOperations } from './processes/study-operations.ts';
import { purchasingOperations } from './purchasing/operations.ts';
import { supplierOperations } from './purchasing/supplier-operations.ts';
import { quoteOperations } from './quotes/operations.ts';
import { recordOperations } from './records/operations.ts';
import { releaseOperations } from './releases/operations.ts';
import { reminderOperations } from './reminders/operations.ts';
import { serverOperations } from './server/operations.ts';
import { assemblyOperations } from './units/assembly-operations.ts';
import { intervalOperations } from './units/interval-operations.ts';
import { keepingOperations } from './units/keeping-operations.ts';
import { unitOperations } from './units/operations.ts';
import { unitHistoryOperations } from './units/unit-history-operations.ts';
import { lossOperations } from './vendors/loss-operations.ts';
import { vendorOperations } from './vendors/operations.ts';
import { vendorPieceOperations } from './vendors/piece-operations.ts';
import { bakeOperations } from './work-orders/bake-operations.ts';
import { clockOperations } from './work-orders/clock-operations.ts';
import { dimensionOperations } from './work-orders/dimension-operations.ts';
import { documentSetOperations } from './work-orders/document-set-operations.ts';
import { loadOperations } from './work-orders/load-operations.ts';
import { workOrderOperations } from './work-orders/operations.ts';
import { printOperations } from './work-orders/print-operations.ts';
import { reopenOperations } from './work-orders/reopen-operations.ts';
import { reviewOperations } from './work-orders/review-operations.ts';
import { scopeOperations } from './work-orders/scope-operations.ts';
import { touchUpOperations } from './work-orders/touch-up-operations.ts';
import { travelerOperations } from './work-orders/traveler-operations.ts';

/** Every endpoint of the server, by name. */
export const routes = {
  ...serverOperations,
  ...peopleOperations,
  ...accessOperations,
  ...trainingOperations,
  ...workingTimeOperations,
  ...customerOperations,
  ...meterOperations,
  ...ownerOperations,
  ...assemblyOperations,
  ...readingsOperations,
  ...manualOperations,
  ...documentOperations,
  ...unitOperations,
  ...intervalOperations,
  ...unitHistoryOperations,
  ...keepingOperations,
  ...inventoryOperations,
  ...handlingOperations,
  ...givingBackOperations,
  ...countOperations,
  ...purchasingOperations,
  ...kitsOperations,
  ...allocationOperations,
  ...expectedOperations,
  ...promiseOperations,
  ...destroyOperations,
  ...holdOperations,
  ...partOperations,
  ...supplierOperations,
  ...processOperations,
  ...studyOperations,
  ...equipmentOperations,
  ...freezerOperations,
  ...travelerOperations,
  ...loadOperations,
  ...bakeOperations,
  ...vendorOperations,
  ...lossOperations,
  ...vendorPieceOperations,
  ...peeningOperations,
  ...mediaOperations,
  ...peeningPaperOperations,
  ...fieldBalanceOperations,
  ...fieldReviewOperations,
  ...governorOperations,
  ...benchLinkOperations,
  ...directiveOperations,
  ...findingOperations,
  ...fileOperations,
  ...recordOperations,
  ...releaseOperations,
  ...dueDateOperations,
  ...arrivalOperations,
  ...fleetOperations,
  ...reminderOperations,
  ...workOrderOperations,
  ...scopeOperations,
  ...printOperations,
  ...reopenOperations,
  ...reviewOperations,
  ...documentSetOperations,
  ...dimensionOperations,
  ...touchUpOperations,
  ...setOperations,
  ...clockOperations,
  ...quoteOperations,
  ...importOperations,
  ...fleetTableOperations,
  ...valueOperations,
  ...trayOperations,
  ...kitListOperations,
} as const;

/** The same as a list, for generated tables and documents. */
export const allOperations: readonly Operation[] = Object.values(routes);
