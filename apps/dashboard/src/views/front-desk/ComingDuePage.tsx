import { fleetOperations } from '@hubwright/contracts/due-dates/fleet-operations';
import { dueDateOperations } from '@hubwright/contracts/due-dates/operations';
import { useQuery } from '@tanstack/react-query';
import { z } from 'zod';
import { addressOf } from '../../api/address.ts';
import { usePages } from '../../api/pages.ts';
import { arrivalsQuery } from '../../features/due-dates/arrivals.ts';
import { DueGroups } from '../../features/due-dates/DueGroups.tsx';
import { DueTable } from '../../features/due-dates/DueTable.tsx';
import { dueGroups } from '../../features/due-dates/due-groups.ts';
import { ExpectedArrivals } from '../../features/due-dates/ExpectedArrivals.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { Button, LinkButton } from '../../ui/Button.tsx';
import { Caution } from '../../ui/Caution.tsx';
import { FilterField } from '../../ui/FilterField.tsx';
import { InlineSelect } from '../../ui/InlineSelect.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import { monthWords } from '../../ui/pictures/TurnaroundByMonth.tsx';

const spans = ['30', '90', '180', '365', '1095'] as const;
const month = z.string().regex(/^\d{4}-(0[1-9]|1[0-2])$/);
const address = z.object({
  days: z.enum(spans).catch('180'),
  month: month.catch(''),
  modelId: z.uuid().catch(''),
  customerId: z.uuid().catch(''),
  search: z.string().max(100).catch(''),
  group: z.enum(dueGroups).catch('none'),
});
type Address = z.output<typeof address>;
const spanWords: Record<(typeof spans)[number], string> = {
  '30': 'within 30 days',
  '90': 'within 90 days',
  '180': 'within half a year',
  '365': 'within a year',
  '1095': 'within three years',
};
const groupWords: Record<(typeof dueGroups)[number], string> = {
  none: 'not grouped',
  customer: 'by customer',
  model: 'by model',
  month: 'by month',
};

/** What the address asks the server for. A month stands in place of the span. */
function askedOf({ days, month: of, modelId, customerId, search }: Address) {
  return {
    days: Number(days),
    ...(of ? { month: of } : {}),
    ...(modelId ? { modelId } : {}),
    ...(customerId ? { customerId } : {}),
    ...(search ? { search } : {}),
  };
}

/** The fleet out there: whose unit comes due next, so that the desk can tell them before it is urgent. */
export function ComingDuePage() {
  const [filter, setFilter] = useAddress(address);
  const asked = askedOf(filter);
  const units = usePages(dueDateOperations.comingDue, asked);
  const { modelId, customerId, group } = filter;
  const about = { ...(modelId ? { modelId } : {}), ...(customerId ? { customerId } : {}) };
  return (
    <div className="stack">
      <section className="sheet stack" aria-label="Units">
        <Caution>
          these are likely dates and no permission to fly until then. The current approved manual and the operator’s
          authority decide.
        </Caution>
        <Filters filter={filter} onFilter={setFilter} />
        <PagesFrame of={units}>
          {group === 'none' || units.rows.length === 0 ? (
            <DueTable rows={units.rows} />
          ) : (
            <DueGroups rows={units.rows} group={group} />
          )}
        </PagesFrame>
        <div className="row no-print">
          {/* Under headings each table exports its own rows. */}
          {group === 'none' ? null : (
            <LinkButton href={addressOf(fleetOperations.dueListCsv, asked)}>The whole list as CSV</LinkButton>
          )}
          <LinkButton
            href={addressOf(fleetOperations.dueListPdf, { ...asked, group: group === 'none' ? 'customer' : group })}
            target="_blank"
          >
            The list on paper
          </LinkButton>
          <LinkButton href="/reminders">Reminder letters</LinkButton>
        </div>
      </section>
      <section className="sheet stack" aria-labelledby="arrivals">
        <h2 id="arrivals">Expected arrivals by month</h2>
        <ExpectedArrivals asked={about} title="Expected arrivals by month" />
      </section>
    </div>
  );
}

interface FiltersProps {
  filter: Address;
  onFilter: (changes: Partial<Address>) => void;
}

function Filters({ filter, onFilter }: FiltersProps) {
  const arrivals = useQuery(arrivalsQuery({})).data;
  const months = [
    { value: '', text: 'any' },
    ...(arrivals?.months ?? []).map((each) => ({ value: each.month, text: monthWords(each.month) })),
  ];
  const models = [
    { value: '', text: 'all' },
    ...(arrivals?.models ?? []).map((model) => ({ value: model.modelId, text: model.designation })),
  ];
  return (
    <div className="row">
      <FilterField label="Find" value={filter.search} onChange={(search) => onFilter({ search })} />
      <InlineSelect
        label="How far ahead"
        value={filter.days}
        onChange={(days) => onFilter({ days, month: '' })}
        choices={spans.map((value) => ({ value, text: spanWords[value] }))}
        isRequired
      />
      <InlineSelect
        label="Month"
        value={filter.month}
        onChange={(value) => onFilter({ month: value })}
        choices={months}
        isRequired
      />
      <InlineSelect
        label="Model"
        value={filter.modelId}
        onChange={(modelId) => onFilter({ modelId })}
        choices={models}
        isRequired
      />
      <InlineSelect
        label="Group"
        value={filter.group}
        onChange={(group) => onFilter({ group })}
        choices={dueGroups.map((value) => ({ value, text: groupWords[value] }))}
        isRequired
      />
      {filter.customerId ? <Button onPress={() => onFilter({ customerId: '' })}>Show every customer</Button> : null}
    </div>
  );
}
