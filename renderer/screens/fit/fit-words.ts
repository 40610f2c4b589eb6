import { type PortRole, portRoles } from '../../../core/fit/port.ts';

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

export const once = (lines: readonly string[]): readonly string[] => [...new Set(lines)];
