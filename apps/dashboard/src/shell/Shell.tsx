import { bakeOperations } from '@hubwright/contracts/work-orders/bake-operations';
import { clockOperations } from '@hubwright/contracts/work-orders/clock-operations';
import { useQueryClient } from '@tanstack/react-query';
import { Outlet, useLocation } from '@tanstack/react-router';
import { lazy, Suspense, useEffect, useMemo, useRef, useState } from 'react';
import { live } from '../api/live.ts';
import { useMay, useMe } from '../api/me.ts';
import { RunningClock } from '../features/clock/RunningClock.tsx';
import { useClockScan } from '../features/clock/use-clock-scan.ts';
import { asBadge } from '../features/people/badge-code.ts';
import { ShopProvider } from '../format/shop-context.tsx';
import { ScanProvider } from '../scan/scan-context.tsx';
import { Link, useNavigateTo } from '../ui/Link.tsx';
import { Toasts } from '../ui/toasts.tsx';
import { AreaNavigation } from './AreaNavigation.tsx';
import { BadgeScanned } from './BadgeScanned.tsx';
import { HelpDialog } from './HelpDialog.tsx';
import { Hints } from './Hints.tsx';
import { LiveMark } from './LiveMark.tsx';
import { LockScreen } from './LockScreen.tsx';
import { PersonMenu } from './PersonMenu.tsx';
import { SearchField } from './SearchField.tsx';
import { SignInAgain } from './SignInAgain.tsx';
import { useShortcuts } from './shortcuts.ts';

/** It reckons oven charts, which the first view of others need not wait for. */
const BakeAlarm = lazy(() =>
  import('../features/travelers/BakeAlarm.tsx').then((file) => ({ default: file.BakeAlarm })),
);

/** After going to another page the heading takes the focus, so that it is read and Tab starts from there. */
function useHeadingFocus() {
  const { pathname } = useLocation();
  const isFirst = useRef(true);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the path is what it waits for
  useEffect(() => {
    if (!isFirst.current) document.querySelector<HTMLElement>('main h1')?.focus({ preventScroll: true });
    isFirst.current = false;
  }, [pathname]);
}

/** What surrounds every page of a signed-in person. */
export function Shell() {
  const { shop, locked } = useMe();
  const [badge, setBadge] = useState<string>();
  const queries = useQueryClient();
  const takeClock = useClockScan();
  const mayBake = useMay(bakeOperations.beginBake);
  const mayClock = useMay(clockOperations.startClock);
  const navigate = useNavigateTo();
  const search = useRef<HTMLInputElement>(null);
  const [isHelpOpen, setHelpOpen] = useState(false);
  const shortcuts = useMemo(() => ({ '/': () => search.current?.focus(), '?': () => setHelpOpen(true) }), []);
  useShortcuts(shortcuts);
  useHeadingFocus();
  useEffect(() => (locked ? undefined : live.start(queries)), [queries, locked]);
  const takeBadge = (code: string) => {
    const scanned = asBadge(code);
    if (scanned) setBadge(scanned);
    return scanned !== undefined || takeClock(code);
  };
  return (
    <ShopProvider value={shop}>
      <ScanProvider first={takeBadge} fallback={(code) => navigate(`/find?code=${encodeURIComponent(code)}`)}>
        <a className="skip-link" href="#main">
          Skip to the page
        </a>
        <header className="shell-head">
          <div className="shell-top">
            <Link href="/" className="shop-name">
              {shop.name}
            </Link>
            <SearchField inputRef={search} />
            <Suspense>{mayBake ? <BakeAlarm /> : null}</Suspense>
            {mayClock ? <RunningClock /> : null}
            <LiveMark />
            <PersonMenu onHelp={() => setHelpOpen(true)} />
          </div>
          <AreaNavigation />
        </header>
        <main id="main" tabIndex={-1}>
          <Hints />
          <Outlet />
        </main>
        <HelpDialog isOpen={isHelpOpen} onClose={() => setHelpOpen(false)} />
        <BadgeScanned badge={locked ? undefined : badge} onClose={() => setBadge(undefined)} />
        <LockScreen />
        <SignInAgain />
        <Toasts />
      </ScanProvider>
    </ShopProvider>
  );
}
