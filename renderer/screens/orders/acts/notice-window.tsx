import { useState } from 'react';
import type { OrderDetail } from '../../../../core/contract/orders.ts';
import { useAct } from '../../../app/data.tsx';
import { useWorkspace } from '../../../app/workspace.tsx';
import { DateField } from '../../../parts/date-field.tsx';
import { TextField } from '../../../parts/fields.tsx';
import { FormWindow } from '../../../parts/form.tsx';
import { ActDay } from './act-day.tsx';
import { LineTicks, type TickedLine } from './line-ticks.tsx';
import { type NoticeName, notices } from './notices.ts';

type Line = OrderDetail['lines'][number];

export interface NoticeWindowProps {
  readonly notice: NoticeName;
  readonly order: number;
  /** What the order is called. */
  readonly name: string;
  /** All lines of the order; those that the notice can't be about are left out. None where it is about the whole. */
  readonly lines: readonly Line[];
  readonly onClose: () => void;
}

/** One notice about an order: which lines and how many, for when, and what was said. */
export function NoticeWindow({ notice: chosen, order, name, lines, onClose }: NoticeWindowProps) {
  const notice = notices[chosen];
  const { today } = useWorkspace();
  const most = notice.most ?? (({ outstandingMilli }: Line) => outstandingMilli);
  const offered = chosen === 'chase' ? [] : lines.filter((line) => most(line) > 0);
  const [ticked, setTicked] = useState<readonly TickedLine[]>(() =>
    offered.map((line) => ({ line: line.id, on: chosen !== 'cancel', quantityMilli: most(line) })),
  );
  const [on, setOn] = useState<string | null>(today);
  const [promisedOn, setPromisedOn] = useState<string | null>(null);
  const [text, setText] = useState('');
  const [number, setNumber] = useState('');
  const [noneTicked, setNoneTicked] = useState(false);
  const { busy, refusal, run } = useAct(notice.send);

  const send = async () => {
    const none = offered.length > 0 && !ticked.some((item) => item.on);
    setNoneTicked(none);
    if (none) return;
    const done = await run({
      order,
      on: on ?? today,
      lines: ticked
        .filter(({ on: wanted }) => wanted)
        .map(({ line, quantityMilli }) => ({ line, quantityMilli: quantityMilli ?? 0 })),
      promisedOn,
      text: text.trim(),
      number: number.trim(),
    });
    if (done !== null) onClose();
  };

  return (
    <FormWindow
      opened
      as={offered.length > 1 ? 'drawer' : 'dialog'}
      title={notice.title}
      submitLabel={notice.submit}
      onSubmit={() => void send()}
      onCancel={onClose}
      busy={busy}
      refusal={noneTicked ? { message: 'No line is ticked. Nothing was changed.' } : refusal}
      blocks={notice.blocks === true}
    >
      <p>{name}</p>
      {offered.length > 0 && (
        <LineTicks
          legend="Lines"
          lines={offered}
          most={most}
          ticked={ticked}
          onChange={setTicked}
          withQuantity={notice.most !== null}
        />
      )}
      {notice.promise !== undefined && (
        <DateField
          name="promisedOn"
          label={notice.promise.label}
          description={notice.promise.description}
          value={promisedOn}
          onChange={setPromisedOn}
          today={today}
        />
      )}
      {notice.number === true && (
        <TextField
          name="number"
          label="Their order number"
          description="Empty: it stays as it is."
          value={number}
          onChange={setNumber}
          longest={80}
        />
      )}
      {notice.text !== undefined && (
        <TextField
          name="note"
          label={notice.text.label}
          value={text}
          onChange={setText}
          longest={notice.text.longest}
          long={notice.text.longest > 400}
          autoFocus={chosen === 'chase'}
        />
      )}
      <ActDay value={on} onChange={setOn} label={notice.day} />
    </FormWindow>
  );
}
