import type { BallHolder } from '@hubwright/contracts/work-orders/states';
import type { WholeWorkOrder } from './whole-work-order.ts';

interface OpenItem {
  readonly what: string;
  readonly holder: BallHolder;
}

/** What keeps this unit in the house, by name, and who clears it. The release checklist is stricter and the inspector's. */
export function openItemsOf(
  workOrder: WholeWorkOrder,
  row: { readonly ball: BallHolder; readonly lookedAt: boolean; readonly kit: { code: string; state: string } | null },
): OpenItem[] {
  if (workOrder.closedAt || workOrder.shippedAt) return [];
  const items: (OpenItem | false | undefined)[] = [
    !row.lookedAt && { what: 'The preliminary inspection is not signed', holder: 'inspector' },
    ...workOrder.holds
      .filter((hold) => hold.liftedAt === null)
      .map((hold) => ({ what: `Held: ${hold.reason}`, holder: hold.liftedByRole as BallHolder })),
    ...unreadSerials(workOrder),
    ...workOrder.quotes
      .filter((quote) => quote.state === 'sent' || quote.state === 'silent')
      .map((quote) => ({ what: `${quote.number} waits for an answer`, holder: 'customer' as const })),
    ...workOrder.findings
      .filter((finding) => finding.disposition === null)
      .map((finding) => ({ what: `${finding.number} has no disposition`, holder: 'inspector' as const })),
    ...openTravelers(workOrder),
    row.kit?.state === 'open' && { what: `${row.kit.code} is open`, holder: 'technician' },
    ...workOrder.looseItems
      .filter((item) => item.returnedAt === null)
      .map((item) => ({ what: `${item.quantity} × ${item.description} goes back`, holder: 'front-desk' as const })),
  ];
  return items.filter((item): item is OpenItem => typeof item === 'object');
}

function unreadSerials({ unit }: WholeWorkOrder): OpenItem[] {
  return [unit, ...unit.parts.map((part) => part.item)]
    .filter((item) => item.serial === null)
    .map((item) => ({
      what: `The serial of ${item.provisionalName ?? item.partNumber} is not read yet`,
      holder: 'inspector',
    }));
}

function openTravelers({ travelers }: WholeWorkOrder): OpenItem[] {
  return travelers.flatMap((traveler) => {
    const open = traveler.steps.filter((step) => step.state === 'open').length;
    return open === 0 || traveler.disposition === 'reject'
      ? []
      : [
          {
            what: `${traveler.number} ${traveler.title}: ${open === 1 ? '1 open step' : `${open} open steps`}`,
            holder: 'technician' as const,
          },
        ];
  });
}
