import type { Charges } from '../../../core/contract/orders.ts';
import type { Settings } from '../../../core/contract/workbook.ts';

type TaxBase = Settings['taxBase'];

/** Charges while they are typed; null where what is typed can't be read, or nothing is. */
export interface ChargesDraft {
  readonly discountMinor: number | null;
  readonly shippingMinor: number | null;
  readonly dutyMinor: number | null;
  readonly taxKind: 'amount' | 'rate';
  readonly taxMinor: number | null;
  readonly percent: string | null;
  readonly included: boolean;
  readonly base: TaxBase;
}

/** Nothing charged; tax as the workbook's settings have it. */
export function plainCharges(settings: Pick<Settings, 'taxRate' | 'taxBase' | 'taxIncluded'> | null): ChargesDraft {
  const taxed = settings !== null && /[1-9]/.test(settings.taxRate);
  return {
    discountMinor: null,
    shippingMinor: null,
    dutyMinor: null,
    taxKind: taxed ? 'rate' : 'amount',
    taxMinor: null,
    percent: taxed ? settings.taxRate : null,
    included: settings?.taxIncluded ?? false,
    base: settings?.taxBase ?? 'goods',
  };
}

const typed = (minor: number): number | null => (minor === 0 ? null : minor);

/** The charges of an order that is there, to be corrected. */
export function draftOfCharges({ discountMinor, shippingMinor, dutyMinor, tax }: Charges): ChargesDraft {
  const plain = plainCharges(null);
  return {
    ...plain,
    discountMinor: typed(discountMinor),
    shippingMinor: typed(shippingMinor),
    dutyMinor: typed(dutyMinor),
    ...(tax.kind === 'amount'
      ? { taxKind: 'amount', taxMinor: typed(tax.minor) }
      : { taxKind: 'rate', percent: tax.percent, included: tax.included, base: tax.base }),
  };
}

/** What is sent: a field that is left empty charges nothing. */
export function chargesOf(draft: ChargesDraft): Charges {
  const { discountMinor, shippingMinor, dutyMinor, taxKind, taxMinor, percent, included, base } = draft;
  return {
    discountMinor: discountMinor ?? 0,
    shippingMinor: shippingMinor ?? 0,
    dutyMinor: dutyMinor ?? 0,
    tax:
      taxKind === 'rate' && percent !== null
        ? { kind: 'rate', percent, included, base }
        : { kind: 'amount', minor: taxKind === 'amount' ? (taxMinor ?? 0) : 0 },
  };
}
