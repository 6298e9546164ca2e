import { useState } from 'react';
import { dateIn } from '../../format/dates.ts';
import { levelWords, processWords } from '../../format/process-words.ts';
import { useShop } from '../../format/shop-context.tsx';
import { DateText, DueText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { type State, StateMark } from '../../ui/StateMark.tsx';
import { type Authorisation, endsSoon, isInForce } from './list-people.ts';
import { RevokeForm } from './revoke-authorisation.tsx';

function standing(each: Authorisation, today: string): { state: State; word: string } {
  if (each.revokedOn !== null && each.revokedOn <= today) return { state: 'stop', word: 'ended' };
  if (each.validFrom > today) return { state: 'waiting', word: 'not yet' };
  if (!isInForce(each, today)) return { state: 'stop', word: 'expired' };
  return endsSoon(each, today) ? { state: 'waiting', word: 'ends soon' } : { state: 'passed', word: 'in force' };
}

function Dates({ each }: { each: Authorisation }) {
  if (each.revokedOn !== null) {
    return (
      <>
        <DateText date={each.validFrom} /> to <DateText date={each.revokedOn} />
      </>
    );
  }
  return (
    <>
      from <DateText date={each.validFrom} />
      {each.expiresOn === null ? ', no end' : ', ends '}
      {each.expiresOn === null ? null : <DueText date={each.expiresOn} />}
    </>
  );
}

/** What a person may sign, in force first; the past stays in sight because records point at it. */
export function AuthorisationList({
  authorisations,
  mayRevoke,
}: {
  authorisations: readonly Authorisation[];
  mayRevoke: boolean;
}) {
  const { zone } = useShop();
  const today = dateIn(zone, new Date());
  const [ending, setEnding] = useState<Authorisation>();
  const close = () => setEnding(undefined);
  if (authorisations.length === 0) {
    return (
      <EmptyState title="Not authorised for anything yet">
        Without an authorisation a person can look, but not sign.
      </EmptyState>
    );
  }
  const ordered = authorisations.toSorted((a, b) => Number(isInForce(b, today)) - Number(isInForce(a, today)));
  return (
    <>
      <ul className="lines">
        {ordered.map((each) => (
          <li key={each.id}>
            <div>
              <strong>{processWords[each.process]}</strong> <span className="soft">{levelWords[each.level]}</span>
              <p className="small">
                <Dates each={each} />
              </p>
            </div>
            <StateMark {...standing(each, today)} />
            {mayRevoke && isInForce(each, today) ? (
              <Button
                weight="quiet"
                aria-label={`End ${processWords[each.process]}, ${levelWords[each.level]}`}
                onPress={() => setEnding(each)}
              >
                End
              </Button>
            ) : null}
          </li>
        ))}
      </ul>
      <Dialog
        title={`End ${ending ? processWords[ending.process].toLowerCase() : ''}`}
        isOpen={ending !== undefined}
        onClose={close}
      >
        {ending ? <RevokeForm authorisation={ending} onDone={close} onCancel={close} /> : null}
      </Dialog>
    </>
  );
}
