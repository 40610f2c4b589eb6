import type { LineDraft } from './draft.ts';

interface Left {
  readonly draft: LineDraft;
  /** Of the kept line that it began with; 0 for a new one. */
  readonly revision: number;
}

const left = new Map<string, Left>();

/** Keeps what was typed for a line while another page is looked at; `place` names the workbook, the build and the line. */
export const leaveDraft = (place: string, kept: Left): void => {
  left.set(place, kept);
};

export const leftDraft = (place: string): Left | undefined => left.get(place);

export const forgetDraft = (place: string): void => {
  left.delete(place);
};
