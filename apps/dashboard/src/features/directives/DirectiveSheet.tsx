import { directiveOperations } from '@hubwright/contracts/directives/operations';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { DateText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { calledOf, type DirectiveRow, directiveKindTitles, firstWords, lineWords, oftenWords } from './directives.ts';
import { WithdrawDirective } from './withdraw-directive.tsx';

/** One directive opened: what it asks, of what, how often, and what it says of others. */
export function DirectiveSheet({ directive, signer }: { directive: DirectiveRow; signer: Signer }) {
  const mayWithdraw = useMay(directiveOperations.withdrawDirective) && directive.withdrawnOn === null;
  const [isWithdrawing, setWithdrawing] = useState(false);
  const { deferDays, terminatingAction, supersedes, supersededBy, credits, ends } = directive;
  const facts = [
    ['How often', oftenWords(directive)],
    ['First within', firstWords(directive)],
    ['What ends it', terminatingAction ?? 'nothing'],
    ['May be put off', deferDays === null ? 'no' : `at most ${deferDays} days`],
    ['Supersedes', supersedes.join(', ')],
    ['Superseded by', supersededBy.join(', ')],
    ['Work by these counts', credits.join(', ')],
    ['Ends for good', ends.join(', ')],
  ].filter(([, said]) => said !== '');
  return (
    <section className="sheet stack" aria-label={calledOf(directive)}>
      <div>
        <h2>
          <span className="code">{calledOf(directive)}</span> {directive.title}
        </h2>
        <p className="soft">
          {directiveKindTitles[directive.kind]}, {directive.issuer}, {directive.binding}; issued{' '}
          <DateText date={directive.issuedOn} />, in force from <DateText date={directive.effectiveOn} />; put on record
          by {directive.issuedBy}
        </p>
        {directive.withdrawnOn ? (
          <p>
            Withdrawn <DateText date={directive.withdrawnOn} />: {directive.withdrawnBecause}
          </p>
        ) : null}
      </div>
      <p>{directive.action}</p>
      <h3>Applies to</h3>
      <ul className="lines">
        {directive.lines.map((line) => (
          <li key={lineWords(line)}>{lineWords(line)}</li>
        ))}
      </ul>
      <ul className="lines">
        {facts.map(([what, said]) => (
          <li key={what}>
            <span className="soft">{what}</span>
            <span>{said}</span>
          </li>
        ))}
      </ul>
      {mayWithdraw ? (
        <div className="row">
          <Button weight="quiet" onPress={() => setWithdrawing(true)}>
            Withdraw
          </Button>
        </div>
      ) : null}
      {isWithdrawing ? (
        <WithdrawDirective directive={directive} signer={signer} onClose={() => setWithdrawing(false)} />
      ) : null}
    </section>
  );
}
