import type { ReactNode } from 'react';
import type { Read } from '../app/data.tsx';
import { Loading } from './notes.tsx';
import { RefusalNote } from './refusal-note.tsx';

export interface ReadViewProps<Value> {
  readonly read: Read<Value>;
  /** What is on its way, for those who hear it: "Reading the plan". */
  readonly label: string;
  readonly children: (value: Value) => ReactNode;
}

/** What was read, or that it is on its way, or why it was refused with the way to ask again. */
export function ReadView<Value>({ read, label, children }: ReadViewProps<Value>) {
  if (read.state === 'loading') return <Loading label={label} />;
  if (read.state === 'refused') return <RefusalNote refusal={read.refusal} onRetry={read.retry} />;
  return children(read.value);
}
