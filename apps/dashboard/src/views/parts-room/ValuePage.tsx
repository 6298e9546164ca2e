import { valueOperations } from '@hubwright/contracts/inventory/value-operations';
import { addMonths } from '@hubwright/rules/dates';
import { useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { z } from 'zod';
import { usePages } from '../../api/pages.ts';
import { queryFor } from '../../api/query.ts';
import { ValueTable } from '../../features/inventory/ValueTable.tsx';
import { useToday } from '../../format/use-today.ts';
import { Amount, DateText } from '../../format/values.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { FilterField } from '../../ui/FilterField.tsx';
import { InlineSelect } from '../../ui/InlineSelect.tsx';
import { Link } from '../../ui/Link.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import styles from './parts-room.module.css';

const shown = ['all', 'slow', 'dead', 'counted'] as const;
const times = ['1', '3', '12', '24', '60'] as const;
const timeWords = {
  '1': 'a month',
  '3': 'three months',
  '12': 'a year',
  '24': 'two years',
  '60': 'five years',
} as const;
const timeChoices = times.map((value) => ({ value, text: timeWords[value] }));
const address = z.object({
  search: z.string().catch(''),
  show: z.enum(shown).catch('all'),
  time: z.enum(times).catch('12'),
});
const choices = [
  { value: 'all', text: 'every part' },
  { value: 'slow', text: 'slow stock' },
  { value: 'dead', text: 'dead stock' },
  { value: 'counted', text: 'what counts changed' },
] as const;

function asked(show: (typeof shown)[number]) {
  if (show === 'counted') return { counted: 'yes' as const };
  return show === 'all' ? {} : { idle: show };
}

function Figure({ name, href, children }: { name: string; href: string; children: ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        <Link href={href}>{children}</Link>
      </dd>
    </div>
  );
}

/** The whole stock in a few figures; each leads to the parts behind it. */
function Totals({ since }: { since: string }) {
  const { data, error } = useQuery(queryFor(valueOperations.stockValue, { limit: 1, since }));
  if (!data) return error ? <Refusal problem={error} /> : <Skeleton lines={2} />;
  const { totals, currency, slowFrom, deadFrom } = data;
  const money = (minor: number) => <Amount minor={minor} currency={currency} />;
  return (
    <div className="sheet stack">
      <dl className={styles.totals}>
        <Figure name="By moving average" href="/value">
          {money(totals.byAverageMinor)}
        </Figure>
        <Figure name="By lot" href="/value">
          {money(totals.byLotMinor)}
        </Figure>
        <Figure name="Slow" href="/value?show=slow">
          {money(totals.slowMinor)}
        </Figure>
        <Figure name="Dead" href="/value?show=dead">
          {money(totals.deadMinor)}
        </Figure>
        <Figure name="Missed by counts" href="/value?show=counted">
          {money(totals.shrinkageMinor)}
        </Figure>
        <Figure name="Used" href="/value">
          {money(totals.usedMinor)}
        </Figure>
        <Figure name="Turns" href="/value">
          {totals.turns ?? 'nothing held'}
        </Figure>
      </dl>
      <p className="soft small">
        The shop’s own stock in bins, receiving and quarantine; customers’ parts are not counted. Used, missed and turns
        are of the time since <DateText date={since} />. Slow: no issue since <DateText date={slowFrom} />. Dead: none
        since <DateText date={deadFrom} />. Both limits are settings of the shop.
        {totals.notFollowed > 0
          ? ` ${totals.notFollowed} parts count by lot only, since a lot of theirs changed its owner.`
          : ''}
      </p>
    </div>
  );
}

export function ValuePage() {
  const [{ search, show, time }, setAddress] = useAddress(address);
  const since = addMonths(useToday(), -Number(time));
  const parts = usePages(valueOperations.stockValue, { ...(search === '' ? {} : { search }), ...asked(show), since });
  const { data } = useQuery(queryFor(valueOperations.stockValue, { limit: 1, since }));
  return (
    <div className="stack">
      <Totals since={since} />
      <div className="sheet">
        <PagesFrame of={parts}>
          <ValueTable
            rows={parts.rows}
            currency={data?.currency ?? 'USD'}
            since={since}
            tools={
              <>
                <FilterField
                  label="Number or description"
                  value={search}
                  onChange={(text) => setAddress({ search: text })}
                />
                <InlineSelect
                  label="Show"
                  value={show}
                  onChange={(value) => setAddress({ show: value })}
                  choices={choices}
                  isRequired
                />
                <InlineSelect
                  label="Used and missed in"
                  value={time}
                  onChange={(value) => setAddress({ time: value })}
                  choices={timeChoices}
                  isRequired
                />
              </>
            }
          />
        </PagesFrame>
      </div>
    </div>
  );
}
