import { Button } from '@mantine/core';
import { type KeyboardEvent, useRef, useState } from 'react';
import type { SheetView } from '../../../core/contract/bench.ts';
import { Refusal } from '../../../core/refusal.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useActDay, useWho } from '../../parts/act-day.tsx';
import { TextField } from '../../parts/fields.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { ReadField } from '../../parts/read-field.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { placesOfStep } from './sheet-figures.ts';

interface GridProps {
  readonly sheet: SheetView;
  readonly past: boolean;
  readonly onStrike: (place: string, name: string) => void;
}

const cellKey = (place: string, name: string): string => `${place}\n${name}`;

/** Degrees Celsius typed as the reader writes temperatures. */
function readTemperature(text: string, fahrenheit: boolean): number {
  const typed = Number(text.trim().replace(',', '.'));
  const celsius = fahrenheit ? ((typed - 32) * 5) / 9 : typed;
  if (text.trim() !== '' && Number.isFinite(celsius) && celsius >= -40 && celsius <= 200) return celsius;
  throw new Refusal('bad-input', `“${text.trim()}” can't be taken. Nothing was changed.`, {
    field: 'temperatureC',
    accepted: fahrenheit ? 'a temperature from -40 to 392 °F' : 'a temperature from -40 to 200 °C',
  });
}

/**
 * Places × readings. What is typed stays in its cell until it is written down; Enter goes on to the next. A unit may be
 * typed behind the number; without one it is the sheet's.
 */
export function ReadingsGrid({ sheet, past, onStrike }: GridProps) {
  const { units } = useLocale();
  const fahrenheit = units === 'inch';
  const [typed, setTyped] = useState<ReadonlyMap<string, string>>(new Map());
  const [temperature, setTemperature] = useState<number | null>(null);
  const [instrument, setInstrument] = useState(sheet.instrument);
  const table = useRef<HTMLTableElement>(null);
  const who = useWho({ label: 'Who measured' });
  const day = useActDay();
  const filled = [...typed].filter(([, text]) => text.trim() !== '');
  const act = useAct((key, on: string) =>
    api.bench.read({
      key,
      on,
      sheet: sheet.id,
      readings: filled.map(([at, text]) => {
        const [place = '', name = ''] = at.split('\n');
        return { place, name, typed: text.trim(), temperatureC: temperature };
      }),
      by: who.by,
      instrument,
    }),
  );
  const write = async () => {
    if ((await act.run(day.on)) !== null) setTyped(new Map());
  };
  const onKey = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key !== 'Enter') return;
    event.preventDefault();
    const cells = [...(table.current?.querySelectorAll('input') ?? [])];
    const next = cells[cells.indexOf(event.currentTarget) + (event.shiftKey ? -1 : 1)];
    if (event.ctrlKey || event.metaKey || next === undefined) void (filled.length > 0 && write());
    else next.focus();
  };
  const digits = placesOfStep(sheet.resolution);
  const refusedCell = act.refusal?.field?.replace(', ', '\n') ?? '';
  return (
    <div className="sheet-readings">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a wide sheet is scrolled by keyboard too */}
      <section className="table-scroll" aria-label="Readings" tabIndex={0}>
        <table className="simple-table sheet-grid" ref={table}>
          <caption>Readings in {sheet.unit}</caption>
          <thead>
            <tr>
              <th scope="col">Place</th>
              {sheet.readingNames.map((name) => (
                <th scope="col" key={name}>
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {sheet.places.map(({ place, readings }) => (
              <tr key={place}>
                <th scope="row">{place}</th>
                {sheet.readingNames.map((name) => {
                  const at = cellKey(place, name);
                  const stands = readings.find((reading) => reading.name === name);
                  const moved = stands !== undefined && stands.corrected !== stands.value;
                  return (
                    <td key={name}>
                      {stands !== undefined && (
                        <span className="sheet-stands">
                          <span className="figure" title={`${stands.by} ${stands.on} ${stands.instrument}`.trim()}>
                            {stands.typed}
                            {moved && ` → ${Number(stands.corrected.toFixed(digits))} at 20 °C`}
                          </span>
                          {!past && (
                            <button
                              type="button"
                              className="sheet-strike not-printed"
                              aria-label={`Strike the reading of ${place}, ${name}`}
                              onClick={() => onStrike(place, name)}
                            >
                              ×
                            </button>
                          )}
                        </span>
                      )}
                      {!past && (
                        <input
                          className="not-printed"
                          inputMode="decimal"
                          autoComplete="off"
                          aria-label={`${place}, ${name}`}
                          aria-invalid={refusedCell === at || undefined}
                          placeholder={stands === undefined ? 'not read' : 'again'}
                          value={typed.get(at) ?? ''}
                          onChange={({ currentTarget }) => setTyped(new Map(typed).set(at, currentTarget.value))}
                          onKeyDown={onKey}
                        />
                      )}
                      {refusedCell === at && <span className="sheet-refused">{act.refusal?.accepted ?? ''}</span>}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {!past && (
        <div className="not-printed sheet-write">
          <div className="bench-fields">
            {who.field}
            <TextField name="instrument" label="Instrument" value={instrument} onChange={setInstrument} longest={120} />
            {sheet.expansionPpm !== null && (
              <ReadField
                name="temperatureC"
                label="Temperature of the part"
                description="Left empty, it is taken as 20 °C."
                value={temperature}
                onChange={setTemperature}
                read={(text) => readTemperature(text, fahrenheit)}
                write={(celsius) => String(Number((fahrenheit ? (celsius * 9) / 5 + 32 : celsius).toFixed(2)))}
                suffix={fahrenheit ? '°F' : '°C'}
                numeric
              />
            )}
            {day.field}
          </div>
          {act.refusal !== null && <RefusalNote refusal={act.refusal} />}
          <Button
            className="bench-big"
            variant="filled"
            loading={act.busy}
            disabled={filled.length === 0}
            onClick={() => void write()}
          >
            {filled.length === 0
              ? 'Nothing typed yet'
              : `Write down ${filled.length === 1 ? '1 reading' : `${filled.length} readings`}`}
          </Button>
        </div>
      )}
    </div>
  );
}
