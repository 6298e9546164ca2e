import type { Role } from '@hubwright/contracts/roles';
import { lazyRouteComponent } from '@tanstack/react-router';
import type { View } from '../registry.ts';

const everyone: readonly Role[] = ['front-desk', 'parts-room', 'technician', 'inspector', 'manager', 'administrator'];
const about = { area: 'build-bench', roles: everyone, inNavigation: false, ownHead: true } as const;

/** The benches' pages; each is loaded when it is first opened. */
export const buildBenchPages: readonly View[] = [
  {
    path: '/bench',
    area: 'build-bench',
    title: 'Build bench',
    question: 'What is mine, and is my tray empty?',
    roles: everyone,
    inNavigation: true,
    ownHead: true,
    component: lazyRouteComponent(() => import('./BenchPage.tsx'), 'BenchPage'),
  },
  {
    path: '/peening',
    area: 'build-bench',
    title: 'Peening',
    question: 'Which lot needs its strips, and what holds one?',
    roles: everyone,
    inNavigation: true,
    component: lazyRouteComponent(() => import('./PeeningPage.tsx'), 'PeeningPage'),
  },
  {
    path: '/tanks-and-checks',
    area: 'build-bench',
    title: 'Tanks and checks',
    question: 'Is what I work in and test with good today?',
    roles: everyone,
    inNavigation: true,
    component: lazyRouteComponent(() => import('./TanksPage.tsx'), 'TanksPage'),
  },
  {
    path: '/on-aircraft',
    area: 'build-bench',
    title: 'On the aircraft',
    question: 'Which installed propeller is balanced next, and where?',
    roles: everyone,
    inNavigation: true,
    component: lazyRouteComponent(() => import('./OnAircraftPage.tsx'), 'OnAircraftPage'),
  },
  {
    ...about,
    path: '/on-aircraft/$fieldBalanceId',
    title: 'Balance on the aircraft',
    question: 'What does the next run need?',
    component: lazyRouteComponent(() => import('./FieldBalancePage.tsx'), 'FieldBalancePage'),
  },
  {
    path: '/governor-bench',
    area: 'build-bench',
    title: 'Governors',
    question: 'Which governor is next on the bench, and by which program?',
    roles: everyone,
    inNavigation: true,
    component: lazyRouteComponent(() => import('./GovernorBenchPage.tsx'), 'GovernorBenchPage'),
  },
  {
    ...about,
    path: '/governor-runs/$runId',
    title: 'Governor run',
    question: 'Which point is next?',
    component: lazyRouteComponent(() => import('./GovernorRunPage.tsx'), 'GovernorRunPage'),
  },
  {
    ...about,
    path: '/travelers/$travelerId',
    title: 'Traveler',
    question: 'What is the next step?',
    component: lazyRouteComponent(() => import('./TravelerPage.tsx'), 'TravelerPage'),
  },
  {
    ...about,
    path: '/build/$workOrderId',
    title: 'Build',
    question: 'What goes where, and is anything left?',
    component: lazyRouteComponent(() => import('./BuildPage.tsx'), 'BuildPage'),
  },
];
