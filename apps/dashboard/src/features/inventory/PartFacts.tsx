import type { ReactNode } from 'react';
import { countOf } from '../../format/numbers.ts';
import { Link } from '../../ui/Link.tsx';
import { linkWords } from './alternate-words.ts';
import type { Part, PartStock } from './lots.ts';
import styles from './part.module.css';
import { classWords } from './stock-words.ts';

function Fact({ name, children }: { name: string; children: ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

/** What is written down about a part number. */
export function PartFacts({ part }: { part: Part }) {
  const needs = [part.certificateRequired ? 'a certificate' : '', part.serialised ? 'a serial' : ''].filter(Boolean);
  return (
    <dl className="facts">
      <Fact name="Maker">{part.maker}</Fact>
      <Fact name="Class">{classWords[part.class]}</Fact>
      <Fact name="Issued by the">
        {part.issueUnit}
        {part.packSize > 1 ? `, bought in packs of ${part.packSize}` : ''}
      </Fact>
      <Fact name="Comes with">{needs.length === 0 ? 'no paper of its own' : needs.join(' and ')}</Fact>
      <Fact name="Shelf life">
        {part.shelfLifeMonths === null ? 'unlimited' : `${countOf(part.shelfLifeMonths, 'month')} from cure`}
        {part.minimumDaysAtBuild > 0 ? `, ${countOf(part.minimumDaysAtBuild, 'day')} must be left at build` : ''}
      </Fact>
      <Fact name="Bought from">
        {part.supplier?.name ?? 'no supplier named'}, {countOf(part.leadTimeDays, 'day')} lead time, {part.unitPrice}{' '}
        each
      </Fact>
      <Fact name="Home bin">{part.homeBin ?? 'none'}</Fact>
      <Fact name="May stand in">
        {part.alternates.length === 0 ? 'nothing' : null}
        {part.alternates.map((each, place) => (
          <span key={each.id}>
            {place === 0 ? '' : ', then '}
            <Link href={`/parts/${each.id}`}>{each.number}</Link>
            {linkWords(each) ? ` (${linkWords(each)})` : ''}
          </span>
        ))}
      </Fact>
      {part.standsInFor.length > 0 ? (
        <Fact name="Stands in for">
          {part.standsInFor.map((each, place) => (
            <span key={each.id}>
              {place === 0 ? '' : ', '}
              <Link href={`/parts/${each.id}`}>{each.number}</Link>
              {linkWords(each) ? ` (${linkWords(each)})` : ''}
            </span>
          ))}
        </Fact>
      ) : null}
    </dl>
  );
}

function Figure({ name, value, unit, href }: { name: string; value: number; unit: string; href: string }) {
  return (
    <div>
      <p className="soft small">{name}</p>
      <p className="quantity">
        <span className="figure">
          <Link href={href}>{String(value)}</Link>
        </span>
        <span className="unit">{unit}</span>
      </p>
    </div>
  );
}

/** The numbers of a part; each leads to the lots or orders behind it. */
export function PartNumbers({ part, stock }: { part: Part; stock: PartStock }) {
  const lots = `/stock?search=${encodeURIComponent(part.number)}`;
  const expected = `/receiving?search=${encodeURIComponent(part.number)}`;
  return (
    <div className={styles.figures}>
      <Figure name="Have" value={stock.have} unit={part.issueUnit} href={`${lots}&state=accepted`} />
      <Figure name="of it promised" value={stock.reserved} unit={part.issueUnit} href={`${lots}&state=accepted`} />
      <Figure name="In quarantine" value={stock.inQuarantine} unit={part.issueUnit} href={`${lots}&state=quarantine`} />
      <Figure name="On order" value={stock.onOrder} unit={part.issueUnit} href={expected} />
    </div>
  );
}
