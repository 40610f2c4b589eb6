import { createContext, useContext } from 'react';
import type { Settings } from '../../core/contract/workbook.ts';

/** How the workbook's figures are written: kept in its settings, handed to every formatter through this context. */
export interface LocaleSettings extends Pick<Settings, 'currency' | 'dateForm' | 'units' | 'weekStart'> {
  /** BCP 47 tag that decides the marks between digits and where a currency's sign stands. */
  readonly language: string;
}

export const standardLocale: LocaleSettings = {
  language: 'en',
  currency: 'USD',
  dateForm: 'd Mon yyyy',
  units: 'metric',
  weekStart: 'monday',
};

export const LocaleContext = createContext<LocaleSettings>(standardLocale);

/** The settings that figures are written by here. */
export const useLocale = (): LocaleSettings => useContext(LocaleContext);
