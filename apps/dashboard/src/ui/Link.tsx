import { type LinkComponentProps, Link as RouterLink, useNavigate } from '@tanstack/react-router';
import type { ReactNode } from 'react';

export interface LinkProps {
  /** An address of the dashboard, search included: `/find?code=LOT-00012`. */
  href: string;
  children: ReactNode;
  className?: string;
  tabIndex?: number;
}

/** A link inside the dashboard: no page load, and its data is fetched while the pointer or the focus rests on it. */
export function Link({ href, ...props }: LinkProps) {
  const [path, query] = href.split('?');
  const search = Object.fromEntries(new URLSearchParams(query));
  return <RouterLink {...(props as LinkComponentProps)} to={path as string} search={search as never} />;
}

/** Goes to an address of the dashboard. */
export function useNavigateTo(): (href: string, options?: { replace?: boolean }) => void {
  const navigate = useNavigate();
  return (href, options) => void navigate({ href, ...options });
}
