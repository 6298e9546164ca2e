import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useDeferredValue, useState } from 'react';
import { DateText, Hours } from '../../format/values.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { type NextDue, nextDueQuery } from './due.ts';

const mostHours = 730;

/** “What if this aircraft flies so much?”: answered as it is typed, and never kept. */
export function WhatIf({ unitId }: { unitId: string }) {
  const [text, setText] = useState('');
  const typed = useDeferredValue(text);
  const hours = /^\d{1,3}(\.\d)?$/.test(typed) ? Number(typed) : 0;
  const isAsked = hours >= 0.1 && hours <= mostHours;
  const answer = useQuery({
    ...nextDueQuery(unitId, isAsked ? hours : undefined),
    enabled: isAsked,
    placeholderData: keepPreviousData,
  });
  return (
    <div className="stack">
      <DecimalField
        label="What if it flies so many hours a month"
        hint="Only supposed: nothing is kept."
        value={text}
        onChange={setText}
        decimals={1}
      />
      <div aria-live="polite">
        {typed !== '' && !isAsked ? <p className="small">Between 0.1 and {mostHours} hours a month.</p> : null}
        {answer.error && isAsked ? <Refusal problem={answer.error} /> : null}
        {isAsked && answer.data ? <Supposed hours={hours} due={answer.data} /> : null}
      </div>
    </div>
  );
}

function Supposed({ hours, due }: { hours: number; due: NextDue }) {
  return (
    <p>
      At <Hours tenths={Math.round(hours * 10)} /> a month:{' '}
      {due.dueOn === 'unknown' ? (
        'still not known'
      ) : (
        <>
          due <DateText date={due.dueOn} />
        </>
      )}
      {due.governedBy === 'none' ? '' : `, by ${due.governedBy}`}
      {due.earliest === 'unknown' || due.latest === 'unknown' || due.earliest === due.latest ? null : (
        <>
          {' '}
          (likely between <DateText date={due.earliest} /> and <DateText date={due.latest} />)
        </>
      )}
      .
    </p>
  );
}
