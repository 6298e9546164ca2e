import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { trainingOperations } from '@hubwright/contracts/people/training-operations';
import { workingTimeOperations } from '@hubwright/contracts/people/working-time-operations';
import { recordOperations } from '@hubwright/contracts/records/operations';
import type { Role } from '@hubwright/contracts/roles';
import { lazyRouteComponent } from '@tanstack/react-router';
import type { View } from '../registry.ts';

const everyone: readonly Role[] = ['front-desk', 'parts-room', 'technician', 'inspector', 'manager', 'administrator'];
const listed = { area: 'administration', roles: everyone, inNavigation: true } as const;

/** What the shop keeps to work by; each page is loaded when it is first opened. */
export const administrationPages: readonly View[] = [
  {
    ...listed,
    path: '/administration/people',
    title: 'People',
    question: 'Who works here, and what may each of them do?',
    roles: peopleOperations.listPeople.access as readonly Role[],
    component: lazyRouteComponent(() => import('./PeoplePage.tsx'), 'PeoplePage'),
  },
  {
    ...listed,
    path: '/administration/training',
    title: 'Training',
    question: 'Whose authorisation or training ends soon, and who may inspect?',
    roles: trainingOperations.listTrainingItems.access as readonly Role[],
    component: lazyRouteComponent(() => import('./TrainingPage.tsx'), 'TrainingPage'),
  },
  {
    ...listed,
    path: '/administration/working-time',
    title: 'Working time',
    question: 'When does the shop work, and by which shifts?',
    roles: workingTimeOperations.workingWeek.access as readonly Role[],
    component: lazyRouteComponent(() => import('./WorkingTimePage.tsx'), 'WorkingTimePage'),
  },
  {
    ...listed,
    path: '/administration/shop',
    title: 'Shop profile',
    question: 'What does every record, quote and date of this shop go by?',
    component: lazyRouteComponent(() => import('./ShopProfilePage.tsx'), 'ShopProfilePage'),
  },
  {
    ...listed,
    path: '/administration/sessions',
    title: 'Sessions',
    question: 'Who is signed in, where, since when?',
    roles: accessOperations.listSessions.access as readonly Role[],
    component: lazyRouteComponent(() => import('./SessionsPage.tsx'), 'SessionsPage'),
  },
  {
    ...listed,
    path: '/account',
    title: 'Your account',
    question: 'Where am I signed in, and with what?',
    inNavigation: false,
    component: lazyRouteComponent(() => import('./AccountPage.tsx'), 'AccountPage'),
  },
  {
    ...listed,
    path: '/administration/records',
    title: 'Record keeping',
    question: 'Would the shop’s records survive today?',
    roles: recordOperations.recordKeeping.access as readonly Role[],
    component: lazyRouteComponent(() => import('./RecordKeepingPage.tsx'), 'RecordKeepingPage'),
  },
  {
    ...listed,
    path: '/manuals',
    title: 'Manuals',
    question: 'Which revision does work go by, and is it current?',
    component: lazyRouteComponent(() => import('./ManualsPage.tsx'), 'ManualsPage'),
  },
  {
    ...listed,
    path: '/manual-revisions/$revisionId',
    title: 'Revision',
    question: 'What does this revision ask for?',
    inNavigation: false,
    ownHead: true,
    component: lazyRouteComponent(() => import('./RevisionPage.tsx'), 'RevisionPage'),
  },
  {
    ...listed,
    path: '/documents',
    title: 'Documents',
    question: 'Which papers does work go by beside the manuals, and are they current?',
    component: lazyRouteComponent(() => import('./DocumentsPage.tsx'), 'DocumentsPage'),
  },
  {
    ...listed,
    path: '/directives',
    title: 'Directives',
    question: 'Which directives and bulletins are on record, and what do they ask?',
    component: lazyRouteComponent(() => import('./DirectivesPage.tsx'), 'DirectivesPage'),
  },
  {
    ...listed,
    path: '/models',
    title: 'Models',
    question: 'What do we overhaul, for which aircraft, at which flat rate?',
    component: lazyRouteComponent(() => import('./ModelsPage.tsx'), 'ModelsPage'),
  },
  {
    ...listed,
    path: '/instruments',
    title: 'Instruments',
    question: 'Which gauge may be used, and which is overdue?',
    component: lazyRouteComponent(() => import('./InstrumentsPage.tsx'), 'InstrumentsPage'),
  },
  {
    ...listed,
    path: '/instruments/$instrumentId',
    title: 'Instrument',
    question: 'Which gauge may be used, and which is overdue?',
    inNavigation: false,
    component: lazyRouteComponent(() => import('./InstrumentsPage.tsx'), 'InstrumentsPage'),
  },
];
