import { useQueryErrorResetBoundary } from '@tanstack/react-query';
import { type ErrorComponentProps, useRouter } from '@tanstack/react-router';
import { ProblemError } from '../api/problem.ts';
import { Button, LinkButton } from '../ui/Button.tsx';

/** What stands in place of a page that could not be shown: why, what to do next, and a way to try again. */
export function RouteProblem({ error, reset }: ErrorComponentProps) {
  const router = useRouter();
  const boundary = useQueryErrorResetBoundary();
  const facts = error instanceof ProblemError ? error.facts : undefined;
  const retry = () => {
    boundary.reset();
    reset();
    void router.invalidate();
  };
  return (
    <div className="sheet stack lone" role="alert">
      <title>Not shown</title>
      <h1 tabIndex={-1}>{facts?.title ?? 'This page made a mistake'}</h1>
      {facts ? <p>{facts.detail}</p> : <p className="soft">{error instanceof Error ? error.message : String(error)}</p>}
      <p>
        <span className="soft">What to do next: </span>
        {facts?.next ?? 'Try again; if it stays, tell whoever looks after this server what you were doing.'}
      </p>
      <div className="row">
        <Button weight="next" onPress={retry}>
          Try again
        </Button>
        <LinkButton href="/" weight="quiet">
          Go to your own view
        </LinkButton>
      </div>
    </div>
  );
}

export function NotFound() {
  return (
    <div className="sheet stack lone">
      <title>No such page</title>
      <h1 tabIndex={-1}>There is no page at this address</h1>
      <p>Search by serial, work order, customer or part in the box above, or go to your own view.</p>
      <div className="row">
        <LinkButton href="/" weight="next">
          Go to your own view
        </LinkButton>
      </div>
    </div>
  );
}
