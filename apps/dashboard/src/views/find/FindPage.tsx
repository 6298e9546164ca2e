import { queryOptions, useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { z } from 'zod';
import { useMe } from '../../api/me.ts';
import type { ProblemError } from '../../api/problem.ts';
import { useAddress } from '../../shell/use-address.ts';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link, useNavigateTo } from '../../ui/Link.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { finders, type Hit } from './finders.ts';

const address = z.object({ code: z.string().catch('') });

function useHits(code: string) {
  const queries = useQueryClient();
  const { roles } = useMe();
  return useQuery(
    queryOptions<readonly Hit[], ProblemError>({
      queryKey: ['find', code, roles],
      queryFn: async () => {
        const allowed = finders.filter((finder) => finder.mayUse(roles));
        const found = await Promise.all(allowed.map((finder) => finder.find(queries, code)));
        return found.flat();
      },
      enabled: code !== '',
      staleTime: 0,
    }),
  );
}

/** What a search or a scan named. One exact hit is opened at once, and so is the only one there is. */
export function FindPage() {
  const [{ code }] = useAddress(address);
  const hits = useHits(code);
  const navigate = useNavigateTo();
  const exact = hits.data?.filter((hit) => hit.isExact) ?? [];
  const single = exact.length === 1 ? exact : (hits.data ?? []);
  const only = single.length === 1 && !hits.isFetching ? single[0] : undefined;
  useEffect(() => {
    if (only) navigate(only.href, { replace: true });
  }, [only, navigate]);
  return (
    <>
      <ViewHead title="Find" question={code === '' ? 'What are you looking for?' : `What is ${code}?`} />
      <div className="sheet">
        {hits.isLoading ? <Skeleton lines={3} label="Searching" /> : null}
        {hits.error ? <Refusal problem={hits.error} /> : null}
        {hits.data?.length === 0 || code === '' ? (
          <EmptyState title={code === '' ? 'Type or scan something' : 'Nothing here goes by that'}>
            Try the serial, the work order, the customer or the part number, or only the beginning of it.
          </EmptyState>
        ) : null}
        <ul className="lines">
          {hits.data?.map((hit) => (
            <li key={hit.kind + hit.id}>
              <div>
                <Link href={hit.href}>{hit.name}</Link>
                <p className="small soft">{hit.detail}</p>
              </div>
              <span className="soft small">{hit.kind}</span>
            </li>
          ))}
        </ul>
      </div>
    </>
  );
}
