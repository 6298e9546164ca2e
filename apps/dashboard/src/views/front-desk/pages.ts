import type { Role } from '@hubwright/contracts/roles';
import { lazyRouteComponent } from '@tanstack/react-router';
import type { View } from '../registry.ts';

const everyone: readonly Role[] = ['front-desk', 'parts-room', 'technician', 'inspector', 'manager', 'administrator'];
const desk: readonly Role[] = ['front-desk', 'manager'];
const about = { area: 'front-desk', roles: everyone, inNavigation: false, ownHead: true } as const;
const listed = { area: 'front-desk', roles: everyone, inNavigation: true } as const;

/** The front desk's pages; each is loaded when it is first opened. */
export const frontDeskPages: readonly View[] = [
  {
    ...listed,
    path: '/desk',
    title: 'Front desk',
    question: 'Who is waiting for us, and whom do we owe an answer?',
    ownHead: true,
    component: lazyRouteComponent(() => import('./DeskPage.tsx'), 'DeskPage'),
  },
  {
    ...listed,
    path: '/desk/book-in',
    title: 'Book in',
    question: 'What came in, whose is it, and what is known of it?',
    roles: desk,
    component: lazyRouteComponent(() => import('./BookInPage.tsx'), 'BookInPage'),
  },
  {
    ...listed,
    path: '/work-orders',
    title: 'Work orders',
    question: 'Where is each unit, and who acts next?',
    component: lazyRouteComponent(() => import('./WorkOrdersPage.tsx'), 'WorkOrdersPage'),
  },
  {
    ...about,
    path: '/work-orders/$workOrderId',
    title: 'Work order',
    question: 'Where is it, and what is next?',
    component: lazyRouteComponent(() => import('./WorkOrderPage.tsx'), 'WorkOrderPage'),
  },
  {
    ...listed,
    path: '/customers',
    title: 'Customers',
    question: 'Whom do we work for, and which parts do they accept?',
    component: lazyRouteComponent(() => import('./CustomersPage.tsx'), 'CustomersPage'),
  },
  {
    ...about,
    path: '/customers/$customerId',
    title: 'Customer',
    question: 'What do they fly, and what have we of theirs?',
    component: lazyRouteComponent(() => import('./CustomerPage.tsx'), 'CustomerPage'),
  },
  {
    ...about,
    path: '/customers/$customerId/tables',
    title: 'Tables of a customer',
    question: 'What does their table say, and what of it is not on record?',
    component: lazyRouteComponent(() => import('./FleetTablesPage.tsx'), 'FleetTablesPage'),
  },
  {
    ...about,
    path: '/customers/$customerId/readings',
    title: 'Readings of a customer',
    question: 'What do their meters show now?',
    component: lazyRouteComponent(() => import('./ReadingsPage.tsx'), 'ReadingsPage'),
  },
  {
    ...about,
    path: '/units/$unitId',
    title: 'Unit',
    question: 'What is it made of, and where has it been?',
    component: lazyRouteComponent(() => import('./UnitPage.tsx'), 'UnitPage'),
  },
  {
    ...listed,
    path: '/coming-due',
    title: 'Coming due',
    question: 'Which units come due, and whom do we tell?',
    component: lazyRouteComponent(() => import('./ComingDuePage.tsx'), 'ComingDuePage'),
  },
  {
    ...listed,
    path: '/reminders',
    title: 'Reminders',
    question: 'Whom do we write to today, and what became of each letter?',
    roles: desk,
    component: lazyRouteComponent(() => import('./RemindersPage.tsx'), 'RemindersPage'),
  },
];
