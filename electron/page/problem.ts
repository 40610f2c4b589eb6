import { randomUUID } from 'node:crypto';

/** A refusal by the shell itself, before the workbook's host is asked. It says nothing about the machine. */
export interface Problem {
  readonly status: number;
  readonly code: string;
  readonly message: string;
  readonly accepted?: string;
  readonly headers?: Readonly<Record<string, string>>;
}

/** The id ties what a person sees to the line in the log, which has the detail that the answer must not have. */
export function newProblemId(): string {
  return randomUUID();
}

/** The text of a problem's answer: the shape of every refusal, with the id in its detail. */
export function problemText(problem: Problem, id: string): string {
  return JSON.stringify({
    code: problem.code,
    message: problem.message,
    ...(problem.accepted === undefined ? {} : { accepted: problem.accepted }),
    detail: { id },
  });
}
