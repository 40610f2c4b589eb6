import type { VendorLead } from '../../../core/contract/forecast.ts';

/** A vendor's lines as marks along the days, with what is expected of an order placed now. */
export function LeadStrip({ lead, longest }: { readonly lead: VendorLead; readonly longest: number }) {
  const at = (days: number) => ({ left: `${Math.min(100, (days / longest) * 100)}%` });
  // Lines of the same days stand above each other, as far as the strip is high.
  const seen = new Map<number, number>();
  return (
    <span className="lead-strip" aria-hidden>
      {lead.lines.map(({ line, days, state }) => {
        const before = seen.get(days) ?? 0;
        seen.set(days, before + 1);
        return <span key={line} className="lead-dot" data-state={state} data-level={before % 4} style={at(days)} />;
      })}
      <span className="lead-tick" data-of="p50" style={at(lead.p50Days)} />
      <span className="lead-tick" data-of="p80" style={at(lead.p80Days)} />
    </span>
  );
}
