import { IconAlertTriangle, IconCircleCheck, IconCircleX, IconHelpCircle, IconPlug } from '@tabler/icons-react';
import type { Verdict } from '../../../core/fit/fit.ts';
import type { PortRole } from '../../../core/fit/port.ts';

/** Icon and words of each verdict; the icons differ in shape, so that colour only repeats what is said. */
export const verdictWords = {
  mates: { icon: IconCircleCheck, words: 'They mate', tone: 'good' },
  adapter: { icon: IconPlug, words: 'Only with an adapter', tone: 'warn' },
  lookalike: { icon: IconAlertTriangle, words: 'Look-alike: do not join', tone: 'blocks' },
  no: { icon: IconCircleX, words: 'They do not fit', tone: 'blocks' },
  unknown: { icon: IconHelpCircle, words: 'Not known yet', tone: 'warn' },
} as const satisfies Record<Verdict, object>;

export const roleChoices: readonly { readonly value: PortRole; readonly label: string }[] = [
  { value: 'fluid', label: 'Liquid: it must seal' },
  { value: 'gas', label: 'Gas or air: it must seal' },
  { value: 'fastener', label: 'Fastener: it must hold' },
  { value: 'electrical', label: 'Electrical connector' },
];

export const mediumChoices = [
  'fuel',
  'ethanol',
  'engine oil',
  'oil drain',
  'coolant',
  'brake fluid',
  'power steering',
  'air',
  'nitrous',
].map((value) => ({ value, label: value.charAt(0).toUpperCase() + value.slice(1) }));
