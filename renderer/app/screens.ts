import type { Icon } from '@tabler/icons-react';
import {
  IconAddressBook,
  IconArrowsSplit,
  IconCalculator,
  IconCalendarStats,
  IconCoins,
  IconCrane,
  IconDroplet,
  IconFileImport,
  IconHammer,
  IconHome,
  IconListCheck,
  IconListDetails,
  IconNotebook,
  IconPlugConnected,
  IconRulerMeasure,
  IconSettings,
  IconShoppingCart,
  IconTruckDelivery,
} from '@tabler/icons-react';
import type { ComponentType } from 'react';

/** One screen of the workbook. The list below is the only one: navigation, search and routing are drawn from it. */
export interface Screen {
  readonly id: string;
  /** The words in the navigation and in the window's title. */
  readonly title: string;
  /** The first part of the address; the start screen has `/`. */
  readonly path: string;
  readonly icon: Icon;
  /** `work` is for every day, `workbook` is what is set up once. */
  readonly group: 'work' | 'workbook';
  /** One of the five that keep their place in the bottom bar of a narrow window. */
  readonly main?: boolean;
  /** Each screen is a chunk of its own, fetched when it is opened. The module's default export is the screen. */
  readonly load: () => Promise<{ readonly default: ComponentType }>;
  /** What the search finds on this screen that isn't in the workbook; fetched with the first search. */
  readonly finder?: () => Promise<{ readonly hits: (text: string) => readonly ScreenHit[] }>;
}

/** A place on a screen that the search can open. */
export interface ScreenHit {
  readonly id: string;
  readonly label: string;
  readonly detail: string;
  readonly params: Readonly<Record<string, string>>;
}

/** Add a screen with one line here; a screen that doesn't exist yet isn't listed. */
export const screens: readonly Screen[] = [
  {
    id: 'start',
    title: 'Start',
    path: '/',
    icon: IconHome,
    group: 'work',
    main: true,
    load: () => import('../screens/start/start-screen.tsx'),
  },
  {
    id: 'parts',
    title: 'Parts',
    path: '/parts',
    icon: IconListDetails,
    group: 'work',
    main: true,
    load: () => import('../screens/parts/parts-screen.tsx'),
  },
  {
    id: 'money',
    title: 'Money',
    path: '/money',
    icon: IconCoins,
    group: 'work',
    load: () => import('../screens/money/index.tsx'),
  },
  {
    id: 'buying',
    title: 'Buying',
    path: '/buying',
    icon: IconShoppingCart,
    group: 'work',
    load: () => import('../screens/buying/screen.tsx'),
  },
  {
    id: 'plan',
    title: 'Plan',
    path: '/plan',
    icon: IconListCheck,
    group: 'work',
    main: true,
    load: () => import('../screens/plan/index.tsx'),
  },
  {
    id: 'forecast',
    title: 'Forecast',
    path: '/forecast',
    icon: IconCalendarStats,
    group: 'work',
    load: () => import('../screens/forecast/forecast-screen.tsx'),
  },
  {
    id: 'what-if',
    title: 'What if',
    path: '/what-if',
    icon: IconArrowsSplit,
    group: 'work',
    load: () => import('../screens/what-if/screen.tsx'),
  },
  {
    id: 'hoist-check',
    title: 'Hoist check',
    path: '/hoist-check',
    icon: IconCrane,
    group: 'work',
    main: true,
    load: () => import('../screens/hoist-check/screen.tsx'),
  },
  {
    id: 'checks',
    title: 'Checks',
    path: '/checks',
    icon: IconRulerMeasure,
    group: 'work',
    load: () => import('../screens/checks/screen.tsx'),
  },
  {
    id: 'fit',
    title: 'Fit',
    path: '/fit',
    icon: IconPlugConnected,
    group: 'work',
    load: () => import('../screens/fit/fit-screen.tsx'),
  },
  {
    id: 'plumbing',
    title: 'Plumbing',
    path: '/plumbing',
    icon: IconDroplet,
    group: 'work',
    load: () => import('../screens/plumbing/screen.tsx'),
  },
  {
    id: 'bench',
    title: 'Bench',
    path: '/bench',
    icon: IconHammer,
    group: 'work',
    load: () => import('../screens/bench/bench-screen.tsx'),
  },
  {
    id: 'lists',
    title: 'Lists',
    path: '/lists',
    icon: IconAddressBook,
    group: 'workbook',
    load: () => import('../screens/lists/lists-screen.tsx'),
  },
  {
    id: 'bring-in',
    title: 'Bring in',
    path: '/bring-in',
    icon: IconFileImport,
    group: 'workbook',
    load: () => import('../screens/bring-in/bring-in-screen.tsx'),
  },
  {
    id: 'orders',
    title: 'Orders',
    path: '/orders',
    icon: IconTruckDelivery,
    group: 'work',
    main: true,
    load: () => import('../screens/orders/orders-screen.tsx'),
  },
  {
    id: 'journal',
    title: 'Journal',
    path: '/journal',
    icon: IconNotebook,
    group: 'work',
    load: () => import('../screens/journal/screen.tsx'),
  },
  {
    id: 'calculators',
    title: 'Calculators',
    path: '/calculators',
    icon: IconCalculator,
    group: 'work',
    load: () => import('../screens/calculators/calculators-screen.tsx'),
    finder: () => import('../screens/calculators/palette-hits.ts'),
  },
  {
    id: 'settings',
    title: 'Settings',
    path: '/settings',
    icon: IconSettings,
    group: 'workbook',
    load: () => import('../screens/settings/screen.tsx'),
  },
];

/** The screen at the first part of an address, if there is one. */
export const screenAt = (name: string, list: readonly Screen[] = screens): Screen | undefined =>
  list.find((screen) => screen.path === `/${name}`);
