import type { Names } from '../names.ts';
import type { ActSpec } from './act-specs.ts';
import type { ActTarget } from './act-target.ts';
import { ActWindow } from './act-window.tsx';
import { type Changeable, ChangeWindow } from './change-window.tsx';
import { DropWindow } from './drop-window.tsx';
import { ReceiveWindow } from './receive-window.tsx';

/** An act whose form is open. */
export type OpenAct = { readonly target: ActTarget } & (
  | { readonly kind: 'units'; readonly spec: ActSpec }
  | { readonly kind: 'receive' }
  | { readonly kind: 'change'; readonly what: Changeable }
  | { readonly kind: 'drop' }
);

/** The form of the act that is open. */
export function ActForm({ open, names, onClose }: { open: OpenAct; names: Names; onClose: () => void }) {
  const { target } = open;
  switch (open.kind) {
    case 'units':
      return <ActWindow spec={open.spec} target={target} names={names} onClose={onClose} />;
    case 'receive':
      return <ReceiveWindow target={target} names={names} onClose={onClose} />;
    case 'change':
      return <ChangeWindow what={open.what} target={target} names={names} onClose={onClose} />;
    case 'drop':
      return <DropWindow target={target} onClose={onClose} />;
  }
}
