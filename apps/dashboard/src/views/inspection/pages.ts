import type { Role } from '@hubwright/contracts/roles';
import { lazyRouteComponent } from '@tanstack/react-router';
import type { View } from '../registry.ts';

const everyone: readonly Role[] = ['front-desk', 'parts-room', 'technician', 'inspector', 'manager', 'administrator'];

/** The inspectors' pages; each is loaded when it is first opened. */
export const inspectionPages: readonly View[] = [
  {
    path: '/inspection',
    area: 'inspection',
    title: 'Inspection',
    question: 'What waits for my stamp, and what must I not let pass?',
    roles: ['inspector', 'technician', 'manager', 'administrator'],
    inNavigation: true,
    ownHead: true,
    component: lazyRouteComponent(() => import('./InspectionPage.tsx'), 'InspectionPage'),
  },
  {
    path: '/findings',
    area: 'inspection',
    title: 'Findings',
    question: 'What was found, and what was decided?',
    roles: everyone,
    inNavigation: true,
    component: lazyRouteComponent(() => import('./FindingsPage.tsx'), 'FindingsPage'),
  },
  {
    path: '/release/$workOrderId',
    area: 'inspection',
    title: 'Release',
    question: 'What is still open, and may it be approved?',
    roles: everyone,
    inNavigation: false,
    ownHead: true,
    component: lazyRouteComponent(() => import('./ReleasePage.tsx'), 'ReleasePage'),
  },
  {
    path: '/calibration-reviews',
    area: 'inspection',
    title: 'Readings in doubt',
    question: 'What was signed with a gauge that was wrong, and what does it mean?',
    roles: everyone,
    inNavigation: true,
    component: lazyRouteComponent(() => import('./ReviewsPage.tsx'), 'ReviewsPage'),
  },
];
