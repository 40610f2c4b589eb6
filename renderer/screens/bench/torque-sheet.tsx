import { Button } from '@mantine/core';
import { useState } from 'react';
import type { TorqueView } from '../../../core/contract/bench.ts';
import { actKey, api } from '../../app/client.ts';
import { useAct, useRead } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { useActDay, useWho } from '../../parts/act-day.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { dateText } from '../../parts/formats.ts';
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

/** The day of a turn, with the time of day where it was written down on that very day. */
function whenText(on: string, at: string, locale: Parameters<typeof dateText>[1]): string {
  const written = new Date(at);
  const sameDay = toIsoDay(written) === on;
  return sameDay ? `${dateText(on, locale)}, ${written.toTimeString().slice(0, 5)}` : dateText(on, locale);
}

const toIsoDay = (date: Date): string =>
  [date.getFullYear(), date.getMonth() + 1, date.getDate()].map((part) => String(part).padStart(2, '0')).join('-');

/** No bolt is marked for so long after another: a gloved finger bounces, and the next bolt would count as done. */
const restMs = 600;

function Walk({ view, past }: { readonly view: TorqueView; readonly past: boolean }) {
  const { today } = useWorkspace();
  const locale = useLocale();
  const { units } = locale;
  const words = useStageWords();
  const who = useWho({ label: 'Who tightens' });
  const [wrench, setWrench] = useState('');
  const [last, setLast] = useState<{ readonly act: number; readonly label: string; readonly notice: string } | null>(
    null,
  );
  const [loosening, setLoosening] = useState(false);
  const [resting, setResting] = useState(false);
  const [chosen, setChosen] = useState<readonly number[]>([]);
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
    if (turn.busy || resting) return;
    const done = await turn.run(bolt);
    if (done === null) return;
    setLast({ act: done.act, label: done.label, notice: done.notices.join(' ') });
    setResting(true);
    setTimeout(() => setResting(false), restMs);
  };
  const refusal = turn.refusal ?? back.refusal ?? recheck.refusal;
  const touched = view.bolts.some((bolt) => bolt.stages > 0);
  const open = view.bolts.filter((bolt) => !bolt.rechecked).map(({ bolt }) => bolt);
  const again = chosen.length > 0 ? chosen : open;
  const againWords =
    again.length === 1
      ? `Bolt ${again[0]} gone over again`
      : chosen.length > 0
        ? `${again.length} chosen bolts gone over again`
        : open.length === view.count
          ? 'All gone over again'
          : `The other ${open.length} gone over again`;
  const goOver = async () => {
    if ((await recheck.run(again)) !== null) setChosen([]);
  };
  const choose = (bolt: number) =>
    setChosen((now) => (now.includes(bolt) ? now.filter((one) => one !== bolt) : [...now, bolt]));
  const facts = [
    [view.thread, view.boltClass].filter((text) => text !== '').join(', '),
    view.lubricant === '' ? '' : `Lubricant: ${view.lubricant}`,
    view.source === '' ? '' : `Figure from: ${view.source}`,
    view.sourceKind === 'suggested' ? 'A suggestion by formula, not a maker’s figure' : '',
  ].filter((text) => text !== '');
  return (
    <div className="torque-sheet">
      <Answer blocks={next !== null}>
        {view.name}: {view.says}
      </Answer>
      <p>
        <State state={view.standing} />
        {facts.map((fact) => `. ${fact.replace(/\.$/, '')}`).join('')}.
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
            <Button
              className="bench-big"
              variant="filled"
              loading={turn.busy}
              disabled={resting}
              onClick={() => void tighten(next.bolt)}
            >
              Bolt {next.bolt} done {stage === undefined ? '' : words(stage)}
            </Button>
          )}
          {next === null && again.length > 0 && (
            <Button className="bench-big" variant="filled" loading={recheck.busy} onClick={() => void goOver()}>
              {againWords}
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
      {!past && next === null && view.count > 1 && (
        <p className="not-printed">Tap bolts to go over some of them only.</p>
      )}
      <TorqueDrawing
        drawn={{ ...view, stages: stages.length }}
        {...(past
          ? {}
          : next === null
            ? { chosen, onBolt: choose }
            : resting
              ? {}
              : { onBolt: (bolt: number) => void tighten(bolt) })}
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
      {view.log.length > 0 && (
        <SimpleTable
          caption="Written down"
          rows={view.log}
          rowKey={({ entry }) => String(entry)}
          columns={[
            { id: 'text', title: 'What', rowHeader: true, cell: ({ text }) => text },
            { id: 'by', title: 'Who', cell: ({ by }) => by },
            { id: 'at', title: 'When', cell: ({ on, at }) => whenText(on, at, locale) },
          ]}
        />
      )}
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
