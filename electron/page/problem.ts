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

/**
 * The text of a problem's answer: the shape of every refusal, with the id in its detail. Where the page's data client
 * asked, it comes in the client's own wrapping, so that the page shows these words and not a guess.
 */
export function problemText(problem: Problem, id: string, pathname: string): string {
  const refusal = {
    code: problem.code,
    message: problem.message,
    ...(problem.accepted === undefined ? {} : { accepted: problem.accepted }),
    detail: { id },
  };
  if (!pathname.startsWith('/api/rpc/')) return JSON.stringify(refusal);
  const { status, message } = problem;
  return JSON.stringify({ json: { defined: true, code: 'REFUSED', status, message, data: refusal }, meta: [] });
}
