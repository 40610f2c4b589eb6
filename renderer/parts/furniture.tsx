import { Button } from '@mantine/core';
import { type KeyboardEvent, type ReactNode, useId, useRef } from 'react';
import './furniture.css';

export interface ProgressProps {
  readonly label: string;
  readonly done: number;
  /** Null while it isn't known how much there is. */
  readonly of: number | null;
  /** Stops the work; nothing that was begun is kept. */
  readonly onStop?: () => void;
}

/** Work that takes longer than a moment: how far it is, in figures too, and the way to stop it. */
export function Progress({ label, done, of, onStop }: ProgressProps) {
  const id = useId();
  return (
    <div className="progress">
      <span id={id}>{label}</span>
      <progress aria-labelledby={id} {...(of === null ? {} : { value: done, max: Math.max(of, 1) })} />
      <span className="figure">{of === null ? done : `${done} of ${of}`}</span>
      {onStop !== undefined && <Button onClick={onStop}>Stop</Button>}
    </div>
  );
}

export interface Tab<Id extends string> {
  readonly id: Id;
  readonly title: string;
  readonly count?: number;
}

export interface TabsProps<Id extends string> {
  /** What the tabs choose between, for those who hear it. */
  readonly label: string;
  readonly tabs: readonly Tab<Id>[];
  readonly shown: Id;
  readonly onShow: (id: Id) => void;
  /** The panel of the tab that is shown. */
  readonly children: ReactNode;
}

const steps: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowLeft: -1 };

/** Several views of one thing. One tab stop; the arrows move between them. */
export function Tabs<Id extends string>({ label, tabs, shown, onShow, children }: TabsProps<Id>) {
  const base = useId();
  const list = useRef<HTMLDivElement>(null);
  const pressed = (event: KeyboardEvent) => {
    const at = tabs.findIndex(({ id }) => id === shown);
    const step = steps[event.key];
    const next =
      event.key === 'Home'
        ? 0
        : event.key === 'End'
          ? tabs.length - 1
          : step === undefined
            ? -1
            : (at + step + tabs.length) % tabs.length;
    const tab = tabs[next];
    if (tab === undefined) return;
    event.preventDefault();
    onShow(tab.id);
    list.current?.querySelectorAll<HTMLElement>('[role="tab"]')[next]?.focus();
  };
  return (
    <div className="tabs">
      <div role="tablist" aria-label={label} className="tab-list not-printed" ref={list}>
        {tabs.map(({ id, title, count }) => (
          <button
            key={id}
            type="button"
            role="tab"
            id={`${base}-${id}`}
            aria-selected={id === shown}
            aria-controls={`${base}-panel`}
            tabIndex={id === shown ? 0 : -1}
            onClick={() => onShow(id)}
            onKeyDown={pressed}
          >
            {title}
            {count !== undefined && <span className="tab-count"> {count}</span>}
          </button>
        ))}
      </div>
      <div role="tabpanel" id={`${base}-panel`} aria-labelledby={`${base}-${shown}`} className="tab-panel">
        {children}
      </div>
    </div>
  );
}

/** Buttons and filters above a table; `end` stands at the right. */
export function Toolbar({
  label,
  children,
  end,
}: {
  readonly label: string;
  readonly children: ReactNode;
  readonly end?: ReactNode;
}) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a group of buttons is no fieldset
    <div className="tool-row not-printed" role="group" aria-label={label}>
      {children}
      {end !== undefined && <span className="tool-row-end">{end}</span>}
    </div>
  );
}

/** Which keys do what here; shown at the desk, not at the bench. */
export function KeyHints({ hints }: { readonly hints: readonly { readonly keys: string; readonly does: string }[] }) {
  return (
    <p className="key-hints not-printed">
      {hints.map(({ keys, does }) => (
        <span key={keys}>
          <kbd>{keys}</kbd> {does}
        </span>
      ))}
    </p>
  );
}
