import type { NewDraft } from './new-draft.ts';

const left = new Map<string, NewDraft>();

/** Keeps an order that isn't placed yet while its part's fit is looked at; `place` is the form's own address. */
export const leaveDraft = (place: string, draft: NewDraft): void => {
  left.set(place, draft);
};

export const leftDraft = (place: string): NewDraft | undefined => left.get(place);

export const forgetDraft = (place: string): void => {
  left.delete(place);
};
