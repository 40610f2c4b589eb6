import { Button } from '@mantine/core';
import { useState } from 'react';
import { api } from '../../../app/client.ts';
import { useRead } from '../../../app/data.tsx';
import { Choice } from '../../../parts/fields.tsx';
import { NewVendorWindow } from './new-vendor-window.tsx';

export interface ChosenVendor {
  readonly id: number;
  /** The vendor's own currency, if it is known. */
  readonly currency: string | null;
}

export interface VendorFieldsProps {
  readonly vendor: number | null;
  readonly onChoose: (vendor: ChosenVendor) => void;
}

/** Whom the order goes to; a vendor that isn't listed yet is made on the spot. */
export function VendorFields({ vendor, onChoose }: VendorFieldsProps) {
  const vendors = useRead(['records', 'vendor'], () => api.records.list({ kind: 'vendor' }));
  const [making, setMaking] = useState(false);
  const list = vendors.state === 'ready' ? vendors.value : [];
  const chosen = list.find(({ id }) => id === vendor);
  const lead = chosen?.values['leadDays'];
  const choose = (id: string | null) => {
    const found = list.find((record) => `${record.id}` === id);
    if (found === undefined) return;
    const currency = found.values['currency'];
    onChoose({ id: found.id, currency: typeof currency === 'string' ? currency : null });
  };
  return (
    <>
      <div className="vendor-row">
        <Choice
          name="vendor"
          label="Vendor"
          {...(typeof lead === 'number' ? { description: `Usually takes ${lead} days.` } : {})}
          value={vendor === null ? null : `${vendor}`}
          onChange={choose}
          options={list.map(({ id, values }) => ({ value: `${id}`, label: String(values['name']) }))}
          required
        />
        <Button onClick={() => setMaking(true)}>New vendor</Button>
      </div>
      {making && (
        <NewVendorWindow
          onClose={() => setMaking(false)}
          onMade={(made) => {
            setMaking(false);
            onChoose(made);
          }}
        />
      )}
    </>
  );
}
