import { IconHistory } from '@tabler/icons-react';
import { useWorkspace } from '../app/workspace.tsx';
import './notes.css';

/** Whether entries can be made now: not while a past day is shown. */
export const useCanAct = (): boolean => useWorkspace().asOf === null;

/** Says why nothing can be entered while a past day is shown; nothing at all otherwise. */
export function PastDayNote() {
  if (useCanAct()) return null;
  return (
    <p className="note not-printed">
      <IconHistory aria-hidden className="note-icon" />
      <span>A past day is shown, so nothing can be entered here. Go back to today to make entries.</span>
    </p>
  );
}
