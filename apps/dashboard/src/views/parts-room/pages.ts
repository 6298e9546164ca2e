import type { Role } from '@hubwright/contracts/roles';
import { lazyRouteComponent } from '@tanstack/react-router';
import type { View } from '../registry.ts';

/** Anyone in the shop may look; what may be done there is decided per operation. */
const everyone: readonly Role[] = ['front-desk', 'parts-room', 'technician', 'inspector', 'manager', 'administrator'];
const page = { area: 'parts-room', roles: everyone, inNavigation: true } as const;
const about = { ...page, inNavigation: false, ownHead: true } as const;
/** What one comes here to do; the pages of each stand together in the navigation. */
const pull = { group: 'Pull' } as const;
const buy = { group: 'Buy' } as const;
const receive = { group: 'Receive' } as const;
const keep = { group: 'Keep' } as const;
const books = { group: 'Books' } as const;

/** The pages of the parts room; each is loaded when it is first opened. */
export const partsRoomPages: readonly View[] = [
  {
    ...page,
    ...pull,
    path: '/kits',
    title: 'Kits',
    question: 'What can I pull now, and what stops a builder this week?',
    ownHead: true,
    component: lazyRouteComponent(() => import('./KitBoardPage.tsx'), 'KitBoardPage'),
  },
  {
    ...page,
    ...pull,
    path: '/kits-to-fill',
    title: 'Kits I can fill',
    question: 'Which kits can I fill now, and which first?',
    component: lazyRouteComponent(() => import('./KitsToFillPage.tsx'), 'KitsToFillPage'),
  },
  {
    ...about,
    ...pull,
    path: '/kits/$kitId',
    title: 'Kit',
    question: 'What do I pull, and from which bin?',
    component: lazyRouteComponent(() => import('./KitPage.tsx'), 'KitPage'),
  },
  {
    ...page,
    ...pull,
    path: '/shortages',
    title: 'Shortages',
    question: 'What must I order, and by when?',
    component: lazyRouteComponent(() => import('./ShortagesPage.tsx'), 'ShortagesPage'),
  },
  {
    ...page,
    ...buy,
    path: '/buying',
    title: 'Buying',
    question: 'What must we buy, by when, and why that many?',
    component: lazyRouteComponent(() => import('./BuyingPage.tsx'), 'BuyingPage'),
  },
  {
    ...page,
    ...receive,
    path: '/receiving',
    title: 'Receiving',
    question: 'What lands today, and what waits to be judged?',
    component: lazyRouteComponent(() => import('./ReceivingPage.tsx'), 'ReceivingPage'),
  },
  {
    ...page,
    ...receive,
    path: '/receiving-checklists',
    title: 'Checklists',
    question: 'What is looked at when parts of each class come in?',
    component: lazyRouteComponent(() => import('./ChecklistsPage.tsx'), 'ChecklistsPage'),
  },
  {
    ...page,
    ...buy,
    path: '/orders',
    title: 'Orders',
    question: 'What have we ordered, and what is late?',
    component: lazyRouteComponent(() => import('./OrdersPage.tsx'), 'OrdersPage'),
  },
  {
    ...about,
    ...buy,
    path: '/orders/$orderId',
    title: 'Order',
    question: 'What has come of this order?',
    component: lazyRouteComponent(() => import('./OrderPage.tsx'), 'OrderPage'),
  },
  {
    ...page,
    ...buy,
    path: '/to-chase',
    title: 'To chase',
    question: 'Whom do we ring today, so that no kit waits?',
    component: lazyRouteComponent(() => import('./ChasePage.tsx'), 'ChasePage'),
  },
  {
    ...page,
    ...buy,
    path: '/suppliers',
    title: 'Suppliers',
    question: 'Whom may we buy from, and until when?',
    component: lazyRouteComponent(() => import('./SuppliersPage.tsx'), 'SuppliersPage'),
  },
  {
    ...about,
    ...buy,
    path: '/suppliers/$supplierId',
    title: 'Supplier',
    question: 'May we buy here, and how does it deliver?',
    component: lazyRouteComponent(() => import('./SupplierPage.tsx'), 'SupplierPage'),
  },
  {
    ...page,
    ...receive,
    path: '/outside-work',
    title: 'Outside work',
    question: 'What is at a vendor, what is late, and what came back?',
    component: lazyRouteComponent(() => import('./OutsideWorkPage.tsx'), 'OutsideWorkPage'),
  },
  {
    ...page,
    ...keep,
    path: '/stock',
    title: 'Stock',
    question: 'What lies where, and may it be used?',
    component: lazyRouteComponent(() => import('./StockPage.tsx'), 'StockPage'),
  },
  {
    ...page,
    ...keep,
    path: '/places',
    title: 'Places',
    question: 'What does each place hold, and which stand empty?',
    component: lazyRouteComponent(() => import('./PlacesPage.tsx'), 'PlacesPage'),
  },
  {
    ...page,
    ...keep,
    path: '/counts',
    title: 'Counts',
    question: 'What must be counted today, and which difference waits for a second look?',
    component: lazyRouteComponent(() => import('./CountsPage.tsx'), 'CountsPage'),
  },
  {
    ...about,
    ...keep,
    path: '/lots/$lotId',
    title: 'Lot',
    question: 'Where is this lot, and may it be used?',
    component: lazyRouteComponent(() => import('./LotPage.tsx'), 'LotPage'),
  },
  {
    ...page,
    ...keep,
    path: '/parts',
    title: 'Part numbers',
    question: 'How much is there of each part, and what may stand in for it?',
    component: lazyRouteComponent(() => import('./PartsPage.tsx'), 'PartsPage'),
  },
  {
    ...about,
    ...keep,
    path: '/parts/$partId',
    title: 'Part number',
    question: 'How much is there of this part over the coming weeks?',
    component: lazyRouteComponent(() => import('./PartPage.tsx'), 'PartPage'),
  },
  {
    ...about,
    path: '/parts/$partId/expected',
    title: 'Expected',
    question: 'How much of this part will units ask for that are not in work yet?',
    component: lazyRouteComponent(() => import('./ExpectedPage.tsx'), 'ExpectedPage'),
  },
  {
    ...page,
    ...keep,
    path: '/expiring',
    title: 'Expiring',
    question: 'What must be used first, and which kits count on it?',
    component: lazyRouteComponent(() => import('./ExpiringPage.tsx'), 'ExpiringPage'),
  },
  {
    ...page,
    ...books,
    path: '/value',
    title: 'Value',
    question: 'What is our stock worth, and what lies idle?',
    roles: ['parts-room', 'manager', 'administrator'],
    component: lazyRouteComponent(() => import('./ValuePage.tsx'), 'ValuePage'),
  },
  {
    ...about,
    ...books,
    path: '/movements',
    title: 'Movements',
    question: 'Which movements are behind the number?',
    component: lazyRouteComponent(() => import('./MovementsPage.tsx'), 'MovementsPage'),
  },
  {
    ...page,
    ...books,
    path: '/tables',
    title: 'Tables',
    question: 'Which tables come in, what would they change, and what goes out?',
    roles: ['parts-room', 'inspector', 'manager', 'administrator'],
    component: lazyRouteComponent(() => import('./TablesPage.tsx'), 'TablesPage'),
  },
];
