import { Modal } from '@mantine/core';
import { IconSearch } from '@tabler/icons-react';
import { type KeyboardEvent, useEffect, useId, useMemo, useRef, useState } from 'react';
import { refusalWords } from './refusal-note.tsx';
import './palette.css';

/** Something that can be done from anywhere by typing a part of its name. */
export interface Command {
  readonly id: string;
  readonly label: string;
  /** The keys that do the same, as shown at the right. */
  readonly keys?: string;
  readonly run: () => void | Promise<void>;
}

export interface SearchHit {
  readonly id: string;
  readonly label: string;
  /** What tells it from others of the same name: its system, its vendor, its date. */
  readonly detail?: string;
  readonly open: () => void;
}

export interface SearchGroup {
  readonly title: string;
  readonly hits: readonly SearchHit[];
}

export interface PaletteProps {
  readonly opened: boolean;
  readonly onClose: () => void;
  readonly commands: readonly Command[];
  readonly search?: (text: string, signal: AbortSignal) => Promise<readonly SearchGroup[]>;
}

const pauseMs = 80;

/** Lower case and without accents, so that "pelicula" finds "Película". */
const plain = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

function commandGroup(commands: readonly Command[], text: string): SearchGroup {
  const words = plain(text).split(/\s+/).filter(Boolean);
  const hits = commands
    .filter(({ label }) => words.every((word) => plain(label).includes(word)))
    .map(({ id, label, keys, run }) => ({
      id,
      label,
      ...(keys === undefined ? {} : { detail: keys }),
      open: () => void run(),
    }));
  return { title: 'Do', hits };
}

type Found = {
  readonly groups: readonly SearchGroup[];
  readonly state: 'idle' | 'busy' | 'failed';
  readonly problem?: string;
};

function useFound(text: string, search: PaletteProps['search']): Found {
  const [found, setFound] = useState<Found>({ groups: [], state: 'idle' });
  useEffect(() => {
    if (search === undefined || text.trim() === '') {
      setFound({ groups: [], state: 'idle' });
      return;
    }
    const stop = new AbortController();
    setFound((now) => ({ groups: now.groups, state: 'busy' }));
    const timer = setTimeout(() => {
      search(text.trim(), stop.signal).then(
        (groups) => {
          if (!stop.signal.aborted) setFound({ groups, state: 'idle' });
        },
        (error: unknown) => {
          if (!stop.signal.aborted) setFound({ groups: [], state: 'failed', problem: refusalWords(error).message });
        },
      );
    }, pauseMs);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [text, search]);
  return found;
}

/** The search can be asked for while any other window is open. */
const aboveWindows = 290;

/** Search and commands in one dialog: type, choose with the arrows, Enter opens. */
export function Palette({ opened, onClose, commands, search }: PaletteProps) {
  return (
    <Modal.Root opened={opened} onClose={onClose} size="40rem" padding={0} yOffset="12vh" zIndex={aboveWindows}>
      <Modal.Overlay backgroundOpacity={0.4} />
      <Modal.Content aria-label="Search the workbook">
        <PaletteInside commands={commands} onClose={onClose} {...(search === undefined ? {} : { search })} />
      </Modal.Content>
    </Modal.Root>
  );
}

function PaletteInside({ onClose, commands, search }: Omit<PaletteProps, 'opened'>) {
  const [text, setText] = useState('');
  const [chosen, setChosen] = useState(0);
  const listId = useId();
  const list = useRef<HTMLDivElement>(null);
  const found = useFound(text, search);
  const groups = useMemo(
    () => [...found.groups, commandGroup(commands, text)].filter(({ hits }) => hits.length > 0),
    [found.groups, commands, text],
  );
  const hits = groups.flatMap((group) => group.hits);
  const at = Math.min(chosen, hits.length - 1);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the chosen row is looked up again whenever it moves
  useEffect(() => {
    list.current?.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: 'nearest' });
  }, [at]);

  const open = (hit: SearchHit | undefined) => {
    if (hit === undefined) return;
    onClose();
    hit.open();
  };
  const pressed = (event: KeyboardEvent) => {
    if (event.nativeEvent.isComposing) return;
    const step = { ArrowDown: 1, ArrowUp: -1, PageDown: 8, PageUp: -8 }[event.key];
    if (step !== undefined) {
      event.preventDefault();
      setChosen(Math.max(0, Math.min(hits.length - 1, at + step)));
    } else if (event.key === 'Enter') {
      event.preventDefault();
      open(hits[at]);
    }
  };

  const optionId = (index: number) => `${listId}-${index}`;
  let index = -1;
  return (
    <div className="palette">
      <div className="palette-input">
        <IconSearch aria-hidden size="1.2em" />
        <input
          data-autofocus
          type="text"
          role="combobox"
          aria-expanded={hits.length > 0}
          aria-controls={listId}
          aria-activedescendant={hits.length > 0 ? optionId(at) : undefined}
          aria-label="Search the workbook"
          aria-autocomplete="list"
          placeholder={search === undefined ? 'What do you want to do?' : 'Part, order, job, entry, or what to do'}
          value={text}
          onChange={(event) => {
            setText(event.currentTarget.value);
            setChosen(0);
          }}
          onKeyDown={pressed}
        />
      </div>
      <div className="palette-list" id={listId} role="listbox" aria-label="Found" ref={list}>
        {groups.map((group) => (
          // biome-ignore lint/a11y/useSemanticElements: groups of options have no element of their own in a listbox
          <div key={group.title} role="group" aria-label={group.title}>
            <div className="palette-group" aria-hidden>
              {group.title}
            </div>
            {group.hits.map((hit) => {
              index += 1;
              const mine = index;
              return (
                // biome-ignore lint/a11y/useKeyWithClickEvents: keys are handled by the input, which keeps the focus
                <div
                  key={hit.id}
                  id={optionId(mine)}
                  role="option"
                  tabIndex={-1}
                  aria-selected={mine === at}
                  className="palette-hit"
                  onClick={() => open(hit)}
                  onMouseMove={() => setChosen(mine)}
                >
                  <span>{hit.label}</span>
                  {hit.detail !== undefined && <span className="palette-detail">{hit.detail}</span>}
                </div>
              );
            })}
          </div>
        ))}
      </div>
      <p className="palette-status" role="status">
        {found.state === 'failed'
          ? found.problem
          : found.state === 'busy'
            ? 'Looking…'
            : hits.length === 0
              ? 'Nothing has that name.'
              : `${hits.length} found. Arrows choose, Enter opens, Esc closes.`}
      </p>
    </div>
  );
}
