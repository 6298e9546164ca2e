import { lazyRouteComponent } from '@tanstack/react-router';
import type { View } from '../registry.ts';

/** The manager's pages, each loaded when it is first opened. */
export const managerPages: readonly View[] = [
  {
    path: '/manager',
    area: 'manager',
    title: 'Manager',
    question: 'Are we keeping our promises, and what limits us?',
    roles: ['manager', 'administrator'],
    inNavigation: true,
    ownHead: true,
    component: lazyRouteComponent(() => import('./ManagerPage.tsx'), 'ManagerPage'),
  },
  {
    path: '/manager/who-is-here',
    area: 'manager',
    title: 'Who is here',
    question: 'Who is here this week, and who is away?',
    roles: ['manager', 'administrator'],
    inNavigation: true,
    component: lazyRouteComponent(() => import('./PresencePage.tsx'), 'PresencePage'),
  },
  {
    path: '/times',
    area: 'manager',
    title: 'Times',
    question: 'Where do the hours go, and do the standard times hold?',
    roles: ['manager', 'inspector'],
    inNavigation: true,
    component: lazyRouteComponent(() => import('./TimesPage.tsx'), 'TimesPage'),
  },
];
