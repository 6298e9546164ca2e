import { useTitles } from '@hubwright/contracts/manuals/service-limits';
import { Hours, Quantity } from '../../format/values.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import type { RevisionModel } from './manuals.ts';

type Rule = RevisionModel['tboRules'][number];

function serialWords({ serialFrom, serialTo }: Rule): string {
  if (serialFrom === undefined && serialTo === undefined) return '';
  return `, serials ${serialFrom ?? 'up'} ${serialTo === undefined ? 'and on' : `to ${serialTo}`}`;
}

function conditionWords({ useCategory, ageFromMonths, ageToMonths }: Rule): string {
  const ages = [
    ageFromMonths === undefined ? '' : `from ${ageFromMonths} months`,
    ageToMonths === undefined ? '' : `below ${ageToMonths} months`,
  ].filter((words) => words !== '');
  return [
    useCategory === undefined ? '' : `, ${useTitles[useCategory].toLowerCase()} use`,
    ages.length === 0 ? '' : `, ${ages.join(' and ')} since new`,
  ].join('');
}

/** Time between overhauls as the revision says it, whichever comes first; `applications` names an application by its id. */
export function TboList(props: { rules: readonly Rule[]; applications: ReadonlyMap<string, string> }) {
  if (props.rules.length === 0) return <EmptyState title="This revision gives no time between overhauls" />;
  return (
    <ul className="lines">
      {props.rules.map((rule) => (
        <li
          key={`${rule.applicationId ?? ''} ${serialWords(rule)}${conditionWords(rule)} ${rule.hoursTenths ?? ''} ${rule.months ?? ''}`}
        >
          <span>
            {rule.hoursTenths === undefined ? null : <Hours tenths={rule.hoursTenths} />}
            {rule.hoursTenths === undefined || rule.months === undefined ? null : ' or '}
            {rule.months === undefined ? null : (
              <Quantity amount={rule.months} unit={rule.months === 1 ? 'month' : 'months'} />
            )}
            {rule.months !== undefined && rule.endOfMonth ? ', to the end of the month' : ''}
            {serialWords(rule)}
            {conditionWords(rule)}
            <span className="soft">
              {', '}
              {rule.applicationId
                ? (props.applications.get(rule.applicationId) ?? 'one application')
                : 'every application'}
            </span>
          </span>
          <span className="soft">{rule.requirement}</span>
        </li>
      ))}
    </ul>
  );
}
