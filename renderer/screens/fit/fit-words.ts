import type { ConnectionRow, DeclaredRow } from '../../../core/contract/fits.ts';
import { type PortRole, portRoles } from '../../../core/fit/port.ts';
import type { FitLook } from '../../parts/fit-mark.tsx';

const roleLabels: Readonly<Record<PortRole, string>> = {
  fluid: 'Liquid: it must seal',
  gas: 'Gas or air: it must seal',
  fastener: 'Fastener: it must hold',
  electrical: 'Electrical connector',
};

export const roleChoices = portRoles.map((value) => ({ value, label: roleLabels[value] }));

const media = [
  'fuel',
  'ethanol',
  'engine oil',
  'oil drain',
  'coolant',
  'brake fluid',
  'power steering',
  'air',
  'nitrous',
];
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The media to choose from, the present one among them. */
export const mediumChoices = (present = ''): readonly { readonly value: string; readonly label: string }[] =>
  (present === '' || media.includes(present) ? media : [...media, present]).map((value) => ({
    value,
    label: capital(value),
  }));

/** How bad it is, in words that stand beside the verdict. */
export const severityWords = {
  info: 'For information',
  caution: 'Caution',
  danger: 'Danger',
  stop: 'Stop: it can hurt someone',
} as const;

/** What a connection is shown as: its verdict, unless an adapter or a reason that still holds settled it. */
export function lookOf({ fit, stands, adapter, accepted }: ConnectionRow): FitLook {
  if (accepted !== null && !accepted.lapsed && fit.verdict !== 'mates') return 'accepted';
  return stands === 'fits' && adapter !== null && fit.verdict !== 'mates' ? 'adapted' : fit.verdict;
}

export const declaredLookOf = ({ outcome, accepted }: DeclaredRow): FitLook =>
  accepted !== null && !accepted.lapsed && outcome === 'fail' ? 'accepted' : outcome;

export const once = (lines: readonly string[]): readonly string[] => [...new Set(lines)];
