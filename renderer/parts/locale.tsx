import { createContext, useContext } from 'react';

/** How the workbook's figures are written: kept in its settings, handed to every formatter through this context. */
export interface LocaleSettings {
  /** BCP 47 tag that decides digits' grouping and month names, such as `en-GB`. */
  readonly language: string;
  /** ISO 4217 code that amounts are in when they don't say otherwise. */
  readonly currency: string;
  /** `words` is 12 Mar 2026, `iso` is 2026-03-12, `numbers` is what the language writes in figures. */
  readonly dateForm: 'words' | 'iso' | 'numbers';
  readonly units: 'metric' | 'us';
  /** 0 is Sunday, 1 is Monday. */
  readonly weekStart: 0 | 1 | 6;
}

export const standardLocale: LocaleSettings = {
  language: 'en-GB',
  currency: 'EUR',
  dateForm: 'words',
  units: 'metric',
  weekStart: 1,
};

export const LocaleContext = createContext<LocaleSettings>(standardLocale);

/** The settings that figures are written by here. */
export const useLocale = (): LocaleSettings => useContext(LocaleContext);
