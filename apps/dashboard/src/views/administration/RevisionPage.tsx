import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { z } from 'zod';
import { useMay, useMe } from '../../api/me.ts';
import { CurrencyMark } from '../../features/manuals/CurrencyMark.tsx';
import { CheckCurrency } from '../../features/manuals/check-currency.tsx';
import { KitListTable } from '../../features/manuals/KitListTable.tsx';
import { LifeLimitTable } from '../../features/manuals/LifeLimitTable.tsx';
import { modelQuery, type Revision, type RevisionModel, revisionQuery } from '../../features/manuals/manuals.ts';
import { RouteSheets } from '../../features/manuals/RouteSheets.tsx';
import { ServiceLimitList } from '../../features/manuals/ServiceLimitList.tsx';
import { TboList } from '../../features/manuals/TboList.tsx';
import { DateText } from '../../format/values.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { InlineSelect } from '../../ui/InlineSelect.tsx';
import { Link } from '../../ui/Link.tsx';
import { Tabs } from '../../ui/Tabs.tsx';

const sheets = ['kit-list', 'routes', 'times', 'life-limits', 'storage-seals'] as const;
const address = z.object({ model: z.string().catch(''), sheet: z.enum(sheets).catch('kit-list') });

/** Whether it is the current one, and who asked the maker. */
function Standing({ revision }: { revision: Revision }) {
  const me = useMe();
  const mayCheck = useMay(manualOperations.checkCurrency);
  const [isChecking, setChecking] = useState(false);
  return (
    <div className="row">
      <Link href={`/manuals?manual=${revision.manual.id}`}>{revision.manual.number}</Link>
      <span className="soft">
        issued <DateText date={revision.issuedOn} />
      </span>
      <CurrencyMark revision={revision} />
      {revision.currencyCheckedBy ? <span className="soft">by {revision.currencyCheckedBy}</span> : null}
      {mayCheck && revision.state === 'current' ? (
        <Button weight={revision.currencyCheckedOn ? 'plain' : 'next'} onPress={() => setChecking(true)}>
          Check its currency
        </Button>
      ) : null}
      {isChecking ? <CheckCurrency revision={revision} signer={me} onClose={() => setChecking(false)} /> : null}
    </div>
  );
}

function useApplicationNames(modelId: string): ReadonlyMap<string, string> {
  const model = useQuery(modelQuery(modelId)).data;
  return new Map(model?.applications.map((each) => [each.id, `${each.airframe}, ${each.engine}, ${each.position}`]));
}

/** What the revision says about one model: parts, routes with limits, times. */
function Content({ model }: { model: RevisionModel }) {
  const [{ sheet }, setAddress] = useAddress(address);
  const applications = useApplicationNames(model.modelId);
  return (
    <Tabs
      label={`What it says about ${model.designation}`}
      selected={sheet}
      onSelect={(id) => setAddress({ sheet: id as (typeof sheets)[number] })}
      sheets={[
        {
          id: 'kit-list',
          title: `Kit list (${model.kitList.length})`,
          content: <KitListTable designation={model.designation} lines={model.kitList} />,
        },
        {
          id: 'routes',
          title: `Routes and limits (${model.routes.length})`,
          content: <RouteSheets routes={model.routes} />,
        },
        {
          id: 'times',
          title: 'Time between overhauls',
          content: <TboList rules={model.tboRules} applications={applications} />,
        },
        {
          id: 'life-limits',
          title: `Life limits (${model.lifeLimits.length})`,
          content: <LifeLimitTable designation={model.designation} limits={model.lifeLimits} />,
        },
        {
          id: 'storage-seals',
          title: 'Storage and seals',
          content: <ServiceLimitList limits={model.serviceLimits} />,
        },
      ]}
    />
  );
}

export function RevisionPage() {
  const { revisionId = '' } = useParams({ strict: false }) as { revisionId?: string };
  const revision = useSuspenseQuery(revisionQuery(revisionId)).data;
  const [{ model: chosen }, setAddress] = useAddress(address);
  const model = revision.models.find((each) => each.modelId === chosen) ?? revision.models[0];
  return (
    <>
      <ViewHead
        title={`${revision.manual.number} revision ${revision.revision}`}
        question={`${revision.manual.title}: what does revision ${revision.revision} ask for?`}
      >
        <Standing revision={revision} />
      </ViewHead>
      <div className="sheet stack">
        {revision.models.length > 1 && model ? (
          <InlineSelect
            label="Model"
            value={model.modelId}
            onChange={(id) => setAddress({ model: id })}
            choices={revision.models.map((each) => ({ value: each.modelId, text: each.designation }))}
            isRequired
          />
        ) : null}
        {model ? (
          <Content key={model.modelId} model={model} />
        ) : (
          <EmptyState title="This revision says nothing about any model yet" />
        )}
      </div>
    </>
  );
}
