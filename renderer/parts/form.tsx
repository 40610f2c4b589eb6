import { Button } from '@mantine/core';
import { type KeyboardEvent, type ReactNode, type SyntheticEvent, useCallback, useMemo, useRef, useState } from 'react';
import { FormContext, type FormFields } from './field-frame.tsx';
import { RefusalNote, type RefusalWords } from './refusal-note.tsx';
import { Window } from './window.tsx';
import './form.css';

export interface FormProps {
  readonly children: ReactNode;
  /** The words of the button that does it: "Receive 12 lines", never "OK". */
  readonly submitLabel: string;
  readonly onSubmit: () => unknown;
  readonly onCancel?: () => void;
  /** The act is on its way. */
  readonly busy?: boolean;
  /** What the workbook said; shown at the field it names, or above the buttons. */
  readonly refusal?: RefusalWords | null;
  /** The act throws something away. */
  readonly blocks?: boolean;
}

/**
 * Fields with one act. While a field can't be read the act isn't sent: the first such field takes the focus and says
 * why. Ctrl+Enter does it from any field.
 */
export function Form(props: FormProps) {
  const { children, submitLabel, onSubmit, onCancel, busy = false, refusal = null, blocks = false } = props;
  const problems = useRef(new Map<string, string>());
  const names = useRef(new Set<string>());
  const form = useRef<HTMLFormElement>(null);
  const [showAll, setShowAll] = useState(false);

  const report = useCallback((name: string, problem: string | null) => {
    names.current.add(name);
    if (problem === null) problems.current.delete(name);
    else problems.current.set(name, problem);
  }, []);
  const fields = useMemo<FormFields>(() => {
    const refused = (name: string) => {
      if (refusal === null || refusal.field !== name) return null;
      return refusal.accepted === undefined ? refusal.message : `${refusal.message} Accepted: ${refusal.accepted}.`;
    };
    return { report, showAll, refused };
  }, [report, showAll, refusal]);

  const submit = (event?: SyntheticEvent) => {
    event?.preventDefault();
    event?.stopPropagation();
    if (busy) return;
    setShowAll(true);
    if (problems.current.size === 0) {
      onSubmit();
      return;
    }
    for (const input of form.current?.querySelectorAll<HTMLElement>('[name]') ?? []) {
      if (problems.current.has(input.getAttribute('name') ?? '')) {
        input.focus();
        return;
      }
    }
  };
  const pressed = (event: KeyboardEvent) => {
    if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) submit(event);
  };

  return (
    <FormContext value={fields}>
      <form ref={form} className="form" noValidate onSubmit={submit} onKeyDown={pressed} aria-busy={busy}>
        {children}
        {refusal !== null && <RefusalNote refusal={refusal} />}
        <div className="form-buttons">
          <Button type="submit" variant="filled" color={blocks ? 'blocks' : 'link'} loading={busy}>
            {submitLabel}
          </Button>
          {onCancel !== undefined && (
            <Button variant="subtle" onClick={onCancel}>
              Cancel
            </Button>
          )}
          <span className="form-keys" aria-hidden>
            Ctrl+Enter
          </span>
        </div>
      </form>
    </FormContext>
  );
}

export interface FormWindowProps extends FormProps {
  readonly opened: boolean;
  readonly title: string;
  /** A drawer leaves the table beside it in view; a dialog is for a few fields. */
  readonly as?: 'dialog' | 'drawer';
  readonly onCancel: () => void;
}

/** A form in a dialog or in a drawer at the right. What was typed is gone when it is cancelled, and only then. */
export function FormWindow({ opened, title, as = 'dialog', ...form }: FormWindowProps) {
  return (
    <Window opened={opened} title={title} as={as} onClose={form.onCancel} closesBeside={false}>
      <Form {...form} />
    </Window>
  );
}

export interface ConfirmProps {
  readonly opened: boolean;
  readonly title: string;
  /** What will happen, and whether it can be taken back. */
  readonly children: ReactNode;
  /** The words of the button that does it. */
  readonly doIt: string;
  readonly onConfirm: () => unknown;
  readonly onCancel: () => void;
  readonly busy?: boolean;
  readonly refusal?: RefusalWords | null;
}

/** Asks before something that can't simply be taken back. */
export function Confirm({ doIt, onConfirm, children, ...rest }: ConfirmProps) {
  return (
    <FormWindow {...rest} submitLabel={doIt} onSubmit={onConfirm} blocks>
      <div>{children}</div>
    </FormWindow>
  );
}
