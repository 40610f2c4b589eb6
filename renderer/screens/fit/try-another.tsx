import { useState } from 'react';
import type { ConnectionRow, PortRow } from '../../../core/contract/fits.ts';
import type { ConnectionSide } from '../../../core/contract/records.ts';
import { Choice } from '../../parts/fields.tsx';
import { KeptRecord } from './kept-record.tsx';
import { sideText } from './port-text.ts';
import { emptySide, SideField, sideOf } from './side-field.tsx';
import { Tried } from './tried.tsx';

export interface TryAnotherProps {
  readonly row: ConnectionRow;
  readonly ports: readonly PortRow[];
  readonly build: number;
}

/** What another port would come to in the place of one of the two. Nothing is kept. */
export function TryAnother({ row, ports, build }: TryAnotherProps) {
  const [replaced, setReplaced] = useState<'one' | 'other'>('one');
  const [side, setSide] = useState<ConnectionSide>(emptySide);
  const staying = sideOf(replaced === 'one' ? row.other : row.one);
  return (
    <section aria-label="Try another port" className="fit-block">
      <Choice
        name="replaced"
        label="In the place of"
        required
        value={replaced}
        options={[
          { value: 'one', label: sideText(row.one) },
          { value: 'other', label: sideText(row.other) },
        ]}
        onChange={(chosen) => setReplaced(chosen ?? 'one')}
      />
      <SideField
        name="try"
        label="Instead of it"
        value={side}
        role={row.role}
        ports={ports.filter(({ id }) => id !== staying.port)}
        onChange={setSide}
      />
      <KeptRecord build={build} kind="connection" id={row.id}>
        {({ values }) => (
          <Tried
            build={build}
            one={replaced === 'one' ? side : staying}
            other={replaced === 'one' ? staying : side}
            role={row.role}
            medium={row.medium}
            pressureBar={typeof values['pressureBar'] === 'number' ? values['pressureBar'] : null}
          />
        )}
      </KeptRecord>
    </section>
  );
}
