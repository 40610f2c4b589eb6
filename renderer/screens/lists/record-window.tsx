import { Button } from '@mantine/core';
import { useState } from 'react';
import type { RecordRow } from '../../../core/contract/records.ts';
import { useWorkspace } from '../../app/workspace.tsx';
import { counted, dateText } from '../../parts/formats.ts';
import { Toolbar } from '../../parts/furniture.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { Window } from '../../parts/window.tsx';
import { BoltsForm } from './bolts-form.tsx';
import { DecisionForm } from './decision-form.tsx';
import { kindSpecs, type ListKind } from './kinds.ts';
import { nameOf } from './names.ts';
import { RecordForm } from './record-form.tsx';
import { RecordHistory } from './record-history.tsx';
import { RetireForm } from './retire-form.tsx';
import { ToolForm } from './tool-form.tsx';
import { boltCounts, standingText } from './value-text.ts';

export interface RecordWindowProps {
  readonly kind: ListKind;
  readonly build: number;
  /** Null: a new record. */
  readonly record: RecordRow | null;
  readonly onClose: () => void;
  readonly onMade: (id: number) => void;
}

/** The words of the act that changes where a record stands; null for kinds that have none. */
function actWords(kind: ListKind, record: RecordRow): string | null {
  if (kind === 'tool') return record.standing['atHand'] === true ? 'It goes away' : 'It is at hand';
  if (kind === 'decision') return record.standing['made'] === true ? 'Open it again' : 'Decide';
  if (kind === 'boltGroup') return boltCounts(record).all > 0 ? 'Tighten or loosen bolts' : null;
  return null;
}

/** One record at the right of its list: where it stands, what can be done, and its form. */
export function RecordWindow({ kind, build, record, onClose, onMade }: RecordWindowProps) {
  const locale = useLocale();
  const { asOf } = useWorkspace();
  const [open, setOpen] = useState<'act' | 'retire' | null>(null);
  const spec = kindSpecs[kind];
  const close = () => setOpen(null);
  const words = record === null || record.retiredOn !== null ? null : actWords(kind, record);
  const standing = record === null ? '' : standingText(kind, record);
  return (
    <Window
      opened
      title={record === null ? `New ${spec.one}` : nameOf(record, kind)}
      as="drawer"
      onClose={onClose}
      closesBeside={false}
    >
      <div className="record-window">
        {record !== null && (
          <>
            <p>
              {record.retiredOn === null
                ? sentence([standing, usesText(kind, record)])
                : `Retired on ${dateText(record.retiredOn, locale)}.`}
            </p>
            {asOf === null ? (
              <Toolbar label={`Acts on this ${spec.one}`}>
                {words !== null && (
                  <Button variant="filled" onClick={() => setOpen('act')}>
                    {words}
                  </Button>
                )}
                <Button onClick={() => setOpen('retire')}>{record.retiredOn === null ? 'Retire' : 'Bring back'}</Button>
              </Toolbar>
            ) : (
              <p>The workbook is shown as of {dateText(asOf, locale)}; go back to today to change anything.</p>
            )}
          </>
        )}
        {asOf === null && record?.retiredOn == null && (
          <RecordForm
            key={record?.id ?? 'new'}
            kind={kind}
            build={build}
            record={record}
            onCancel={onClose}
            onDone={(made) => (made === null ? onClose() : onMade(made))}
          />
        )}
        {record !== null && <RecordHistory kind={kind} build={build} name={nameOf(record, kind)} />}
      </div>
      {record !== null && open === 'retire' && <RetireForm kind={kind} record={record} onClose={close} />}
      {record !== null && open === 'act' && kind === 'tool' && <ToolForm tool={record} onClose={close} />}
      {record !== null && open === 'act' && kind === 'decision' && <DecisionForm decision={record} onClose={close} />}
      {record !== null && open === 'act' && kind === 'boltGroup' && <BoltsForm group={record} onClose={close} />}
    </Window>
  );
}

/** One sentence out of what there is to say; "In use." when there is nothing. */
function sentence(pieces: readonly string[]): string {
  const text = pieces.filter((piece) => piece !== '').join('; ');
  return text === '' ? 'In use.' : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

const usesOf: Partial<Record<ListKind, readonly [one: string, many: string]>> = {
  vendor: ['part line or order', 'part lines and orders'],
  bin: ['part line', 'part lines'],
  system: ['part line', 'part lines'],
  phase: ['part line or job', 'part lines and jobs'],
  tool: ['job', 'jobs'],
};

/** "stands on 12 part lines", for kinds that are counted. */
export function usesText(kind: ListKind, { uses }: RecordRow): string {
  const words = usesOf[kind];
  if (words === undefined) return '';
  return uses === 0 ? 'used by nothing yet' : `used by ${counted(uses, words[0], words[1])}`;
}
