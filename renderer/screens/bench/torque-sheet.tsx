import { Button } from '@mantine/core';
import { useState } from 'react';
import type { TorqueView } from '../../../core/contract/bench.ts';
import { actKey, api } from '../../app/client.ts';
import { useAct, useRead } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { useActDay, useWho } from '../../parts/act-day.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { Toolbar } from '../../parts/furniture.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { Caution } from '../../parts/notes.tsx';
import { Answer } from '../../parts/page.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { SimpleTable } from '../../parts/simple-table.tsx';
import { State } from '../../parts/state.tsx';
import { torqueText } from '../../parts/torque.ts';
import { Crowfoot, useCrowfoot } from './crowfoot.tsx';
import { TorqueDrawing } from './torque-drawing.tsx';

interface Reading {
  readonly build: number;
  readonly asOf?: string;
}

/** One bolt group, walked stage by stage and bolt by bolt. */
export function TorqueSheet({ id, reading }: { readonly id: number; readonly reading: Reading }) {
  const read = useRead(['bench', reading.build, reading.asOf ?? null, 'torque', id], () =>
    api.bench.torque({ ...reading, boltGroup: id }),
  );
  return (
    <ReadView read={read} label="Reading the torque sheet">
      {(view) => <Walk view={view} past={reading.asOf !== undefined} />}
    </ReadView>
  );
}

/** A stage in the reader's unit. */
function useStageWords() {
  const { units } = useLocale();
  return (stage: TorqueView['stages'][number]): string => {
    const torque = stage.torqueMilliNm === null ? '' : `to ${torqueText(stage.torqueMilliNm, units)}`;
    const angle = stage.angleDeg === null ? '' : `on by ${stage.angleDeg}°`;
    return [torque, angle].filter((text) => text !== '').join(', then ') || stage.text;
  };
}

function Walk({ view, past }: { readonly view: TorqueView; readonly past: boolean }) {
  const { today } = useWorkspace();
  const { units } = useLocale();
  const words = useStageWords();
  const who = useWho({ label: 'Who tightens' });
  const [wrench, setWrench] = useState('');
  const [last, setLast] = useState<{ readonly act: number; readonly label: string; readonly notice: string } | null>(
    null,
  );
  const [loosening, setLoosening] = useState(false);
  const { next, stages } = view;
  const stage = next === null ? undefined : stages[next.stage - 1];
  const crowfoot = useCrowfoot(stage?.torqueMilliNm ?? null);
  const turn = useAct(
    (key, bolt: number) =>
      api.bench.turn({
        key,
        on: today,
        boltGroup: view.id,
        bolt,
        stage: next?.stage ?? 1,
        by: who.by,
        wrench,
        settingMilliNm: crowfoot.setting?.settingMilliNm ?? null,
      }),
    { quiet: true },
  );
  const back = useAct((_key, act: number) => api.journal.undo({ key: actKey(), act }), { quiet: true });
  const recheck = useAct((key, bolts: readonly number[]) =>
    api.bench.recheck({ key, on: today, boltGroup: view.id, bolts: [...bolts], by: who.by, wrench }),
  );
  const tighten = async (bolt: number) => {
    if (turn.busy) return;
    const done = await turn.run(bolt);
    if (done !== null) setLast({ act: done.act, label: done.label, notice: done.notices.join(' ') });
  };
  const refusal = turn.refusal ?? back.refusal ?? recheck.refusal;
  const touched = view.bolts.some((bolt) => bolt.stages > 0);
  const open = view.bolts.filter((bolt) => !bolt.rechecked).map(({ bolt }) => bolt);
  return (
    <div className="torque-sheet">
      <Answer blocks={next !== null}>
        {view.name}: {view.says}
      </Answer>
      <p>
        <State state={view.standing} />
        {view.thread !== '' && ` ${view.thread}`}
        {view.boltClass !== '' && `, ${view.boltClass}`}
        {view.lubricant !== '' && `. Lubricant: ${view.lubricant}`}
        {view.source !== '' && `. Figure from: ${view.source}`}
        {view.sourceKind === 'suggested' && '. A suggestion by formula, not a maker’s figure'}.
      </p>
      <Caution>{view.caution}</Caution>
      <ol className="torque-stages" aria-label="Stages">
        {stages.map((one, index) => {
          const done = view.bolts.filter((bolt) => bolt.stages > index).length;
          return (
            <li
              // biome-ignore lint/suspicious/noArrayIndexKey: a stage is known by its place
              key={`${index + 1} ${one.text}`}
              aria-current={next?.stage === index + 1 ? 'step' : undefined}
              data-done={done === view.count || undefined}
            >
              <strong>{index + 1}</strong> {words(one)}{' '}
              <span className="figure">
                {done} of {view.count}
              </span>
            </li>
          );
        })}
        <li data-done={view.standing === 'rechecked' || undefined}>
          Gone over again{' '}
          <span className="figure">
            {view.bolts.filter((bolt) => bolt.rechecked).length} of {view.count}
          </span>
        </li>
      </ol>
      {past && <p>A past day is shown, so nothing can be tightened from here. Go back to today.</p>}
      {refusal !== null && <RefusalNote refusal={refusal} />}
      {!past && (
        <div className="torque-do not-printed">
          {next !== null && (
            <Button className="bench-big" variant="filled" loading={turn.busy} onClick={() => void tighten(next.bolt)}>
              Bolt {next.bolt} done {stage === undefined ? '' : words(stage)}
            </Button>
          )}
          {next === null && open.length > 0 && (
            <Button className="bench-big" variant="filled" loading={recheck.busy} onClick={() => void recheck.run([])}>
              All gone over again
            </Button>
          )}
          {crowfoot.setting !== null && (
            <p className="torque-setting">
              Wrench at <strong>{torqueText(crowfoot.setting.settingMilliNm, units)}</strong>
            </p>
          )}
          {last !== null && (
            <p className="torque-last" role="status">
              {last.label}. {last.notice}{' '}
              <Button
                loading={back.busy}
                onClick={async () => {
                  if ((await back.run(last.act)) !== null) setLast(null);
                }}
              >
                Take it back
              </Button>
            </p>
          )}
        </div>
      )}
      <TorqueDrawing
        drawn={{ ...view, stages: stages.length }}
        {...(past ? {} : { onBolt: (bolt: number) => void tighten(bolt) })}
      />
      {!past && (
        <>
          <div className="bench-fields not-printed">
            {who.field}
            <TextField name="wrench" label="Wrench" value={wrench} onChange={setWrench} longest={120} />
          </div>
          <Crowfoot lever={crowfoot.lever} onLever={crowfoot.setLever} read={crowfoot.read} />
          {touched && (
            <Toolbar label="Begin again">
              <Button onClick={() => setLoosening(true)}>Loosen all…</Button>
            </Toolbar>
          )}
        </>
      )}
      {view.note !== '' && <p className="bench-note">{view.note}</p>}
      <SimpleTable
        caption="Written down"
        rows={view.log}
        rowKey={({ entry }) => String(entry)}
        columns={[
          { id: 'text', title: 'What', rowHeader: true, cell: ({ text }) => text },
          { id: 'by', title: 'Who', cell: ({ by }) => by },
          { id: 'at', title: 'When', cell: ({ on, at }) => `${on} ${new Date(at).toTimeString().slice(0, 5)}` },
        ]}
      />
      {loosening && <LoosenForm view={view} by={who.by} onClose={() => setLoosening(false)} />}
    </div>
  );
}

function LoosenForm({ view, by, onClose }: { view: TorqueView; by: string; onClose: () => void }) {
  const [reason, setReason] = useState('');
  const day = useActDay();
  const act = useAct((key, on: string) => api.bench.loosen({ key, on, boltGroup: view.id, by, reason }));
  return (
    <FormWindow
      opened
      title={`Loosen ${view.name}`}
      submitLabel="Loosened, begin again"
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(day.on)) !== null && onClose()}
      blocks
    >
      <p>Every bolt of the group counts as loose again, and the sheet begins at the first stage.</p>
      <TextField name="reason" label="Why" value={reason} onChange={setReason} longest={400} required />
      {day.field}
      <Caution>Bolts that stretch are used once: the maker’s manual says whether they may be tightened again.</Caution>
    </FormWindow>
  );
}
